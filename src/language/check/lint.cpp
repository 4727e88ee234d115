#include <algorithm>
#include <map>

#include "language/check/check.hpp"

namespace plumbrule::check {
namespace {

using diagnose::Code;

// The one comparison of a requirement without alternatives, exceptions or grading; the remarks that compare
// requirements speak only of these.
struct Plain {
  const Requirement* requirement = nullptr;
  const Assertion* assertion = nullptr;
};

class Linter {
 public:
  Linter(const Rules& rules, diagnose::Diagnostics& diagnostics) : rules_(rules), diagnostics_(diagnostics) {}

  void run() {
    for (const Requirement& requirement : rules_.requirements) {
      one(requirement);
      const bool plain = requirement.cases.size() == 1 && requirement.cases.front().alternatives.size() == 1 &&
                         requirement.cases.front().alternatives.front().assertions.size() == 1;
      if (plain) {
        plain_.push_back({&requirement, &requirement.cases.front().alternatives.front().assertions.front()});
      }
    }
    pairs();
    gaps();
    for (const auto& [name, span] : rules_.unused) {
      remark(nullptr, Code::lint_unused, span, "found `" + name + "`, which no clause uses", "use it, or take it out");
    }
  }

 private:
  const Rules& rules_;
  diagnose::Diagnostics& diagnostics_;
  std::vector<Plain> plain_;

  static bool accepts(const std::vector<Accepted>& accepted, Code code) {
    return std::any_of(accepted.begin(), accepted.end(),
                       [&](const Accepted& one) { return one.code == diagnose::text(code); });
  }

  diagnose::Diagnostic* remark(const Requirement* about, Code code, const Span& span, const std::string& message,
                               const std::string& help) {
    if (accepts(rules_.specification->accepted, code) || (about != nullptr && accepts(about->accepted, code))) {
      return nullptr;
    }
    return &diagnostics_.warning(code, span, message, help);
  }

  void one(const Requirement& requirement) {
    if (requirement.cite.empty()) {
      remark(&requirement, Code::lint_citation, requirement.span,
             "found no citation in requirement `" + requirement.number + "`",
             "add `cite` with the table or paragraph of the document");
    }
    for (const Test& test : requirement.where) {
      reachable(requirement, test);
    }
    for (const Case& part : requirement.cases) {
      for (const Alternative& alternative : part.alternatives) {
        for (const Assertion& assertion : alternative.assertions) {
          limit(requirement, assertion);
        }
      }
    }
  }

  static const Test* last_of(const Requirement& requirement, CategoryId category) {
    const Test* out = nullptr;
    for (const Test& test : requirement.where) {
      out = test.category == category ? &test : out;
    }
    return out;
  }

  void reachable(const Requirement& requirement, const Test& test) {
    if (words_of(requirement, test.category) == 0 && &test == last_of(requirement, test.category)) {
      remark(&requirement, Code::lint_unreachable, test.span, "found a `where` that leaves no class at all",
             "name the classes that the requirement is for");
    }
  }

  void limit(const Requirement& requirement, const Assertion& assertion) {
    for (const auto& end : {assertion.limit.low, assertion.limit.high}) {
      if (end) {
        fine(requirement, *end);
        unusual(requirement, assertion, *end);
      }
    }
  }

  void fine(const Requirement& requirement, const End& end) {
    if (end.rounding.place && !(quantity::round_to(end.value, *end.rounding.place, end.rounding.ties) == end.value)) {
      remark(
          &requirement, Code::lint_fine, end.span,
          "found a limit of " + end.value.text() + " with results rounded to the nearest " + end.rounding.place->text(),
          "round finer, or write the limit with the digits of the place");
    }
  }

  // A hundredfold smaller or larger unit than the measure's is more often a slip than a choice.
  void unusual(const Requirement& requirement, const Assertion& assertion, const End& end) {
    const Type& type = rules_.measures[assertion.measure].type;
    if (type.is_word() || assertion.limit.unit == type.unit) {
      return;
    }
    const quantity::Unit& own = rules_.units.at(type.unit);
    const quantity::Unit& written = rules_.units.at(assertion.limit.unit);
    if (!quantity::convertible(written, own) || own.point) {
      return;
    }
    const Decimal factor = quantity::convert(Decimal{1}, written, own);
    if (factor > Decimal{100} || factor < Decimal::of("0.01")) {
      remark(&requirement, Code::lint_unit, end.span,
             "found a limit in `" + written.text + "` for a measure in `" + own.text + "`",
             "check the unit; 1 " + written.text + " is " + factor.text() + " " + own.text);
    }
  }

  static std::uint64_t words_of(const Requirement& requirement, CategoryId category) {
    std::uint64_t words = ~std::uint64_t{0};
    for (const Test& test : requirement.where) {
      words &= test.category == category ? test.words : ~std::uint64_t{0};
    }
    return words;
  }

