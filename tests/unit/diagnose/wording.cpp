// The wording guide (diagnostic.hpp), held by every message and help that a case prints.
#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <set>
#include <string>
#include <vector>

#include "base/diagnose/code.hpp"

namespace {

namespace fs = std::filesystem;

struct Printed {
  std::string text;
  std::string place;  // case file and line
  std::string code;   // of a message, with its brackets
  bool mended = false;
};

struct AllPrinted {
  std::vector<Printed> messages;
  std::vector<Printed> helps;
};

// "mix.plumb:5:1: error: MESSAGE [code]"; excerpts and further places are indented.
std::string message_of(const std::string& line) {
  for (const std::string_view word : {"error: ", "warning: "}) {
    const std::size_t at = line.starts_with(word) ? 0 : line.find(": " + std::string(word));
    const std::size_t bracket = line.rfind(" [");
    if (at != std::string::npos && !line.starts_with(' ') && line.ends_with(']') && bracket != std::string::npos) {
      const std::size_t begin = at + word.size() + (at == 0 ? 0 : 2);
      return begin < bracket ? line.substr(begin, bracket - begin) : "";
    }
  }
  return {};
}

void read_case(const fs::path& file, AllPrinted& into) {
  constexpr std::string_view mend = "  to mend: ";
  std::ifstream stream(file);
  std::size_t number = 0;
  for (std::string line; std::getline(stream, line);) {
    ++number;
    const std::string place = file.string() + ":" + std::to_string(number);
    if (const std::string message = message_of(line); !message.empty()) {
      into.messages.push_back({message, place, line.substr(line.rfind('[')), false});
    } else if (line.starts_with(mend)) {
      into.helps.push_back({line.substr(mend.size()), place, "", false});
      if (!into.messages.empty()) {
        into.messages.back().mended = true;
      }
    }
  }
}

AllPrinted all_printed() {
  AllPrinted out;
  for (const char* folder : {"tests/diagnostics", "tests/command", "tests/conformance"}) {
    if (!fs::exists(folder)) {
      continue;
    }
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
      if (entry.path().extension() == ".case") {
        read_case(entry.path(), out);
      }
    }
  }
  return out;
}

// The text with what stands in backticks taken out: the user's own words follow no guide.
std::string ours(const std::string& text) {
  std::string out;
  bool quoted = false;
  for (const char byte : text) {
    quoted = byte == '`' ? !quoted : quoted;
    out += quoted ? "" : std::string(1, byte == '`' ? '~' : byte);
  }
  return out;
}

std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> out(1);
  for (const char byte : text) {
    if (std::isalnum(static_cast<unsigned char>(byte)) != 0 || byte == '_' || byte == ':') {
      out.back() += byte;
    } else if (!out.back().empty()) {
      out.emplace_back();
    }
  }
  return out;
}

bool of_the_program(const std::string& word) {
  constexpr std::array<std::string_view, 17> words{"string",   "vector", "optional", "variant", "null",       "nullptr",
                                                   "int",      "bool",   "enum",     "struct",  "double",     "float",
                                                   "uint32_t", "size_t", "token",    "parser",  "stack trace"};
  return word.find("::") != std::string::npos || word.find('_') != std::string::npos ||
         std::find(words.begin(), words.end(), word) != words.end();
}

