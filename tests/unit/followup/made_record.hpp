#pragma once
// Invented records of what a shipped specification asks for, and the follow-up of two of them. Tests only.

#include <map>
#include <memory>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "apply/followup/followup.hpp"
#include "language/check/check.hpp"
#include "language/plan/plan.hpp"

namespace plumbrule::followup::made {

using Words = std::map<std::string, std::string>;
using Texts = std::vector<std::string>;

struct Reviewed;  // a record with its review

/// A specification of the repository, ready for reviews.
struct Shipped {
  std::string path;
  source::SourceMap sources;
  check::Rules rules;
  plan::Plan plan;
  // The earlier submittal of the last follow-up: many resubmittals are held against one.
  std::string earlier_text;
  std::shared_ptr<const Reviewed> earlier;
};
/// Precondition: the file is in order.
[[nodiscard]] std::unique_ptr<Shipped> read(const std::string& path);
/// All of specs that hold a specification.
[[nodiscard]] Texts shipped_files();

/// One result. `specimens`: each as written.
struct Trial {
  std::string measure;
  Words under, at;
  std::string tested = "2026-03-05";
  Texts specimens;
  std::string reported, lot;
};

/// A submittal. All trials stand at the job mix but those with `at`.
struct Record {
  std::string project = "Road 8", mix = "MS-08-C", date = "2026-03-20";
  Words classes, job_mix;
  std::vector<Trial> trials;
};
[[nodiscard]] std::string yaml(const Record& record);

/// Of a trial that is made from a subject.
inline constexpr std::size_t specimens = 3;
[[nodiscard]] Texts first(const Texts& values, std::size_t count);

/// A test that the specification asks for. Of values that fail a clause, and of those that do not, there are six, all
/// different unless they are words; `failing` is empty if none was found.
struct Subject {
  check::MeasureId measure = check::none;
  Trial trial;  // without values
  Texts failing, passing;
};
[[nodiscard]] std::vector<Subject> subjects(Shipped& shipped, const Words& classes);
/// Classes that the clauses ask for: of each the word with this number, or the last.
[[nodiscard]] Words classes_of(const Shipped& shipped, std::size_t number);

/// A value of the measure's type, as a record writes it.
[[nodiscard]] std::string written_value(const check::Rules& rules, const check::Type& type, const std::string& number);

/// `readable`: whether the records have to be without errors.
[[nodiscard]] FollowUp follow(Shipped& shipped, const Record& before, const Record& after, bool readable = true);
/// Which of the trials fail a clause.
[[nodiscard]] std::set<std::size_t> failing(Shipped& shipped, const Record& record);
[[nodiscard]] std::string codes(const FollowUp& followup);

}  // namespace plumbrule::followup::made
