#include "apply/contrast/envelope.hpp"

#include <algorithm>
#include <iterator>

#include "apply/contrast/limits.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

using quantity::Decimal;

enum class Holds : std::uint8_t { yes, no, open };

Holds holds(const std::map<std::string, std::set<std::string>>& wanted, const Classes& chosen) {
  Holds out = Holds::yes;
  for (const auto& [category, words] : wanted) {
    const auto own = chosen.find(category);
    if (own == chosen.end()) {
      out = Holds::open;
    } else if (words.count(own->second) == 0) {
      return Holds::no;
    }
  }
  return out;
}

// The place of a case among those of its requirement: the narrower, the smaller.
std::ptrdiff_t place_of(const Demand& demand) { return demand.one - demand.requirement->cases.data(); }

// The demands of one specification that may apply, in order. The narrowest case that holds hides all broader ones;
// narrower ones that may hold stay beside it.
std::vector<const Demand*> applying(const std::vector<Demand>& demands, const Classes& chosen) {
  std::map<const check::Requirement*, std::ptrdiff_t> decided;
  for (const Demand& demand : demands) {
    if (holds(demand.classes, chosen) == Holds::yes) {
      const auto [at, fresh] = decided.emplace(demand.requirement, place_of(demand));
      at->second = std::min(at->second, place_of(demand));
    }
  }
  std::vector<const Demand*> out;
  for (const Demand& demand : demands) {
    const auto found = decided.find(demand.requirement);
    const bool hidden = found != decided.end() && place_of(demand) > found->second;
    if (!hidden && holds(demand.classes, chosen) != Holds::no) {
      out.push_back(&demand);
    }
  }
  return out;
}

Asked left_open(const Asked& asked, const Classes& chosen) {
  Asked out;
  for (const auto& [category, words] : asked) {
    if (chosen.count(category) == 0) {
      out.emplace(category, words);
    }
  }
  return out;
}

