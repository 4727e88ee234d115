#pragma once
// `plumbrule window`: the range of a design value that every tested clause allows (language.md, section 15).

#include "doors/command/review.hpp"
#include "doors/command/workplace.hpp"

namespace plumbrule::command {

struct WindowOptions {
  std::string submittal;
  std::string record;  // of a sheet of several: its number or its mix; or empty
  library::RuleChoice rules;
  std::string vary;       // a measure, or empty: each that results vary
  std::string tolerance;  // of production, or empty
  std::string explain;    // a clause number, or empty
  std::string out;        // a file, or empty
  bool curve = false;
  Format format = Format::text;
  Detail detail{};
  bool log = false;
};

[[nodiscard]] Exit window(const WindowOptions& options);

}  // namespace plumbrule::command
