#include "judge/explain/steps.hpp"

namespace plumbrule::explain {
namespace {

using evaluate::Step;
using evaluate::StepKind;

constexpr int check_depth = 0;
constexpr int result_depth = 1;
constexpr int specimen_depth = 2;
constexpr int reading_depth = 3;

// A worked out number without the zeros that arithmetic leaves behind; readings keep the digits they were written with.
quantity::Amount plain(quantity::Amount amount) {
  amount.value = amount.value.stripped();
  return amount;
}

class Deriver {
 public:
  Deriver(const Context& context, const evaluate::Finding& finding) : context_(context), finding_(finding) {}

  std::vector<Line> run() {
    for (const Step& step : plan::part(context_.review.trace, finding_.steps)) {
      add(step);
    }
    return std::move(lines_);
  }

 private:
  const Context& context_;
  const evaluate::Finding& finding_;
  std::vector<Line> lines_;
  // Set by the first check step, before any step that speaks of a measure.
  check::Assertion no_assertion_;
  check::Measure no_measure_;
  const check::Assertion* assertion_ = &no_assertion_;
  const check::Measure* measure_ = &no_measure_;
  bool many_specimens_ = false;
  bool computed_ = false;
  std::uint32_t first_group_ = check::none;
  std::optional<quantity::Decimal> target_;

  void line(int depth, std::string text, const source::Span& span = {}) {
    lines_.push_back({depth, std::move(text), context_.sources.place_text(span)});
  }

  void add(const Step& step) {
    switch (step.kind) {
      case StepKind::class_tested:
      case StepKind::case_tested:
        return class_tested(step);
      case StepKind::group:
        return group(step);
      case StepKind::check:
        return check(step);
      case StepKind::result:
        return result(step);
      case StepKind::specimen:
        return specimen(step);
      case StepKind::reading:
        return reading(step);
      case StepKind::reported:
        return line(specimen_depth + (many_specimens_ ? 1 : 0),
                    "value as reported: " + show(context_, measure_->type, step.amount, step.other), step.span);
      case StepKind::compared:
        return compared(step);
      case StepKind::check_verdict:
        return check_verdict(step);
      default:
        return computed(step);
    }
  }

  void computed(const Step& step) {
    switch (step.kind) {
      case StepKind::lookup:
        return lookup(step);
      case StepKind::graded:
        return graded(step);
      case StepKind::summed:
        return line(reading_depth, measure_->readings[step.index].name + ", summed over " + std::to_string(step.other) +
                                       (step.other == 1 ? " row = " : " rows = ") +
                                       show(step.amount, context_.evidence.units));
      case StepKind::computed:
        return formula(step);
      case StepKind::refusal:
        return refusal(step);
      case StepKind::converted:
        // A computed value was already shown in the measure's unit.
        return step.amount.unit == measure_->type.unit && computed_
                   ? void()
                   : line(specimen_depth,
                          "in the unit of the limit: " + show(context_, plain(step.amount), measure_->type.basis));
      case StepKind::rounded:
        return line(specimen_depth,
                    "rounded before the statistic: " + show(context_, step.amount, measure_->type.basis));
      case StepKind::target:
        target_ = step.amount.value;
        return line(specimen_depth, "the job mix states " + show(context_, step.amount, measure_->type.basis),
                    step.span);
      case StepKind::end_to_end:
        return line(check_depth, "from one end of the band to the other between " +
                                     label(context_.rules, assertion_of(context_, finding_, step.index)) +
                                     " and the next sieve");
      case StepKind::combined:
        return line(specimen_depth,
                    std::string(statistic_name(static_cast<syntax::StatisticKind>(step.index))) + " of " +
                        std::to_string(step.other) +
                        (assertion_->statistic.over == syntax::Over::specimens ? " specimens = " : " results = ") +
                        show(context_, plain(step.amount), measure_->type.basis));
      case StepKind::result_verdict:
        if (step.outcome == Verdict::not_shown) {
          line(specimen_depth, "not shown: " + reason_text(step.reason));
        }
        return;
      default:
        return;
    }
  }

  void class_tested(const Step& step) {
    const check::Test& test = test_of(context_, finding_, step.index);
    const check::Category& category = context_.rules.categories[test.category];
    const bool narrower = step.kind == StepKind::case_tested;
    const std::string wanted = (narrower ? "the exception is for " : "the clause is for ") + spaced(category.name) +
                               " " + words(category, test.words);
    if (step.reason == Reason::class_not_stated) {
      return line(check_depth, wanted + "; the submittal does not state it");
    }
    const std::string applies = narrower ? ": it counts" : ": it applies";
    const std::string excluded = narrower ? ": it does not count" : ": it does not apply";
    line(check_depth,
         wanted + "; the submittal states " + spaced(category.words[step.other]) +
             (step.outcome == Verdict::complies ? applies : excluded),
         step.span);
  }

  void group(const Step& step) {
    const std::uint32_t count = alternatives_of(context_, finding_);
    first_group_ = first_group_ == check::none ? step.index : first_group_;
    if (count > 1) {
      line(check_depth,
           "alternative " + std::to_string(step.index - first_group_ + 1) + " of " + std::to_string(count));
    }
  }

