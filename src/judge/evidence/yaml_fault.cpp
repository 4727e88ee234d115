#include "judge/evidence/yaml_fault.hpp"

#include <algorithm>
#include <array>

namespace plumbrule::evidence {
namespace {

using diagnose::Code;
using Points = YamlFault::Points;

constexpr std::string_view no_names = "write the values out where they belong";
constexpr std::string_view value_in_quotes = "put the value in quotes";
constexpr std::string_view like_neighbours =
    "put each `name: value` on a line of its own, indented with blanks like its neighbours; a value that holds a colon "
    "and a blank goes in quotes";

constexpr YamlFault tab{"illegal tab", Code::submittal_yaml, Points::here, "found a tab in the indentation of a line",
                        "indent with blanks"};
constexpr YamlFault quote{"illegal EOF in scalar", Code::submittal_yaml, Points::open_quote,
                          "found a quote that is never closed", "close it with the same quote at the end of the value"};
constexpr YamlFault general{"", Code::submittal_yaml, Points::here, "found text that is not YAML",
                            "check the indentation (blanks, no tabs), the colons and the quotes around here"};

// The beginnings are those of yaml-cpp 0.7 (yaml-cpp/exceptions.h), in the order in which they are looked up.
constexpr std::array<YamlFault, 23> faults{{
    {"end of sequence flow", Code::submittal_yaml, Points::open_bracket, "found a list that is never closed",
     "close it with `]`, and put commas between its values"},
    {"end of map flow", Code::submittal_yaml, Points::open_bracket, "found entries in braces that are never closed",
     "close them with `}`, and put commas between the entries"},
    {"end of map", Code::submittal_yaml, Points::here, "found text that does not belong to the entries above it",
     like_neighbours},
    {"end of sequence", Code::submittal_yaml, Points::here, "found text that does not belong to the list above it",
     "begin each entry of the list with `- `, indented with blanks like its neighbours"},
    {"illegal map", Code::submittal_yaml, Points::here, "found a colon where no name of an entry can stand",
     like_neighbours},
    {"illegal block entry", Code::submittal_yaml, Points::here, "found an entry of a list where none can begin",
     "begin a list on the line below its name"},
    {"illegal flow end", Code::submittal_yaml, Points::here, "found a closing bracket without its opening one",
     "take it out, or put the value in quotes"},
    {"illegal document indicator", Code::submittal_yaml, Points::open_quote, quote.message, quote.help},
    quote,
    tab,
    {"unknown token", Code::submittal_yaml, Points::here, "found a character with which no value begins",
     value_in_quotes},
    {"illegal character in scalar", Code::submittal_yaml, Points::here, "found a character with which no value begins",
     value_in_quotes},
    {"unknown escape", Code::submittal_yaml, Points::two_before, "found a backslash before a character that needs none",
     "write `\\\\` for a backslash, or use single quotes"},
    {"bad character found while scanning hex", Code::submittal_yaml, Points::here,
     "found a character number that is not written in the digits 0 to 9 and a to f", "write the character itself"},
    {"invalid unicode", Code::submittal_yaml, Points::here, "found the number of a character that does not exist",
     "write the character itself"},
    {"YAML major version", Code::submittal_yaml, Points::word, "found a version of YAML that is not known",
     "leave the line out"},
    {"cannot assign the same alias", Code::submittal_alias, Points::word, "found a named part (`&name`)", no_names},
    {"cannot assign multiple tags", Code::submittal_shape, Points::word, "found a type mark (`!type`)",
     "leave the mark out"},
    {"the referenced anchor", Code::submittal_alias, Points::word,
     "found a reference (`*name`) to another part of the file", no_names},
    {"alias", Code::submittal_alias, Points::word, "found a reference (`*name`) to another part of the file",
     "put the value in quotes if it begins with `*`, otherwise write out what it stands for"},
    {"illegal character found while scanning a", Code::submittal_alias, Points::word,
     "found a reference to another part of the file", no_names},
    {"anchor", Code::submittal_alias, Points::word, "found a named part (`&name`)",
     "put the value in quotes if it begins with `&`, otherwise take the name out"},
    {"cannot set zero indentation", Code::submittal_yaml, Points::here, "found an indentation of 0 for a block of text",
     "leave the digit out"},
}};

}  // namespace

const YamlFault& yaml_fault(std::string_view library_message) {
  const auto* const found = std::find_if(faults.begin(), faults.end(),
                                         [&](const YamlFault& one) { return library_message.starts_with(one.begins); });
  return found == faults.end() ? general : *found;
}

const YamlFault& tab_fault() { return tab; }

const YamlFault& unclosed_fault(char bracket) {
  return yaml_fault(bracket == '[' ? "end of sequence flow" : "end of map flow");
}

const YamlFault& quote_fault() { return quote; }

}  // namespace plumbrule::evidence
