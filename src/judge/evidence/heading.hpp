#pragma once
// One heading of a sheet, read into the place that it names in a submittal. Inside the evidence stage only.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/quantity/unit.hpp"
#include "judge/evidence/sheet.hpp"

namespace plumbrule::evidence {

/// A word of a heading, and where it is written.
struct Name {
  std::string text;
  source::Span span;
};

/// A step from a map to one of its entries, or from a list to one of its items: the first with `name` to the item that
/// was first called so.
struct Step {
  Name name;
  bool item = false;
};

struct Heading {
  std::vector<Step> path;  // from the submittal to the value
  Name measure;            // of a result; empty otherwise
  std::vector<std::pair<Name, Name>> under, at;
  bool direct = false;  // a specimen that is a value, without a name for it
  std::string unit;     // and basis; empty if none is said
};

/// Nothing, and a diagnostic, if it cannot be read. `units` learns the units that it says.
[[nodiscard]] std::optional<Heading> read_heading(const Cell& cell, quantity::UnitTable& units,
                                                  diagnose::Diagnostics& diagnostics);

/// Whether a text is one of the names that identify a submittal: `mix`, `date` ...
[[nodiscard]] bool is_identity(std::string_view text);

/// Whether a text is a name as language.md 2.4 has it.
[[nodiscard]] bool is_name(std::string_view text);

/// The value that a cell states under a heading with this unit: "180 or more" under "s" is "180 s or more". A cell that
/// is no number stays as it is. Nothing if it says a unit of its own.
[[nodiscard]] std::optional<std::string> with_unit(std::string_view written, std::string_view unit);

}  // namespace plumbrule::evidence