  static bool may_meet(const Requirement& left, const Requirement& right) {
    return std::all_of(left.where.begin(), left.where.end(), [&](const Test& test) {
      return (words_of(left, test.category) & words_of(right, test.category)) != 0;
    });
  }

  // What an assertion is about, as a key: measure, conditions, statistic and unit of the limit.
  static std::string conditions_key(const Assertion& assertion) {
    std::vector<std::string> parts;
    for (const ConditionValue& value : assertion.conditions) {
      parts.push_back(std::to_string(value.condition) + "=" + value.value.stripped().text() + "/" +
                      std::to_string(value.word) + "/" + std::to_string(static_cast<int>(value.end)));
    }
    std::sort(parts.begin(), parts.end());
    std::string out;
    for (const std::string& part : parts) {
      out += part + " ";
    }
    return out;
  }

  static std::string subject(const Assertion& assertion) {
    return std::to_string(assertion.measure) + " " + conditions_key(assertion) +
           std::to_string(static_cast<int>(assertion.statistic.kind)) + " " +
           std::to_string(static_cast<int>(assertion.statistic.over)) + " " + std::to_string(assertion.limit.unit);
  }

  void pairs() {
    std::map<std::string, std::vector<const Plain*>> by_subject;
    for (const Plain& plain : plain_) {
      by_subject[subject(*plain.assertion)].push_back(&plain);
    }
    for (const auto& [key, all] : by_subject) {
      for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t j = i + 1; j < all.size(); ++j) {
          if (may_meet(*all[i]->requirement, *all[j]->requirement)) {
            pair(*all[i], *all[j]);
          }
        }
      }
    }
  }

  static bool same_end(const std::optional<End>& left, const std::optional<End>& right) {
    const auto place = [](const End& end) { return end.rounding.place.value_or(Decimal{}); };
    return left.has_value() == right.has_value() &&
           (!left || (left->value == right->value && place(*left) == place(*right) &&
                      left->rounding.ties == right->rounding.ties));
  }

  void pair(const Plain& first, const Plain& second) {
    const Limit& a = first.assertion->limit;
    const Limit& b = second.assertion->limit;
    const auto report = [&](Code code, const std::string& message, const std::string& help) {
      if (auto* made = remark(second.requirement, code, b.span, message, help)) {
        made->secondary.push_back({a.span, "clause `" + first.requirement->number + "`"});
      }
    };
    const auto above = [](const std::optional<End>& low, const std::optional<End>& high) {
      return low && high && low->value > high->value;
    };
    const auto at = [](const std::optional<End>& low, const std::optional<End>& high) {
      return low && high && low->value == high->value;
    };
    if (above(a.low, b.high) || above(b.low, a.high)) {
      report(Code::lint_impossible, "found limits that no result can meet together",
             "check both limits and their classes");
    } else if (a.words == b.words && same_end(a.low, b.low) && same_end(a.high, b.high) && !a.tolerance &&
               !b.tolerance) {
      report(Code::lint_duplicate, "found the same limit a second time", "keep one of the two clauses");
    } else if ((!a.low != !b.low || !a.high != !b.high) && (at(a.low, b.high) || at(b.low, a.high))) {
      report(Code::lint_edge, "found an edge that belongs to both limits", "say in one of them where the edge belongs");
    }
  }

  // Clauses for single classes of a category that together leave some class without any.
  void gaps() {
    struct Group {
      std::uint64_t words = 0;
      const Plain* last = nullptr;
      std::size_t count = 0;
    };
    std::map<std::tuple<MeasureId, std::string, CategoryId>, Group> groups;
    for (const Plain& plain : plain_) {
      if (plain.requirement->where.size() == 1) {
        const Test& test = plain.requirement->where.front();
        Group& group = groups[{plain.assertion->measure, conditions_key(*plain.assertion), test.category}];
        group.words |= test.words;
        group.last = &plain;
        ++group.count;
      }
    }
    for (const auto& [key, group] : groups) {
      const Category& category = rules_.categories[std::get<2>(key)];
      std::string missing;
      for (std::size_t word = 0; word < category.words.size(); ++word) {
        if ((group.words >> word & 1U) == 0) {
          missing += (missing.empty() ? "`" : ", `") + category.words[word] + "`";
        }
      }
      if (group.count > 1 && !missing.empty()) {
        remark(group.last->requirement, Code::lint_gap, group.last->requirement->where.front().span,
               "found limits by `" + category.name + "` that leave out " + missing,
               "add a clause for the rest, or accept the remark with the reason");
      }
    }
  }
};

}  // namespace

void lint(const Rules& rules, diagnose::Diagnostics& diagnostics) {
  if (rules.specification) {
    Linter(rules, diagnostics).run();
  }
}

}  // namespace plumbrule::check
