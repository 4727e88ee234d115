#pragma once
// One submittal under one specification: bound, judged, and ready to be explained and audited. What every use of
// verdicts begins with.

#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "base/diagnose/problem.hpp"
#include "judge/audit/audit.hpp"
#include "judge/explain/explanation.hpp"
#include "language/library/rule_set.hpp"

namespace plumbrule::assess {

/// Stays where it was made, as its context points into it.
class Assessment {
 public:
  Assessment(const source::SourceMap& sources, const library::RuleSet& set, evidence::Evidence evidence, bool faulty);
  Assessment(const Assessment&) = delete;
  Assessment& operator=(const Assessment&) = delete;
  Assessment(Assessment&&) = delete;
  Assessment& operator=(Assessment&&) = delete;
  ~Assessment() = default;

  [[nodiscard]] const explain::Context& context() const { return context_; }
  [[nodiscard]] const evidence::Evidence& evidence() const { return evidence_; }
  [[nodiscard]] const std::vector<evaluate::Finding>& findings() const { return review_.findings; }
  /// The submittal has errors, so that it does not comply as a whole.
  [[nodiscard]] bool faulty() const { return faulty_; }
  [[nodiscard]] evaluate::Outcome outcome() const;
  [[nodiscard]] std::vector<explain::Explanation> explanations() const;
  [[nodiscard]] audit::Inspection inspection() const { return audit::inspect(context_); }

 private:
  evidence::Evidence evidence_;
  bool faulty_ = false;
  evaluate::Review review_;
  explain::Context context_;
};

/// What is asked of a submittal under each of several specifications.
struct Asked {
  const source::SourceMap& sources;
  evidence::KnownNames names;        // of all of them: what one does not know may be meant for another
  std::optional<std::int32_t> on{};  // the day of the review; without it the submittal's own date
};
[[nodiscard]] Asked asked_of(const source::SourceMap& sources, std::span<const library::RuleSet> sets,
                             std::optional<std::int32_t> on = std::nullopt);

/// Nothing if the document is no submittal; what is wrong with it goes to `problems`.
[[nodiscard]] std::unique_ptr<const Assessment> assess(const Asked& asked, const evidence::Node& document,
                                                       const library::RuleSet& set, diagnose::Merged& problems);

/// What a review comes to, over all specifications: all comply, at least one fails, or neither is shown.
enum class Upshot : std::uint8_t { complies, fails, incomplete };

/// Gathers outcomes one after the other: a failure outweighs what is open, and what is open outweighs what complies.
/// Nothing added: incomplete.
class Upshots {
 public:
  void add(evaluate::Outcome outcome);
  /// Something that was asked for is not judged.
  void add_open(bool open) { open_ = open_ || open; }
  [[nodiscard]] Upshot upshot() const {
    return fails_ ? Upshot::fails : open_ || !any_ ? Upshot::incomplete : Upshot::complies;
  }

 private:
  bool fails_ = false, open_ = false, any_ = false;
};

/// The names that the specifications know.
[[nodiscard]] evidence::KnownNames names_of(std::span<const library::RuleSet> sets);

/// What identifies the specification in a report.
[[nodiscard]] explain::SpecificationHead head_of(const library::RuleSet& set);

}  // namespace plumbrule::assess
