#include "doors/command/followup.hpp"

#include <algorithm>

#include "doors/command/origin.hpp"
#include "judge/evidence/written.hpp"
#include "show/report/followup/followup.hpp"

namespace plumbrule::command {
namespace {

using evaluate::Outcome;

// A submittal reviewed against one specification. The context points into it, so that it stays where it was made.
class Reviewed {
 public:
  Reviewed(const source::SourceMap& sources, const RuleSet& set, evidence::Evidence evidence)
      : evidence_(std::move(evidence)),
        review_(evaluate::evaluate(set.plan, evidence_)),
        context_{sources, set.rules, set.plan, evidence_, review_},
        inspection_(audit::inspect(context_)) {
    for (const evaluate::Finding& finding : review_.findings) {
      explanations_.push_back(explain::explain(context_, finding));
    }
  }
  Reviewed(const Reviewed&) = delete;
  Reviewed& operator=(const Reviewed&) = delete;
  Reviewed(Reviewed&&) = delete;
  Reviewed& operator=(Reviewed&&) = delete;
  ~Reviewed() = default;

  [[nodiscard]] followup::Side side() const { return {context_, inspection_}; }
  [[nodiscard]] const evaluate::Review& review() const { return review_; }
  [[nodiscard]] const std::vector<explain::Explanation>& explanations() const { return explanations_; }

 private:
  evidence::Evidence evidence_;
  evaluate::Review review_;
  explain::Context context_;
  audit::Inspection inspection_;
  std::vector<explain::Explanation> explanations_;
};

// One of the two files, and the errors that several specifications meet in it.
struct File {
  evidence::Node document;
  Merged merged;
  report::FollowedSubmittal shown;
};

struct Bound {
  evidence::Evidence evidence;
  diagnose::Diagnostics problems;
};

std::optional<Bound> bind(File& file, const RuleSet& set, const evidence::KnownNames& names, const std::string& on) {
  Bound out;
  auto evidence = evidence::bind(file.document, set.rules, names, out.problems);
  file.merged.add(out.problems);
  if (!evidence) {
    return std::nullopt;
  }
  if (const auto day = evidence::read_date(on)) {
    evidence->date = *day;
  }
  file.shown.identity = evidence->identity;
  out.evidence = std::move(*evidence);
  return out;
}

// False if one of the files cannot be reviewed.
bool compare(const source::SourceMap& sources, const std::vector<RuleSet>& sets, const std::string& on, File& before,
             File& after, report::FollowUpReport& report) {
  followup::FollowUp all;
  const evidence::KnownNames names = names_of(sets);
  for (const RuleSet& set : sets) {
    auto then = bind(before, set, names, on);
    auto now = bind(after, set, names, on);
    if (!then || !now) {
      return false;
    }
    const Reviewed earlier(sources, set, std::move(then->evidence));
    const Reviewed later(sources, set, std::move(now->evidence));
    const followup::FollowUp found = followup::compare(earlier.side(), later.side());
    report::SpecificationFollowUp part{
        head_of(set),
        evaluate::outcome(set.plan, earlier.review().findings, then->problems.has_errors()),
        evaluate::outcome(set.plan, later.review().findings, now->problems.has_errors()),
        later.review().findings.size(),
        {}};
    for (const followup::ClauseProgress& one : found.clauses) {
      part.findings.push_back(report::clause_follow_up(one, earlier.explanations(), later.explanations()));
    }
    report.specifications.push_back(std::move(part));
    followup::join(all, found);
  }
  report::add_differences(report, all, sources);
  return true;
}

// Errors are printed, and belong to the report.
void take_problems(File& file, const source::SourceMap& sources) {
  const diagnose::Diagnostics problems = file.merged.take();
  print_diagnostics(problems, sources);
  file.shown.problems = problems_of(problems, diagnose::Severity::error, sources);
  file.shown.warnings = problems_of(problems, diagnose::Severity::warning, sources);
}

Exit status(const report::FollowUpReport& report) {
  Exit out = report::leaves_open(report.origin) ? Exit::incomplete : Exit::complies;
  for (const report::SpecificationFollowUp& one : report.specifications) {
    if (one.after == Outcome::revise_and_resubmit || one.after == Outcome::refer_to_engineer) {
      return Exit::fails;
    }
    out = one.after == Outcome::incomplete ? Exit::incomplete : out;
  }
  const bool settled =
      std::all_of(report.specifications.begin(), report.specifications.end(),
                  [](const report::SpecificationFollowUp& one) { return report::tally(one).settled(); });
  return out == Exit::complies && !settled ? Exit::fails : out;
}

std::string page(const report::FollowUpReport& report, const FollowUpOptions& options) {
  return options.format == Format::html       ? report::follow_up_html(report)
         : options.format == Format::json     ? report::follow_up_json(report)
         : options.format == Format::markdown ? report::follow_up_markdown(report)
                                              : report::follow_up_text(report, options.out.empty() && colour_output());
}

}  // namespace

Exit follow_up(const FollowUpOptions& options) {
  if (!options.rules.on.empty() && !evidence::read_date(options.rules.on)) {
    print_error("found `" + options.rules.on + "`, no date; write year, month and day: 2026-03-20");
    return Exit::unusable;
  }
  source::SourceMap sources;
  const auto rules = prepare_all(sources, options.rules);
  if (!rules) {
    return Exit::rules_broken;
  }
  auto earlier = read_submittal(sources, options.before, options.record_before, "--record-before");
  auto later = read_submittal(sources, options.after, options.record_after, "--record-after");
  if (!earlier || !later) {
    return Exit::unusable;
  }
  File before{std::move(*earlier->tree), {}, {earlier->name, {}, {}, {}}};
  File after{std::move(*later->tree), {}, {later->name, {}, {}, {}}};
  report::FollowUpReport report;
  const bool usable = compare(sources, rules->sets, options.rules.on, before, after, report);
  take_problems(before, sources);
  take_problems(after, sources);
  if (!usable) {
    return Exit::unusable;
  }
  report.before = before.shown;
  report.after = after.shown;
  report.on = options.rules.on;
  report.origin = origin_of(sources, *rules, {before.document.span.file, after.document.span.file});
  return write_output(page(report, options), options.out, sources) ? status(report) : Exit::unusable;
}

}  // namespace plumbrule::command