  void check(const Step& step) {
    assertion_ = &assertion_of(context_, finding_, step.index);
    target_.reset();
    measure_ = &context_.rules.measures[assertion_->measure];
    const std::string how = statistic(assertion_->statistic);
    line(check_depth,
         label(context_.rules, *assertion_) + (how.empty() ? "" : ", " + how) + ": " + limit_text(assertion_->limit),
         assertion_->limit.span);
  }

  void result(const Step& step) {
    const evidence::Result& result = context_.evidence.results[step.index];
    many_specimens_ = result.specimens.size() > 1;
    const std::string method = measure_->method.empty() ? "" : ", " + measure_->method;
    line(result_depth, "result for " + measure_->name + method, step.span);
    if (!result.specimens.empty() && result.reported.usable()) {
      line(specimen_depth,
           "reported as " + show(context_, measure_->type, result.reported.amount, result.reported.word) +
               "; recomputed from the specimens below",
           result.reported.span);
    }
  }

  void specimen(const Step& step) {
    computed_ = false;
    if (many_specimens_) {
      line(specimen_depth, "specimen " + std::to_string(step.index + 1), step.span);
    }
  }

  void reading(const Step& step) {
    const check::Reading& reading = measure_->readings[step.index];
    if (step.outcome == Verdict::not_shown) {
      return line(reading_depth,
                  reading.name + ": " + (step.reason == Reason::missing_reading ? "missing" : "cannot be used"),
                  step.span);
    }
    line(reading_depth, reading.name + " = " + show(context_, reading.type, step.amount, step.other), step.span);
  }

  void lookup(const Step& step) {
    const check::Table& table = context_.rules.tables[step.index];
    line(reading_depth,
         table.name + " for " + context_.rules.categories[table.category].words[step.other] + found(table, step.other),
         table.spans[step.other]);
  }

  // The value of a row of a table.
  [[nodiscard]] std::string found(const check::Table& table, std::uint32_t row) const {
    const quantity::Amount amount{table.values[row], table.type.unit};
    return " = " + show(amount, context_.evidence.units) + " (table" +
           std::string(table.provenance.status == check::Status::unverified ? ", unverified" : "") + ")";
  }

  void graded(const Step& step) {
    const check::Table& table = context_.rules.tables[step.index];
    quantity::Amount key = plain(step.amount);
    key.unit = table.key.unit;
    const std::string lead = table.name + ": " + show(context_, key, table.key.basis);
    if (step.other == check::none) {
      const bool exact = key.bound == quantity::Bound::exact;
      const bool beyond = step.reason == Reason::beyond_table;
      return line(reading_depth,
                  lead + (exact    ? " falls in no row"
                          : beyond ? " may fall in no row"
                                   : " may fall in more than one row"),
                  table.span);
    }
    const bool edge = step.other < table.edges.size();
    const std::string row = edge ? one_line(context_.sources.text(table.edges[step.other].span)) : "otherwise";
    line(reading_depth, lead + " falls in `" + row + "`" + found(table, step.other), table.spans[step.other]);
  }

  void formula(const Step& step) {
    computed_ = true;
    if (step.outcome == Verdict::not_shown) {
      return line(reading_depth, "not computed: " + reason_text(step.reason), step.span);
    }
    const check::Formula& tree = context_.rules.formulas[*measure_->computed];
    const quantity::UnitTable& units = context_.evidence.units;
    quantity::Amount shown = step.amount;
    std::string text = one_line(context_.sources.text(tree.span)) + " = " + show(plain(shown), units);
    if (shown.unit != measure_->type.unit) {
      shown.value = quantity::convert(shown.value, units.at(shown.unit), units.at(measure_->type.unit));
      shown.unit = measure_->type.unit;
      text += " = " + show(context_, plain(shown), measure_->type.basis);
    }
    line(reading_depth, std::move(text), tree.span);
  }

  void refusal(const Step& step) {
    line(reading_depth, "refused, because " + measure_->refusals[step.index].because, step.span);
  }

  void compared(const Step& step) {
    if (measure_->type.is_word()) {
      return line(
          specimen_depth,
          show(context_, measure_->type, step.amount, step.other) + ": " + std::string(verdict_text(step.outcome)),
          step.span);
    }
    if (!step.amount.value.finite()) {
      return line(specimen_depth, "not shown: " + reason_text(Reason::not_computable));
    }
    const Standing at = standing(context_, *assertion_, step.amount, target_);
    line(specimen_depth, show(plain(step.amount), context_.evidence.units) + ", " + at.rule + ": " + at.value);
    std::string text =
        at.value + " against " + limit_text(assertion_->limit) + ": " + std::string(verdict_text(step.outcome));
    text += step.reason != Reason::none ? ", " + reason_text(step.reason) : at.margin.empty() ? "" : ", " + at.margin;
    line(specimen_depth, std::move(text));
  }

  void check_verdict(const Step& step) {
    const bool nothing = step.outcome == Verdict::not_shown && (lines_.empty() || lines_.back().depth == check_depth);
    if (nothing) {
      line(result_depth, "not shown: " + reason_text(step.reason));
    }
  }
};

}  // namespace

std::vector<Line> derivation(const Context& context, const evaluate::Finding& finding) {
  return Deriver(context, finding).run();
}

}  // namespace plumbrule::explain
