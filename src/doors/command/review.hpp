#pragma once
// `plumbrule review`: one submittal against specifications.

#include <string>
#include <vector>

#include "doors/command/output.hpp"

namespace plumbrule::command {

enum class Format : std::uint8_t { text, json, sarif, junit, markdown, rules, html };

struct ReviewOptions {
  std::string submittal;
  std::string record;  // of a sheet of several: its number or its mix; or empty
  std::vector<std::string> against;
  std::vector<std::string> libraries;
  std::vector<std::string> amendments;
  std::string on;       // a day, or empty: today's rules, all amendments
  std::string explain;  // a clause number, or empty
  std::string out;      // a file, or empty
  Format format = Format::text;
  Detail detail{};
  bool matrix = false;  // tests by specifications, instead of the findings
  bool log = false;
};

[[nodiscard]] Exit review(const ReviewOptions& options);

}  // namespace plumbrule::command
