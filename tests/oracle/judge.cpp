#include "judge.hpp"

#include <algorithm>
#include <array>

#include "trial_judge.hpp"

namespace plumbrule::oracle {
namespace {

enum class Fit : std::uint8_t { yes, no, unknown };

using Classes = std::map<std::string, std::set<std::string>>;

class RequirementJudge {
 public:
  RequirementJudge(const Rulebook& book, Units& units, const Record& record)
      : book_(book), record_(record), demands_(book, units), trials_(book, units, record, lost_) {}

  Finding judge(const syntax::Requirement& requirement) {
    lost_ = {};
    Finding out;
    out.number = requirement.number.value;
    out.judged = verdict(requirement, out.simple);
    out.lost = lost_;
    return out;
  }

 private:
  const Rulebook& book_;
  const Record& record_;
  Lost lost_;
  DemandReader demands_;
  TrialJudge trials_;

  // A class that excludes settles it, whatever else is not stated.
  Fit fits(const std::vector<syntax::Test>& tests) const {
    Fit out = Fit::yes;
    for (const syntax::Test& test : tests) {
      const auto stated = record_.classes.find(test.category.value);
      if (stated == record_.classes.end()) {
        out = Fit::unknown;
        continue;
      }
      const bool named = std::any_of(test.words.begin(), test.words.end(),
                                     [&](const syntax::Text& word) { return word.value == stated->second; });
      if (named == test.negated) {
        return Fit::no;
      }
    }
    return out;
  }

  // What the tests leave of each category that they name.
  Classes classes(const std::vector<syntax::Test>& tests) const {
    Classes out;
    for (const syntax::Test& test : tests) {
      std::set<std::string> left;
      for (const syntax::Text& word : book_.category(test.category.value)->words) {
        const bool named = std::any_of(test.words.begin(), test.words.end(),
                                       [&](const syntax::Text& one) { return one.value == word.value; });
        if (named != test.negated) {
          left.insert(word.value);
        }
      }
      const auto [at, fresh] = out.try_emplace(test.category.value, left);
      if (!fresh) {
        std::erase_if(at->second, [&](const std::string& word) { return !left.contains(word); });
      }
    }
    return out;
  }

  bool inside(const syntax::Exception& narrow, const syntax::Exception& wide) const {
    const Classes inner = classes(narrow.where);
    const Classes outer = classes(wide.where);
    return std::all_of(outer.begin(), outer.end(), [&](const auto& category) {
      const auto at = inner.find(category.first);
      return at != inner.end() &&
             std::includes(category.second.begin(), category.second.end(), at->second.begin(), at->second.end());
    });
  }

  // The narrowest exception that the classes meet; open when one that is narrower still may be met.
  struct Chosen {
    const syntax::Exception* exception = nullptr;
    bool open = false;
  };
  Chosen choose(const syntax::Requirement& requirement) const {
    Chosen out;
    for (const syntax::Exception& one : requirement.exceptions) {
      if (fits(one.where) == Fit::yes && (out.exception == nullptr || inside(one, *out.exception))) {
        out.exception = &one;
      }
    }
    for (const syntax::Exception& one : requirement.exceptions) {
      const bool matters = out.exception == nullptr || inside(one, *out.exception);
      out.open = out.open || (fits(one.where) == Fit::unknown && matters);
    }
    return out;
  }

  Judged verdict(const syntax::Requirement& requirement, bool& simple) {
    simple = true;
    switch (fits(requirement.where)) {
      case Fit::no:
        return {Verdict::does_not_apply, Why::class_excluded};
      case Fit::unknown:
        return {Verdict::not_shown, Why::class_not_stated};
      default:
        break;
    }
    const Chosen chosen = choose(requirement);
    if (chosen.open) {
      return {Verdict::not_shown, Why::class_not_stated};
    }
    if (chosen.exception != nullptr && !chosen.exception->limit) {
      return {Verdict::does_not_apply, Why::exempted};
    }
    if (chosen.exception != nullptr) {
      return all(requirement.alternatives.front(), *chosen.exception->limit, requirement, simple);
    }
    return either(requirement, simple);
  }

  Judged either(const syntax::Requirement& requirement, bool& simple) {
    Judged out{Verdict::fails, Why::none};
    for (const syntax::Assertion& one : requirement.alternatives) {
      const Judged judged = all(one, one.limit, requirement, simple);
      if (judged.verdict == Verdict::complies || out.verdict == Verdict::complies) {
        out = {Verdict::complies, Why::none};
      } else if (out.verdict == Verdict::fails) {
        out = judged;
      }
    }
    simple = simple && requirement.alternatives.size() == 1;
    return out;
  }

