#pragma once
// From rule files to checked rules.

#include <optional>
#include <string>
#include <vector>

#include "language/check/rules.hpp"

namespace plumbrule::check {

class Shelf;

/// The files of one set of rules: the specification (or a vocabulary on its own) first, then what it uses; and the
/// amendments to it.
struct Loaded {
  std::vector<syntax::RuleFile> files;
  std::vector<syntax::RuleFile> amendments;
  /// An amendment that is about this specification.
  struct Fitting {
    source::FileId file{};
    std::string title, effective;
    bool in_force = false;
  };
  std::vector<Fitting> fitting;
};

/// The first day of a date that may lack its day or month: "2026-05" is the first of May, "2026" the first of January.
[[nodiscard]] std::string first_day(const std::string& mark);

/// What to read. `uses NAME` and `amends NAME` are looked for as NAME.plumb in the folder of the file, in its
/// `vocabulary` subfolder, beside its parent, and then in each library folder. A path that holds an amendment stands
/// for the amended specification.
struct Request {
  std::string path;
  std::vector<std::string> amendments;
  std::vector<std::string> libraries;
};
[[nodiscard]] Loaded load(Shelf& shelf, const Request& request, diagnose::Diagnostics& diagnostics);

/// Puts the amendments that are in force into the specification, in the order of their effective dates. `on`: the day
/// ("2026-05-15"); empty: all are in force. Reported: an amendment to another specification or edition, a change to a
/// clause that does not exist, an added clause that does, and two amendments of one day that change the same clause.
/// What is about another specification goes into `mismatches`: it may be meant for another one of the review.
void amend(Loaded& loaded, const std::string& on, diagnose::Diagnostics& diagnostics,
           diagnose::Diagnostics& mismatches);

/// Resolves and checks. Nothing if any error was reported (also before, while reading); all errors are reported.
[[nodiscard]] std::optional<Rules> check(const source::SourceMap& sources, const std::vector<syntax::RuleFile>& files,
                                         diagnose::Diagnostics& diagnostics);

/// Remarks (warnings) on a specification that is in order but looks wrong. What the author accepts with `accept` is
/// left out.
void lint(const Rules& rules, diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::check
