#pragma once
// A resubmittal held against the submittal before it, both reviewed against the same rules (language.md, section 18):
// what became of the findings, which values changed and where, and what is worth a look. Nothing here changes a
// verdict, and nothing accuses: every look has innocent explanations.

#include <string>
#include <string_view>
#include <vector>

#include "judge/audit/audit.hpp"
#include "judge/explain/explanation.hpp"

namespace plumbrule::followup {

using source::Span;

/// What became of a finding. `withdrawn`: it neither stands nor was shown to be met: the clause no longer applies, or
/// what failed is no longer submitted. A withdrawn finding is never a closed one. A clause that waited for a class that
/// was not stated, and by it does not apply, is closed.
enum class Progress : std::uint8_t { closed, still_open, fresh, withdrawn };

/// A clause that is open in one of the two, or in both: it fails, or is not shown and not optional.
struct ClauseProgress {
  std::uint32_t requirement = 0;
  Progress progress{};
  bool counts = false;  // not advice only
  bool open = false;    // in the new submittal
  std::string note;     // why, of a withdrawn one and of one that a class closed
};

/// A value that differs. `difference`: after less before, in words, or that it was only converted; empty for words,
/// bounds and what is missing.
struct ValueChange {
  std::string subject, what;  // "sand adhesion", "specimen 2, mass after"
  std::string before, after, difference;
  Span before_place, after_place;  // unknown: it is written in one of the two only, or has no place of its own
};

/// A result that stands in one of the two only.
struct ResultChange {
  bool added = false;
  std::string subject;
  std::string value;  // as reported, or how many specimens
  Span place;
};

enum class LookKind : std::uint8_t {
  reading_altered,    // a value as read or reported is another one, and the test has no later date
  reported_alone,     // the reported value changed, its readings did not
  failing_gone,       // a result that failed a clause is not submitted any more
  moved,              // the same values now stand under another condition, design value or lot
  class_changed,      // by another class a clause no longer applies, or asks for less
  specimen_gone,      // a specimen is missing from a set whose others are the same, or all others
  readings_repeated,  // the same readings, or one of all specimens, under another test date
  readings_gone,      // specimens gave readings before, and only a value is submitted now
  specimen_added,     // a set that failed has more specimens, and the test has no new date
  job_mix_changed,    // the job mix declares another value, and tests at the job mix are those of before
  materials_changed,  // another material is listed, and tests are those of before; or a test says another one
  other_submittal,    // another project or mix: the comparison may be of the wrong files
  dates_reversed,     // the first submittal is dated after the second
};

struct Look {
  LookKind kind{};
  std::string found, look;  // what differs; what to compare
  Span before, after;       // places; one may be unknown
};

/// What became of a finding of the audit.
struct AuditProgress {
  Progress progress{};
  audit::Finding finding;  // of the new submittal, or of the earlier one if it does not stand in the new one
};

struct FollowUp {
  std::vector<ClauseProgress> clauses;
  std::vector<ValueChange> values;
  std::vector<ResultChange> results;
  std::vector<Look> looks;
  std::vector<AuditProgress> audit;
};

/// One of the two submittals, reviewed.
struct Side {
  const explain::Context& context;
  const std::vector<audit::Finding>& audit;  // what was found odd about its readings
};

/// Both sides are of the same rules.
[[nodiscard]] FollowUp compare(const Side& before, const Side& after);

/// Adds what another specification sees; `clauses` belong to one specification and are left out. What two see alike is
/// kept once.
void join(FollowUp& all, const FollowUp& other);

/// "closed", "still open", "new", "withdrawn".
[[nodiscard]] std::string_view progress_text(Progress progress);
/// A stable word for programs: "reading_altered" ...
[[nodiscard]] std::string_view look_code(LookKind kind);

}  // namespace plumbrule::followup