  Judged all(const syntax::Assertion& assertion, const syntax::Limit& limit, const syntax::Requirement& requirement,
             bool& simple) {
    const Demands demands = demands_.read(assertion, limit, requirement);
    const auto& validity = requirement.validity ? requirement.validity : book_.specification().validity;
    Judged out;
    std::vector<std::vector<Compared>> compared;
    for (const Demand& demand : demands.all) {
      also(out, trials_.demand(demand, validity));
      compared.push_back(trials_.compared());
      simple = simple && trials_.single();
    }
    simple = simple && demands.all.size() == 1;
    if (demands.ends) {
      also(out, consecutive(demands, compared));
    }
    return out;
  }

  // At which end of its band a value lies: 1 above, -1 below, 0 neither.
  static int end_of(const Demand& demand, const Decimal& ends, const Interval& value) {
    const Decimal& low = demand.low->value;
    const Decimal& high = demand.high->value;
    if (low == high || !value.exact()) {
      return 0;
    }
    const Decimal part = (high - low) * ends;
    return value.value() >= high - part ? 1 : value.value() <= low + part ? -1 : 0;
  }

  // Of the sieves with a band: none goes from one end to the other on the next, in one sample.
  static Judged consecutive(const Demands& demands, const std::vector<std::vector<Compared>>& compared) {
    std::map<std::string, int> before;  // by sample: the ends met on the sieve before, bit 0 below, bit 1 above
    for (std::size_t at = 0; at < demands.all.size(); ++at) {
      if (!demands.all[at].low) {
        continue;
      }
      std::map<std::string, int> here;
      for (const Compared& one : compared[at]) {
        const int end = end_of(demands.all[at], *demands.ends, one.amount);
        here[one.sample] |= end > 0 ? 2 : end < 0 ? 1 : 0;
        const int other = end > 0 ? 1 : end < 0 ? 2 : 0;
        if ((before[one.sample] & other) != 0) {
          return {Verdict::fails, Why::end_to_end};
        }
      }
      before = std::move(here);
    }
    return {};
  }
};

Outcome outcome_of(const Rulebook& book, const std::vector<Finding>& findings) {
  bool referred = false;
  bool open = false;
  bool any = false;
  for (std::size_t at = 0; at < findings.size(); ++at) {
    const syntax::Requirement& requirement = *book.requirements()[at];
    const Verdict verdict = findings[at].judged.verdict;
    if (requirement.severity.value == "advise") {
      continue;
    }
    if (verdict == Verdict::fails && requirement.severity.value != "refer") {
      return Outcome::revise_and_resubmit;
    }
    referred = referred || verdict == Verdict::fails;
    open = open || (verdict == Verdict::not_shown && !requirement.optional);
    any = any || verdict == Verdict::complies;
  }
  return referred ? Outcome::refer_to_engineer : open || !any ? Outcome::incomplete : Outcome::no_exception_taken;
}

}  // namespace

Review review(const Rulebook& book, Units& units, const evidence::Node& document, std::optional<std::int32_t> on) {
  Record record = read_record(book, units, document);
  Review out;
  out.readable = record.readable;
  if (!record.readable) {
    return out;
  }
  record.date = on ? on : record.date;
  RequirementJudge judge(book, units, record);
  for (const syntax::Requirement* requirement : book.requirements()) {
    out.findings.push_back(judge.judge(*requirement));
  }
  out.outcome = outcome_of(book, out.findings);
  return out;
}

std::string_view text(Verdict verdict) {
  constexpr std::array<std::string_view, 4> texts{"complies", "fails", "not shown", "does not apply"};
  return texts.at(static_cast<std::size_t>(verdict));
}

std::string_view text(Outcome outcome) {
  constexpr std::array<std::string_view, 4> texts{"No exception taken", "Refer to the engineer", "Revise and resubmit",
                                                  "Incomplete"};
  return texts.at(static_cast<std::size_t>(outcome));
}

std::string_view text(Why why) {
  constexpr std::array<std::string_view, 25> texts{"none",
                                                   "class_not_stated",
                                                   "class_excluded",
                                                   "exempted",
                                                   "no_result",
                                                   "other_conditions",
                                                   "condition_not_stated",
                                                   "other_design",
                                                   "lot_not_stated",
                                                   "too_old",
                                                   "date_not_stated",
                                                   "no_target",
                                                   "design_not_stated",
                                                   "unusable_value",
                                                   "missing_reading",
                                                   "refused",
                                                   "no_value",
                                                   "too_few_specimens",
                                                   "replicates_not_stated",
                                                   "specimens_needed",
                                                   "only_a_bound",
                                                   "series_needed",
                                                   "end_to_end",
                                                   "beyond_table",
                                                   "not_computable"};
  return texts.at(static_cast<std::size_t>(why));
}

}  // namespace plumbrule::oracle
