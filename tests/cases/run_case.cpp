#include "run_case.hpp"

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <optional>
#include <string_view>
#include <utility>
#include <variant>

#include "case_file.hpp"
#include "line_diff.hpp"
#include "masks.hpp"
#include "printable.hpp"
#include "recipe.hpp"
#include "shell.hpp"

namespace plumbrule::cases {
namespace {

namespace fs = std::filesystem;

/// A fresh folder, gone with this object: here/ where the commands run, bin/ with the program, and scratch files.
class Workplace {
 public:
  explicit Workplace(const fs::path& program) {
    std::string pattern = fs::canonical(fs::temp_directory_path()) / "plumbrule-case-XXXXXX";
    if (mkdtemp(pattern.data()) == nullptr) {
      throw fs::filesystem_error("no temporary folder", std::make_error_code(std::errc::io_error));
    }
    base_ = pattern;
    fs::create_directory(here());
    fs::create_directory(bin());
    fs::create_symlink(program, bin() / "plumbrule");
  }
  ~Workplace() {
    std::error_code ignored;
    fs::remove_all(base_, ignored);
  }
  Workplace(const Workplace&) = delete;
  Workplace& operator=(const Workplace&) = delete;

  [[nodiscard]] const fs::path& base() const { return base_; }
  [[nodiscard]] fs::path here() const { return base_ / "here"; }
  [[nodiscard]] fs::path bin() const { return base_ / "bin"; }

 private:
  fs::path base_;
};

std::optional<std::string> read_text(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  if (!stream) {
    return std::nullopt;
  }
  return std::string(std::istreambuf_iterator<char>(stream), {});
}

bool write_text(const fs::path& file, std::string_view text) {
  std::ofstream stream(file, std::ios::binary);
  stream.write(text.data(), static_cast<std::streamsize>(text.size()));
  stream.close();
  return stream.good();
}

/// Nothing of the caller's environment but the sanitizers' own options gets in, so that every machine agrees.
std::vector<std::string> environment_for(const Workplace& place, const Setting& setting) {
  std::vector<std::string> environment = {
      "PATH=" + place.bin().string() + ":/usr/local/bin:/usr/bin:/bin",
      "HOME=" + place.here().string(),
      "LC_ALL=C",
      "TZ=UTC",
      "specs=" + (setting.root / "specs").string(),
      "examples=" + (setting.root / "examples").string(),
  };
  // Aborting turns what a sanitizer finds into a crash, which no case can expect.
  for (const char* name : {"ASAN_OPTIONS", "UBSAN_OPTIONS"}) {
    const char* set = std::getenv(name);
    environment.push_back(std::string(name) + "=" + (set != nullptr ? set : "abort_on_error=1:print_stacktrace=1"));
  }
  return environment;
}

Replacements names_for(const Workplace& place, const Setting& setting) {
  return {{(setting.root / "specs").string(), "<specs>"},
          {(setting.root / "examples").string(), "<examples>"},
          {setting.root.string(), "<root>"},
          {place.here().string(), "<here>"},
          {place.base().string(), "<case>"}};
}

std::string parts_of(const Transcript& expected, const Transcript& actual) {
  std::string report;
  if (expected.output != actual.output) {
    report += "  standard output differs (- expected, + printed):\n" + line_diff(expected.output, actual.output);
  }
  if (expected.error != actual.error) {
    report += "  standard error differs (- expected, + printed):\n" + line_diff(expected.error, actual.error);
  }
  if (expected.status != actual.status) {
    report += "  exit status " + std::to_string(actual.status) + ", expected " + std::to_string(expected.status) + "\n";
  }
  return report;
}

/// Carries out the sections of one case in order.
class Performance {
 public:
  Performance(Case& script, const Setting& setting) : script_(script), setting_(setting), place_(setting.plumbrule) {}

  /// True when every section could be carried out and every run ended by itself.
  bool perform() {
    bool orderly = true;
    for (Section& section : script_.sections) {
      switch (section.kind) {
        case Kind::note:
          break;
        case Kind::file:
          orderly = lay_down(section, section.text) && orderly;
          break;
        case Kind::generate:
          orderly = lay_down_generated(section) && orderly;
          break;
        case Kind::run:
          orderly = run(section) && orderly;
          break;
      }
    }
    return orderly;
  }

  [[nodiscard]] const std::string& report() const { return report_; }

 private:
  void complain(const Section& section, const std::string& what) {
    report_ += "  line " + std::to_string(section.line) + ": " + what + "\n";
  }

  bool lay_down(const Section& section, std::string_view bytes) {
    const fs::path file = place_.here() / section.name;
    std::error_code failure;
    fs::create_directories(file.parent_path(), failure);
    if (failure || !write_text(file, bytes)) {
      complain(section, "the file `" + section.name + "` cannot be written");
      return false;
    }
    return true;
  }

  bool lay_down_generated(const Section& section) {
    const Generated made = generate(section.argument);
    if (!made.bytes) {
      complain(section, made.reason);
      return false;
    }
    return lay_down(section, *made.bytes);
  }

  bool run(Section& section) {
    const Ran ran =
        run_shell({section.argument, place_.here(), place_.base(), environment_for(place_, setting_), setting_.limit});
    const Replacements names = names_for(place_, setting_);
    Transcript actual{printable(masked(with_names(ran.output, names))), printable(with_names(ran.error, names)),
                      ran.status};
    std::string differences = parts_of(section.expected, actual);
    if (!ran.trouble.empty()) {
      complain(section, "$ " + section.argument + "\n  " + ran.trouble);
      report_ += differences;
      return false;
    }
    if (setting_.record) {
      section.expected = std::move(actual);
    } else if (!differences.empty()) {
      complain(section, "$ " + section.argument);
      report_ += differences;
    }
    return true;
  }

  Case& script_;
  const Setting& setting_;
  Workplace place_;
  std::string report_;
};

Outcome perform_case(const fs::path& file, const Setting& setting) {
  const std::optional<std::string> text = read_text(file);
  if (!text) {
    return {false, false, "  the file cannot be read\n"};
  }
  auto parsed = parse_case(*text);
  if (const auto* malformed = std::get_if<Malformed>(&parsed)) {
    return {false, false, "  line " + std::to_string(malformed->line) + ": " + malformed->message + "\n"};
  }
  Case& script = std::get<Case>(parsed);
  Performance performance(script, setting);
  const bool orderly = performance.perform();
  Outcome outcome{performance.report().empty(), false, performance.report()};
  if (setting.record && orderly) {
    const std::string rewritten = write_case(script);
    outcome.rewritten = rewritten != *text;
    if (outcome.rewritten && !write_text(file, rewritten)) {
      return {false, false, "  the file cannot be rewritten\n"};
    }
  }
  return outcome;
}

}  // namespace

Outcome run_case(const fs::path& file, const Setting& setting) {
  try {
    return perform_case(file, setting);
  } catch (const std::exception& failure) {  // file system errors; a thread must not die of one
    return {false, false, "  " + std::string(failure.what()) + "\n"};
  }
}

std::vector<std::string> cited_sections(const fs::path& file) {
  const auto parsed = parse_case(read_text(file).value_or(""));
  const auto* script = std::get_if<Case>(&parsed);
  return script != nullptr ? script->cited : std::vector<std::string>{};
}

}  // namespace plumbrule::cases