// Nothing wrong: empty.
std::string fault(const std::string& text, bool help) {
  if (text.empty()) {
    return "nothing is said";
  }
  const auto first = static_cast<unsigned char>(text.front());
  if (std::islower(first) == 0 && text.front() != '`' && !(help && std::isdigit(first) != 0)) {
    return "begins with a capital or a sign";
  }
  if (std::string_view(".!,;:").find(text.back()) != std::string_view::npos && !text.ends_with("...")) {
    return "ends with a stop";
  }
  const std::string own = ours(text);
  const auto ticks = std::count(text.begin(), text.end(), '`');
  if (ticks % 2 != 0 && text.find("```") == std::string::npos) {
    return "a backtick is never closed";
  }
  if (own.find("  ") != std::string::npos || own.find('\t') != std::string::npos) {
    return "two blanks together";
  }
  const auto words = words_of(own);
  for (std::size_t at = 0; at < words.size(); ++at) {
    if (of_the_program(words[at])) {
      return "a word of the program: " + words[at];
    }
    const std::string next = at + 1 < words.size() ? words[at + 1] : "";
    if (words[at] == "1" && next.size() > 2 && next.ends_with("s") && next != "fails") {  // "clause 1 fails"
      return "one of several: 1 " + next;
    }
  }
  return {};
}

void check(const std::vector<Printed>& all, bool help) {
  std::set<std::string> seen;
  for (const Printed& one : all) {
    const std::string found = fault(one.text, help);
    if (!found.empty() && seen.insert(one.text).second) {
      FAIL_CHECK(one.place << ": " << found << "\n  " << one.text);
    }
  }
}

}  // namespace

TEST_CASE("the guide is held where it should be, and catches what it should") {
  CHECK(fault("found `X.`, expected a number", false).empty());
  CHECK(fault("`plumbrule 1` is the first line", true).empty());
  CHECK(fault("found a file of 10 bytes", false).empty());
  CHECK(fault("known: `a`, `b`, ...", true).empty());
  CHECK_FALSE(fault("", false).empty());
  CHECK_FALSE(fault("Found `x`", false).empty());
  CHECK_FALSE(fault("found `x`.", false).empty());
  CHECK_FALSE(fault("found `x", false).empty());
  CHECK_FALSE(fault("found a std::string", false).empty());
  CHECK_FALSE(fault("found no value (not_computable)", false).empty());
  CHECK_FALSE(fault("found 1 arguments", false).empty());
  CHECK_FALSE(fault("found  it", false).empty());
  CHECK(message_of("mix.plumb:5:1: error: found `a: error: b` [unit.unknown]") == "found `a: error: b`");
  CHECK(message_of("error: cannot read `x` [file.unreadable]") == "cannot read `x`");
  CHECK(message_of("  5 | error: found [unit.unknown]").empty());
}

TEST_CASE("every message of every case holds to the guide") {
  const AllPrinted all = all_printed();
  REQUIRE(all.messages.size() > 150);
  check(all.messages, false);
}

TEST_CASE("every help of every case holds to the guide") {
  const AllPrinted all = all_printed();
  REQUIRE(all.helps.size() > 100);
  check(all.helps, true);
}

TEST_CASE("a message says first what was found") {
  std::set<std::string> seen;
  for (const Printed& one : all_printed().messages) {
    const bool begins = one.text.starts_with("found ") || one.text.starts_with("cannot read ");
    if (!begins && seen.insert(one.text).second) {
      FAIL_CHECK(one.place << "\n  " << one.text);
    }
  }
}

// What was expected stands in the message itself, or what the example expects is the author's to know.
TEST_CASE("every message says how to mend it") {
  std::set<std::string> seen;
  for (const Printed& one : all_printed().messages) {
    const bool says = one.mended || one.code == "[syntax.unexpected]" || one.code == "[example.value]";
    if (!says && seen.insert(one.text).second) {
      FAIL_CHECK(one.place << "\n  " << one.text);
    }
  }
}

TEST_CASE("codes are stable words of subject and fault, each only once") {
  std::set<std::string_view> seen;
  for (const std::string_view code : plumbrule::diagnose::code_texts) {
    INFO(code);
    CHECK(seen.insert(code).second);
    CHECK(std::count(code.begin(), code.end(), '.') == 1);
    CHECK(std::all_of(code.begin(), code.end(), [](char byte) {
      return std::islower(static_cast<unsigned char>(byte)) != 0 || byte == '.' || byte == '-';
    }));
  }
}
