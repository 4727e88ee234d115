#include "case_file.hpp"

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <utility>

#include "exact_text.hpp"
#include "lines.hpp"

namespace plumbrule::cases {
namespace {

/// One heading with the lines below it, not yet understood.
struct Block {
  std::size_t line = 0;
  std::string heading;
  std::string_view word;  // "file", "run" ...; a view into the case's text, like rest
  std::string_view rest;
  std::string body;
};

struct Blocks {
  std::string head;
  std::vector<Block> blocks;
};

Block open_block(std::string_view line, std::size_t number) {
  const std::string_view heading = trimmed(line.substr(section_mark.size()));
  const std::string_view word = heading.substr(0, heading.find(' '));
  return {number, std::string(line), word, trimmed(heading.substr(word.size())), {}};
}

Blocks cut_into_blocks(std::string_view text) {
  Blocks cut;
  std::size_t number = 0;
  for (const std::string_view line : split_lines(text)) {
    ++number;
    if (line.starts_with(section_mark)) {
      cut.blocks.push_back(open_block(line, number));
    } else {
      (cut.blocks.empty() ? cut.head : cut.blocks.back().body) += line;
    }
  }
  return cut;
}

bool only_comments(std::string_view text) {
  for (const std::string_view line : split_lines(text)) {
    const std::string_view words = trimmed(line);
    if (!words.empty() && !words.starts_with('#')) {
      return false;
    }
  }
  return true;
}

/// Paths go down from the case's folder, never out of it.
bool stays_inside(std::string_view name) {
  const std::filesystem::path path(name);
  if (path.empty() || path.is_absolute()) {
    return false;
  }
  for (const auto& part : path) {
    if (part == "..") {
      return false;
    }
  }
  return true;
}

void read_list(std::string_view list, std::vector<std::string>& into) {
  while (!list.empty()) {
    const std::string_view item = list.substr(0, list.find(','));
    if (!trimmed(item).empty()) {
      into.emplace_back(trimmed(item));
    }
    list.remove_prefix(std::min(item.size() + 1, list.size()));
  }
}

class Reader {
 public:
  std::variant<Case, Malformed> read(std::string_view text) {
    Blocks cut = cut_into_blocks(text);
    result_.head = std::move(cut.head);
    read_head();
    for (Block& block : cut.blocks) {
      if (problem_) {
        break;
      }
      read_block(block);
    }
    if (!problem_ && !has_run_) {
      refuse(1, "the case runs no command; write a section `=== run COMMAND`");
    }
    if (problem_) {
      return *problem_;
    }
    return std::move(result_);
  }

 private:
  void refuse(std::size_t line, std::string message) {
    if (!problem_) {
      problem_ = Malformed{line, std::move(message)};
    }
  }

  void read_head() {
    bool about = false;
    if (!only_comments(result_.head)) {
      refuse(1, "before the first section only comment lines may stand, starting with `#`");
    }
    for (const std::string_view line : split_lines(result_.head)) {
      std::string_view words = trimmed(line);
      words.remove_prefix(std::min(words.find_first_not_of("# "), words.size()));
      about = about || (words.starts_with("about:") && !trimmed(words.substr(6)).empty());
      if (words.starts_with("section:")) {
        read_list(words.substr(8), result_.cited);
      }
    }
    if (!about) {
      refuse(1, "the case does not say what it shows; start it with `# about: ...`");
    }
  }

  void read_block(Block& block) {
    if (block.word == "file") {
      read_file(block);
    } else if (block.word == "generate") {
      read_generate(block);
    } else if (block.word == "note") {
      add(Kind::note, block);
    } else if (block.word == "run") {
      read_run(block);
    } else if (block.word == "error") {
      read_error(block);
    } else if (block.word == "status") {
      read_status(block);
    } else {
      refuse(block.line, "section `" + std::string(block.word) +
                             "` is unknown; there are file, generate, note, run, error and status");
    }
    after_ = block.word;
  }

  Section& add(Kind kind, Block& block) {
    Section& section = result_.sections.emplace_back();
    section.kind = kind;
    section.line = block.line;
    section.heading = block.heading;
    section.body = std::move(block.body);
    return section;
  }

  std::string decoded(const Block& block) {
    std::optional<std::string> text = decode_text(block.body);
    if (!text) {
      refuse(block.line, "a line of this section starts with a backslash; write two of them");
    }
    return std::move(text).value_or("");
  }

  void check_name(const Block& block, std::string_view name) {
    if (!stays_inside(name)) {
      refuse(block.line, "the name `" + std::string(name) + "` is not a path below the case's own folder");
    }
  }

  void read_file(Block& block) {
    check_name(block, block.rest);
    std::string text = decoded(block);
    Section& section = add(Kind::file, block);
    section.name = block.rest;
    section.text = std::move(text);
  }

  void read_generate(Block& block) {
    const std::string_view name = block.rest.substr(0, block.rest.find(' '));
    check_name(block, name);
    if (!only_comments(block.body)) {
      refuse(block.line, "a generated file has no text below its heading");
    }
    Section& section = add(Kind::generate, block);
    section.name = name;
    section.argument = trimmed(block.rest.substr(name.size()));
  }

  void read_run(Block& block) {
    if (block.rest.empty()) {
      refuse(block.line, "the command is missing");
    }
    std::string output = decoded(block);
    Section& section = add(Kind::run, block);
    section.body.clear();
    section.argument = block.rest;
    section.expected.output = std::move(output);
    has_run_ = true;
  }

  void read_error(const Block& block) {
    if (after_ != "run") {
      return refuse(block.line, "`=== error` stands right after the output of a run");
    }
    result_.sections.back().expected.error = decoded(block);
  }

  void read_status(Block& block) {
    int status = 0;
    const auto [end, failure] = std::from_chars(block.rest.data(), block.rest.data() + block.rest.size(), status);
    if (after_ != "run" && after_ != "error") {
      return refuse(block.line, "`=== status` closes a run; here none is open");
    }
    if (failure != std::errc() || end != block.rest.data() + block.rest.size() || status < 0 || status > 255) {
      return refuse(block.line, "a status is a whole number from 0 to 255");
    }
    if (!only_comments(block.body)) {
      return refuse(block.line, "after a status only blank lines and comments may stand");
    }
    Section& run = result_.sections.back();
    run.expected.status = status;
    run.states_zero = status == 0;
    run.body = std::move(block.body);
  }

  Case result_;
  std::optional<Malformed> problem_;
  std::string_view after_;  // the word of the block before this one
  bool has_run_ = false;
};

void write_run(const Section& run, std::string& into) {
  into += encode_text(run.expected.output);
  if (!run.expected.error.empty()) {
    into += "=== error\n" + encode_text(run.expected.error);
  }
  if (run.expected.status != 0 || run.states_zero || !run.body.empty()) {
    into += "=== status " + std::to_string(run.expected.status) + "\n" + run.body;
  }
}

}  // namespace

std::variant<Case, Malformed> parse_case(std::string_view text) { return Reader().read(text); }

std::string write_case(const Case& written) {
  std::string text = written.head;
  for (const Section& section : written.sections) {
    text += section.heading;
    if (!text.ends_with('\n')) {  // the last line of a file that was cut short
      text += '\n';
    }
    if (section.kind == Kind::run) {
      write_run(section, text);
    } else {
      text += section.body;
    }
  }
  return text;
}

}  // namespace plumbrule::cases
