#pragma once
// What the files options_*.cpp share: options that several commands have are described once, here.

#include <CLI/CLI.hpp>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "doors/command/output.hpp"
#include "doors/command/review.hpp"

namespace plumbrule::command {

/// Adds a command with its options to the App; gives what runs it. The options live as long as what is given.
using AddCommand = std::function<Exit()>(CLI::App& app);
AddCommand add_review, add_follow_up, add_window, add_proof, add_recite, add_contrast, add_envelope, add_tidy,
    add_transcribe, add_sweep, add_manual;

/// The names of kinds of values (value_kinds).
namespace takes {
inline constexpr const char* rules = "FILE.plumb";
inline constexpr const char* submittal = "FILE.yaml";
inline constexpr const char* folder = "FOLDER";
inline constexpr const char* file = "FILE";
inline constexpr const char* day = "YYYY-MM-DD";
inline constexpr const char* clause = "CLAUSE";
inline constexpr const char* measure = "MEASURE";
inline constexpr const char* amount = "AMOUNT";
inline constexpr const char* record = "RECORD";
inline constexpr const char* number = "NUMBER";
inline constexpr const char* archive = "ARCHIVE";
inline constexpr const char* mix_class = "CATEGORY=WORD";
}  // namespace takes

/// Words that an option takes one of, in the order of the help; the first is what holds without the option.
template <typename Value>
using Words = std::vector<std::pair<std::string, Value>>;

/// An option that takes one of a few words.
template <typename Value>
void add_choice(CLI::App& command, const std::string& name, Value& target, const Words<Value>& words,
                const std::string& description) {
  std::vector<std::string> known;
  std::string listed;
  for (const auto& [word, value] : words) {
    known.push_back(word);
    listed += (listed.empty() ? "" : "|") + word;
  }
  CLI::Validator among = CLI::IsMember(known);
  command
      .add_option_function<std::string>(
          name,
          [&target, words](const std::string& given) {
            for (const auto& [word, value] : words) {
              target = word == given ? value : target;
            }
          },
          description)
      ->check(among.description(""))
      ->type_name(listed);
}

/// The specifications; required.
void add_against(CLI::App& command, std::vector<std::string>& target);
void add_amendments(CLI::App& command, std::vector<std::string>& target, const std::string& name = "--with",
                    const std::string& description = "An amendment; may be repeated");
/// The day of the review.
void add_day(CLI::App& command, std::string& target);
/// Which record of a sheet of several.
void add_record(CLI::App& command, std::string& target, const std::string& name = "--record");
void add_libraries(CLI::App& command, std::vector<std::string>& target);
/// `--format`; the words are those that the command knows.
void add_format(CLI::App& command, Format& target, const Words<Format>& words, const std::string& remark = {});
/// `--detail`: how much a text report says.
void add_detail(CLI::App& command, Detail& target);
void add_out(CLI::App& command, std::string& target);
void add_log(CLI::App& command, bool& target);
/// A folder that has to be there.
CLI::Option* add_folder(CLI::App& command, const std::string& name, std::string& target,
                        const std::string& description);

}  // namespace plumbrule::command
