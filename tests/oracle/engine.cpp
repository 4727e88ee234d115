#include "engine.hpp"

#include "amended.hpp"
#include "judge/explain/explanation.hpp"

namespace plumbrule::oracle {
namespace {

std::string answer(std::string_view verdict, std::string_view why) {
  return std::string(verdict) + (why == "none" || why.empty() ? "" : " (" + std::string(why) + ")");
}

// The judge decides, the engine leaves it open: allowed after the last three losses.
bool allowed(const evaluate::Finding& engine, const Finding& judge) {
  return engine.verdict == evaluate::Verdict::not_shown && judge.judged.verdict != Verdict::does_not_apply &&
         (judge.lost.has(Loss::both_ends) || judge.lost.has(Loss::unknown_refusal) || judge.lost.has(Loss::staged_tie));
}

// Only reasons for "not shown" and "does not apply" are compared; the engine gives none for the other two.
bool same_reason(const evaluate::Finding& engine, const Finding& judge) {
  const bool told = judge.judged.verdict == Verdict::not_shown || judge.judged.verdict == Verdict::does_not_apply;
  return !told || !judge.simple || judge.lost.any() || explain::reason_code(engine.reason) == text(judge.judged.why);
}

}  // namespace

std::unique_ptr<RuleSet> prepare(const source::SourceMap& sources, check::Loaded loaded, const std::string& on,
                                 diagnose::Diagnostics& diagnostics) {
  std::vector<syntax::RuleFile> written = amended(loaded.files, loaded.amendments, on);
  diagnose::Diagnostics mismatches;
  check::amend(loaded, on, diagnostics, mismatches);
  diagnostics.append(mismatches);
  auto rules = check::check(sources, loaded.files, diagnostics);
  if (!rules || !rules->specification) {
    return nullptr;
  }
  auto out = std::make_unique<RuleSet>();
  out->written = std::move(written);
  out->rules = std::move(*rules);
  out->plan = plan::compile(out->rules);
  out->book = std::make_unique<Rulebook>(sources, out->written);
  return out;
}

Answers ask_engine(const RuleSet& rules, const evidence::Node& document, const evidence::KnownNames& others,
                   std::optional<std::int32_t> on) {
  Answers out;
  diagnose::Diagnostics problems;
  auto evidence = evidence::bind(document, rules.rules, others, problems);
  if (!evidence) {
    return out;
  }
  evidence->date = on.value_or(evidence->date);
  out.readable = true;
  out.has_errors = problems.has_errors();
  out.review = evaluate::evaluate(rules.plan, *evidence);
  out.outcome = evaluate::outcome(rules.plan, out.review.findings, false);
  return out;
}

Comparison compare(const check::Rules& rules, const Answers& engine, const Review& judge) {
  Comparison out;
  if (engine.readable != judge.readable || engine.review.findings.size() != judge.findings.size()) {
    out.differences.push_back(
        {"", engine.readable ? "a submittal" : "no submittal", judge.readable ? "a submittal" : "no submittal"});
    return out;
  }
  if (!judge.readable) {
    return out;
  }
  out.clauses = judge.findings.size();
  bool left_open = false;
  for (std::size_t at = 0; at < judge.findings.size(); ++at) {
    const evaluate::Finding& theirs = engine.review.findings[at];
    const Finding& own = judge.findings[at];
    const std::string_view verdict = explain::verdict_text(theirs.verdict);
    if (rules.requirements[theirs.requirement].number != own.number) {
      out.differences.push_back({own.number, "clause " + rules.requirements[theirs.requirement].number, "this clause"});
      continue;
    }
    ++out.verdicts.at(static_cast<std::size_t>(own.judged.verdict));
    for (std::size_t loss = 0; own.judged.verdict == Verdict::not_shown && loss < losses; ++loss) {
      out.left_open.at(loss) += own.lost.has(static_cast<Loss>(loss)) ? 1 : 0;
    }
    if (verdict == text(own.judged.verdict) && same_reason(theirs, own)) {
      continue;
    }
    if (allowed(theirs, own)) {
      left_open = true;
      ++out.left_open.at(static_cast<std::size_t>(Loss::both_ends));
      continue;
    }
    out.differences.push_back({own.number, answer(verdict, explain::reason_code(theirs.reason)),
                               answer(text(own.judged.verdict), text(own.judged.why))});
  }
  const std::string_view outcome = explain::outcome_text(engine.outcome);
  if (out.differences.empty() && !left_open && outcome != text(judge.outcome)) {
    out.differences.push_back({"outcome", std::string(outcome), std::string(text(judge.outcome))});
  }
  return out;
}

Comparison compare(RuleSet& rules, const evidence::Node& document, const evidence::KnownNames& others,
                   std::optional<std::int32_t> on) {
  const Answers engine = ask_engine(rules, document, others, on);
  return compare(rules.rules, engine, review(*rules.book, rules.units, document, on));
}

}  // namespace plumbrule::oracle