// The exceptions that may hold, in an order that does not depend on the document.
std::vector<Asked> exceptions_of(const Demand& demand, const Classes& chosen) {
  std::vector<Asked> out;
  for (const Asked& one : demand.exceptions) {
    if (holds(one, chosen) != Holds::no) {
      out.push_back(left_open(one, chosen));
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

std::string classes_text(const Asked& classes) {
  std::string out;
  for (const auto& [category, words] : classes) {
    std::string list;
    for (const std::string& word : words) {
      list += (list.empty() ? "" : ", ") + explain::spaced(word);
    }
    out += (out.empty() ? "" : "; ") + explain::spaced(category) + " " + list;
  }
  return out;
}

std::string classes_text(const Asked& classes, const std::vector<Asked>& exceptions) {
  std::string out = classes_text(classes);
  for (const Asked& one : exceptions) {
    out += (out.empty() ? "except " : ", except ") + classes_text(one);
  }
  return out;
}

// Whether rounding lets less pass than the limit as printed. The ends of a tolerance lie where the job mix puts them.
bool coarse(const check::Limit& limit) {
  const auto less = [](const std::optional<check::End>& end, bool upper) {
    return end && stricter(threshold_of(*end, upper), {end->value, true}, upper);
  };
  return less(limit.high, true) || less(limit.low, false) || (limit.tolerance && limit.tolerance->rounding.place);
}

// All ways to comply.
std::string ways_text(const check::Rules& rules, const check::Case& one) {
  std::string out;
  for (const check::Alternative& alternative : one.alternatives) {
    out += out.empty() ? "" : "; or ";
    for (const check::Assertion& assertion : alternative.assertions) {
      const std::string how = explain::statistic(assertion.statistic);
      out += (&assertion == &alternative.assertions.front() ? "" : " and ") + explain::label(rules, assertion) +
             (how.empty() ? "" : ", " + how) + ", shall be " + explain::limit_text(assertion.limit) +
             (coarse(assertion.limit) ? ", " + rounding_of(assertion.limit) : "");
    }
  }
  return out;
}

// What is sure to pass: the limit as printed, or less where rounding lets less pass.
quantity::Threshold sure(const check::End& end, bool upper) {
  const quantity::Threshold printed{end.value, true};
  const quantity::Threshold rounded = threshold_of(end, upper);
  return stricter(rounded, printed, upper) ? quantity::Threshold{rounded.value.stripped(), rounded.inclusive} : printed;
}

// Whether limits on the two bind the same numbers: a mean lies between the least and the greatest of its values.
bool comparable(const syntax::Statistic& left, const syntax::Statistic& right) {
  using syntax::StatisticKind;
  const auto central = [](StatisticKind one) {
    return one == StatisticKind::result || one == StatisticKind::mean || one == StatisticKind::each;
  };
  return left.kind == right.kind || (central(left.kind) && central(right.kind));
}

std::set<std::string> in_both(const std::set<std::string>& left, const std::set<std::string>& right) {
  std::set<std::string> out;
  std::set_intersection(left.begin(), left.end(), right.begin(), right.end(), std::inserter(out, out.begin()));
  return out;
}

// The longer age lets more tests comply, and more of them fail: neither limit stands for the other.
bool same_age(const check::Validity& left, const check::Validity& right) {
  return left.count == right.count && (left.days == right.days || left.count == 0);
}

class Builder {
 public:
  Builder(const std::vector<const check::Rules*>& rules, const Classes& chosen)
      : rules_(rules), chosen_(chosen), words_(words_of(rules)) {}

  Envelope run() {
    for (const check::Rules* rules : rules_) {
      out_.demands.push_back(contrast::demands(*rules));
    }
    compare_words();
    for (std::size_t at = 0; at < rules_.size(); ++at) {
      const std::vector<const Demand*> applying_here = applying(out_.demands[at], chosen_);
      for (const Demand* demand : applying_here) {
        add(at, *demand);
      }
      uncovered(at, applying_here);
    }
    for (Row& row : out_.rows) {
      mark_rounded(row);
      mark_beside(row);
    }
    exclude();
    return std::move(out_);
  }

 private:
  const std::vector<const check::Rules*>& rules_;
  const Classes& chosen_;
  Words words_;
  Envelope out_;

  // A category that two specifications declare with other words: what one calls a class is unknown to the other.
  void compare_words() {
    std::map<std::string, std::pair<std::size_t, std::set<std::string>>> known;
    for (std::size_t at = 0; at < rules_.size(); ++at) {
      for (const check::Category& category : rules_[at]->categories) {
        const std::set<std::string> words(category.words.begin(), category.words.end());
        const auto [one, fresh] = known.emplace(category.name, std::pair(at, words));
        if (!fresh && one->second.second != words) {
          out_.left_out.push_back(rules_[at]->specification->name + ": the category `" + category.name +
                                  "` has other words in " + rules_[one->second.first]->specification->name);
        }
      }
    }
  }

  // Optional tests and advice make no submittal comply.
  void uncovered(std::size_t at, const std::vector<const Demand*>& demands) {
    Asked asked;
    for (const auto& [category, word] : chosen_) {
      asked[category] = {word};
    }
    Mixes rest{asked};
    std::set<std::pair<Asked, std::vector<Asked>>> taken;
    for (const Demand* demand : demands) {
      const bool counts = demand->assertion != nullptr && !demand->requirement->optional &&
                          demand->requirement->severity != check::Severity::advise;
      if (counts && taken.emplace(demand->classes, demand->exceptions).second) {
        rest = without(rest, mixes_of(demand->classes, demand->exceptions, words_), words_);
      }
    }
    for (const Asked& one : rest) {
      const Asked classes = left_open(one, chosen_);
      out_.uncovered.push_back({at, classes, classes_text(classes)});
    }
  }

  void add(std::size_t at, const Demand& demand) {
    if (demand.assertion == nullptr) {
      return;
    }
    if (rules_[at]->measures[demand.assertion->measure].type.text) {
      say(at, demand, explain::label(*rules_[at], *demand.assertion) + " shall be stated");
      return;
    }
    leave_out(at, demand);
    if (demand.one->alternatives.size() > 1) {
      keep(at, demand);
      return;
    }
    Row& row = row_for(at, demand);
    const bool words = rules_[at]->measures[demand.assertion->measure].type.is_word();
    const bool comparable = words ? row.words.has_value() || row.all.empty()
                                  : !row.words && quantity::convertible(unit(at, demand), unit_of(row));
    if (!comparable) {
      out_.incomparable.push_back({row.specification, at, row.demand, &demand, "the units or kinds differ"});
      say(at, demand, "a limit that could not be held against the others");
      return;
    }
    row.all.emplace_back(at, &demand);
    row.optional = row.optional && demand.requirement->optional;
    words ? allow(row, at, demand) : tighten(row, at, demand);
  }

  void keep(std::size_t at, const Demand& demand) {
    for (const check::Alternative& alternative : demand.one->alternatives) {
      if (!alternative.grading.empty() || alternative.assertions.size() != 1) {
        say(at, demand, "one of several ways is a grading; it stands in the table, not in the rule file");
      }
    }
    const std::string ways = ways_text(*rules_[at], *demand.one);
    const Asked classes = left_open(demand.classes, chosen_);
    const std::vector<Asked> exceptions = exceptions_of(demand, chosen_);
    std::vector<std::string> subjects;
    for (const check::Alternative& alternative : demand.one->alternatives) {
      for (const check::Assertion& assertion : alternative.assertions) {
        subjects.push_back(explain::subject_key(*rules_[at], assertion));
      }
    }
    const auto found = std::find_if(out_.kept.begin(), out_.kept.end(), [&](const Kept& kept) {
      return kept.demand == ways && kept.subjects == subjects && kept.classes == classes &&
             kept.exceptions == exceptions && kept.requirement->severity == demand.requirement->severity &&
             kept.requirement->optional == demand.requirement->optional &&
             same_age(kept.requirement->validity, demand.requirement->validity);
    });
    if (found == out_.kept.end()) {
      out_.kept.push_back({at,
                           demand.requirement,
                           demand.one,
                           ways,
                           subjects,
                           classes,
                           exceptions,
                           classes_text(classes, exceptions),
                           {{at, &demand}}});
    } else if (found->all.back().second->one != demand.one) {
      found->all.emplace_back(at, &demand);
    }
  }

  void say(std::size_t at, const Demand& demand, const std::string& what) {
    const std::string text = rules_[at]->specification->name + " " + demand.requirement->number + ": " + what;
    if (std::find(out_.left_out.begin(), out_.left_out.end(), text) == out_.left_out.end()) {
      out_.left_out.push_back(text);
    }
  }

  // What is asked beside the limit: said once for a clause, since the envelope does not hold it.
  void leave_out(std::size_t at, const Demand& demand) {
    const check::Limit& limit = demand.assertion->limit;
    if (demand.one->alternatives[demand.alternative].ends) {
      say(at, demand, "the rule on consecutive sieves");
    }
    if (demand.assertion->staged) {
      say(at, demand, "the rounding of each specimen");
    }
    if (coarse(limit)) {
      say(at, demand, "a rounding that lets less pass than the limit as printed");
    }
    if (own(*rules_[at], *demand.assertion)) {
      say(at, demand,
          "a measure or condition that the specification declares itself; it stands in the table, not in the rule "
          "file");
    }
  }

  [[nodiscard]] const quantity::Unit& unit(std::size_t at, const Demand& demand) const {
    return rules_[at]->units.at(demand.assertion->limit.unit);
  }
  [[nodiscard]] const quantity::Unit& unit_of(const Row& row) const { return unit(row.specification, *row.demand); }

  Row& row_for(std::size_t at, const Demand& demand) {
    const Asked classes = left_open(demand.classes, chosen_);
    const std::vector<Asked> exceptions = exceptions_of(demand, chosen_);
    const std::string statistic = statistic_of(demand);
    const auto found = std::find_if(out_.rows.begin(), out_.rows.end(), [&](const Row& row) {
      return row.subject == demand.subject && row.classes == classes && row.exceptions == exceptions &&
             row.statistic == statistic && row.severity == demand.requirement->severity &&
             same_age(row.validity, demand.requirement->validity);
    });
    if (found != out_.rows.end()) {
      return *found;
    }
    Row row;
    row.subject = demand.subject;
    row.who = classes_text(classes, exceptions);
    row.classes = classes;
    row.exceptions = exceptions;
    row.statistic = statistic;
    row.severity = demand.requirement->severity;
    row.validity = demand.requirement->validity;
    row.specification = at;
    row.demand = &demand;
    return out_.rows.emplace_back(std::move(row));
  }

  void allow(Row& row, std::size_t at, const Demand& demand) const {
    const std::set<std::string> own = allowed_words(*rules_[at], *demand.assertion);
    row.words = row.words ? in_both(*row.words, own) : own;
  }

  void tighten(Row& row, std::size_t at, const Demand& demand) const {
    const check::Limit& limit = demand.assertion->limit;
    tighten(row, row.low, limit.low, false, false, at, demand);
    tighten(row, row.high, limit.high, true, false, at, demand);
    tighten(row, row.tolerance, limit.tolerance, true, true, at, demand);
  }

  void tighten(const Row& row, std::optional<Bound>& end, const std::optional<check::End>& own, bool upper,
               bool interval, std::size_t at, const Demand& demand) const {
    if (!own) {
      return;
    }
    const auto in = [&](std::size_t specification, const Demand& of) {
      const quantity::UnitTable& units = rules_[specification]->units;
      const quantity::UnitId id = of.assertion->limit.unit;
      return units.at(interval ? units.difference(id) : id);
    };
    const quantity::Threshold bound = interval ? quantity::Threshold{own->value, true} : sure(*own, upper);
    const quantity::Threshold in_row{quantity::convert(bound.value, in(at, demand), in(row.specification, *row.demand)),
                                     bound.inclusive};
    if (!end || stricter(in_row, end->in_row, upper)) {
      end = Bound{in_row, bound, bound.value != own->value || !bound.inclusive, at, &demand};
    }
  }

  // An end from the job mix loses less than half a place by rounding.
  void mark_rounded(Row& row) const {
    if (!row.tolerance) {
      return;
    }
    for (const auto& [at, demand] : row.all) {
      const auto& own = demand->assertion->limit.tolerance;
      if (!own || !own->rounding.place) {
        continue;
      }
      const auto difference = [&](std::size_t specification, const Demand& of) {
        const quantity::UnitTable& units = rules_[specification]->units;
        return units.at(units.difference(of.assertion->limit.unit));
      };
      const Decimal least = own->value - *own->rounding.place / Decimal{2};
      if (quantity::convert(least, difference(at, *demand), difference(row.specification, *row.demand)) <
          row.tolerance->in_row.value) {
        row.rounded.emplace_back(at, demand);
      }
    }
  }

  [[nodiscard]] Mixes chosen_mixes(const Row& row) const {
    Asked asked;
    for (const auto& [category, word] : chosen_) {
      asked[category] = {word};
    }
    Mixes out;
    for (const auto& [at, demand] : row.all) {
      const Mixes of = common({asked}, mixes_of(demand->classes, demand->exceptions, words_), words_);
      out.insert(out.end(), of.begin(), of.end());
    }
    return out;
  }

  // An exception stands in a row of its own, for mixes of its own.
  void mark_beside(Row& row) const {
    const Mixes own = chosen_mixes(row);
    for (const Row& other : out_.rows) {
      if (row.subject != other.subject || row.who == other.who) {
        continue;
      }
      const bool with = !common(own, chosen_mixes(other), words_).empty();
      const bool within = without({other.classes}, {row.classes}, words_).empty();
      const std::string text =
          (with ? "with the row for " : "another row for ") + (other.who.empty() ? "all" : other.who);
      if ((with || within) && std::find(row.beside.begin(), row.beside.end(), text) == row.beside.end()) {
        row.beside.push_back(text);
      }
    }
  }

  // Rows of one subject for classes that meet: a lower end above an upper end, or no word in common.
  void exclude() {
    for (std::size_t left = 0; left < out_.rows.size(); ++left) {
      for (std::size_t right = left; right < out_.rows.size(); ++right) {
        const Row& one = out_.rows[left];
        const Row& other = out_.rows[right];
        const bool count = one.severity != check::Severity::advise && other.severity != check::Severity::advise;
        if (count && one.subject == other.subject &&
            comparable(one.demand->assertion->statistic, other.demand->assertion->statistic) &&
            (left == right || !common(chosen_mixes(one), chosen_mixes(other), words_).empty())) {
          exclude(one, other);
          if (left != right) {
            exclude(other, one);
          }
        }
      }
    }
  }

  // The first two that have no word in common; if every two have one, the first and the last of all.
  void exclude_words(const Row& one, const Row& other) {
    const auto words = [&](const auto& demand) {
      return allowed_words(*rules_[demand.first], *demand.second->assertion);
    };
    for (const auto& left : one.all) {
      for (const auto& right : other.all) {
        if (in_both(words(left), words(right)).empty()) {
          out_.exclusions.push_back({left.first, right.first, left.second, right.second, "no word is allowed by both"});
          return;
        }
      }
    }
    out_.exclusions.push_back({one.all.front().first, other.all.back().first, one.all.front().second,
                               other.all.back().second, "no word is allowed by all"});
  }

  void exclude(const Row& one, const Row& other) {
    if (one.words && other.words) {
      if (in_both(*one.words, *other.words).empty() && &one <= &other) {  // said once
        exclude_words(one, other);
      }
      return;
    }
    if (!one.low || !other.high || !quantity::convertible(unit_of(one), unit_of(other))) {
      return;
    }
    const quantity::Threshold low = one.low->in_row;
    const quantity::Threshold high{quantity::convert(other.high->in_row.value, unit_of(other), unit_of(one)),
                                   other.high->in_row.inclusive};
    const bool none = high.value < low.value || (high.value == low.value && !(high.inclusive && low.inclusive));
    // A general case and its own exception are for different classes.
    const bool own_exception = one.low->demand->requirement == other.high->demand->requirement && &one != &other;
    if (none && !own_exception) {
      const std::string name = unit_of(one).text;
      out_.exclusions.push_back({one.low->specification, other.high->specification, one.low->demand, other.high->demand,
                                 (low.inclusive ? "at least " : "above ") + explain::show(low.value.stripped()) +
                                     (high.inclusive ? " and at most " : " and below ") +
                                     explain::show(high.value.stripped()) + (name.empty() ? "" : " ") + name});
    }
  }
};

}  // namespace

bool own(const check::Rules& rules, const check::Assertion& assertion) {
  return rules.measures[assertion.measure].span.file == rules.file ||
         std::any_of(assertion.conditions.begin(), assertion.conditions.end(), [&](const check::ConditionValue& one) {
           return rules.conditions[one.condition].span.file == rules.file;
         });
}

Envelope envelope(const std::vector<const check::Rules*>& specifications, const Classes& classes) {
  return Builder(specifications, classes).run();
}

}  // namespace plumbrule::contrast
