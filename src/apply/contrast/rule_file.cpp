#include <algorithm>

#include "apply/contrast/envelope.hpp"
#include "apply/contrast/envelope_words.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

using Specifications = std::vector<const check::Rules*>;

// A text of a rule file holds no quotes and no line ends.
std::string rule_text(const std::string& text) {
  std::string out = explain::one_line(text);
  std::replace(out.begin(), out.end(), '"', '\'');
  return "\"" + out + "\"";
}

std::string class_tests(const Asked& classes) {
  std::string out;
  for (const auto& [category, words] : classes) {
    out += (out.empty() ? "" : " and ") + category + " is " + (words.size() > 1 ? "one of " : "") + word_list(words);
  }
  return out;
}

// Mixes of these classes have requirements of their own, or none.
std::string exceptions_not_required(const std::vector<Asked>& exceptions) {
  std::string out;
  for (const Asked& one : exceptions) {
    out += "  except where " + class_tests(one) + ", not required\n";
  }
  return out;
}

// As a rule file says it.
std::string statistic_phrase(const syntax::Statistic& statistic) {
  if (!statistic.span.known()) {
    return {};
  }
  const bool specimens = statistic.over == syntax::Over::specimens;
  return ", " + std::string(explain::statistic_name(statistic.kind)) + " of at least " +
         std::to_string(statistic.at_least) + (specimens ? " specimens" : " results") +
         (statistic.over == syntax::Over::results_of_lot ? " in each lot" : "") + ",";
}

std::string subject_phrase(const check::Rules& rules, const check::Assertion& assertion) {
  std::string out = rules.measures[assertion.measure].name;
  bool first = true;
  for (const check::ConditionValue& value : assertion.conditions) {
    out +=
        (first ? " under " : " and ") + rules.conditions[value.condition].name + " " + explain::one_line(value.written);
    first = false;
  }
  return out + statistic_phrase(assertion.statistic);
}

std::string weight_lines(check::Severity severity, bool optional) {
  return std::string(optional ? "  optional\n" : "") +
         (severity == check::Severity::reject ? ""
                                              : "  severity " + std::string(explain::severity_text(severity)) + "\n");
}

std::string who_sets(const Specifications& all, const Bound& bound, const char* end) {
  const check::Specification& one = *all[bound.specification]->specification;
  return std::string(end) + " set by " + one.title + ", edition " + one.edition + ", " +
         bound.demand->requirement->number + " (" + explain::limit_text(bound.demand->assertion->limit) +
         (bound.by_rounding ? ", " + rounding_of(*bound.demand) : "") + ")";
}

std::string citation(const Specifications& all, const Row& row) {
  std::string out;
  const auto add = [&](const std::string& text) { out += (out.empty() ? "" : "; ") + text; };
  if (row.low && row.high && row.low->demand == row.high->demand) {
    return who_sets(all, *row.low, "both ends");
  }
  if (row.low) {
    add(who_sets(all, *row.low, "lower end"));
  }
  if (row.high) {
    add(who_sets(all, *row.high, "upper end"));
  }
  if (row.tolerance) {
    add(who_sets(all, *row.tolerance, "tolerance"));
  }
  if (row.words) {
    for (const auto& [at, demand] : row.all) {
      add(all[at]->specification->title + ", " + demand->requirement->number);
    }
  }
  return out;
}

std::string tested_within(const check::Validity& validity) {
  return validity.count == 0
             ? ""
             : "  tested within " + std::to_string(validity.count) + (validity.days ? " days" : " months") + "\n";
}

// Numbers the requirements as they are written.
class RuleFileWriter {
 public:
  /// The file is for mixes of the chosen classes, so that each requirement asks for them.
  RuleFileWriter(const Specifications& all, const Classes& chosen) : all_(all), chosen_(chosen) {}

  // The categories that specifications declare themselves, each once.
  void categories() {
    std::map<std::string, std::pair<std::string, std::set<std::string>>> declared;  // title and all words
    for (const check::Rules* rules : all_) {
      for (const check::Category& category : rules->categories) {
        if (category.span.file == rules->file) {
          auto& one = declared.emplace(category.name, std::pair(category.title, std::set<std::string>())).first->second;
          one.second.insert(category.words.begin(), category.words.end());
        }
      }
    }
    for (const auto& [name, one] : declared) {
      out_ += "category " + name + " " + rule_text(one.first) + ": " + word_list(one.second) + "\n\n";
    }
  }

  // What the file does not hold is not shown until somebody states that it was checked: never a false pass.
  void by_hand(const std::string& what, const Asked& classes) {
    const std::string name = "checked_by_hand_" + std::to_string(++by_hand_);
    measures_ += "measure " + name + " " + rule_text("who checked it, item " + std::to_string(by_hand_)) + " as text\n";
    head("To be checked by hand: " + what);
    out_ += where(classes) + "  " + name + " shall be stated\n\n";
  }

  void row(const Row& row) {
    if (declares_itself(*all_[row.specification], *row.demand->assertion)) {
      return;  // said among what is left out
    }
    if (row.words && row.words->empty()) {  // each as it stands, so that nothing meets them all
      for (const auto& [at, demand] : row.all) {
        const std::set<std::string> words = allowed_words(*all_[at], *demand->assertion);
        requirement(row, (words.size() > 1 ? "one of " : "") + word_list(words),
                    all_[at]->specification->title + ", " + demand->requirement->number);
      }
      return;
    }
    for (const std::string& limit : row_limits(row, all_, false)) {
      requirement(row, limit, citation(all_, row));
    }
  }

  void kept(const Kept& kept) {
    const check::Rules& rules = *all_[kept.specification];
    std::string body;
    for (const check::Alternative& alternative : kept.one->alternatives) {
      if (alternative.assertions.size() != 1 || !alternative.grading.empty() ||
          declares_itself(rules, alternative.assertions.front())) {
        return;
      }
      const check::Assertion& assertion = alternative.assertions.front();
      body += (body.empty() ? "  either " : "  or ") + subject_phrase(rules, assertion) + " shall be " +
              explain::one_line(assertion.limit.written) + "\n";
    }
    head(kept.requirement->title);
    out_ += where(kept.classes) + weight_lines(kept.requirement->severity, kept.requirement->optional) +
            tested_within(kept.requirement->validity);
    out_ += body;
    std::string sources;
    for (const auto& [at, demand] : kept.all) {
      sources += (sources.empty() ? "" : "; ") + all_[at]->specification->title + ", " + demand->requirement->number;
    }
    out_ += "  cite " + rule_text(sources) + "\n" + exceptions_not_required(kept.exceptions) + "\n";
  }

  [[nodiscard]] std::string take() { return measures_ + (measures_.empty() ? "" : "\n") + out_; }

 private:
  const Specifications& all_;
  const Classes& chosen_;
  std::string measures_, out_;
  std::size_t count_ = 0, by_hand_ = 0;

  [[nodiscard]] std::string where(Asked classes) const {
    for (const auto& [category, word] : chosen_) {
      classes[category] = {word};
    }
    return classes.empty() ? "" : "  where " + class_tests(classes) + "\n";
  }
  void head(const std::string& title) {
    out_ += "requirement E-" + std::to_string(++count_) + " " + rule_text(title) + "\n";
  }
  void requirement(const Row& row, const std::string& limit, const std::string& source) {
    const check::Rules& rules = *all_[row.specification];
    head(explain::label(rules, *row.demand->assertion));
    out_ += where(row.classes) + weight_lines(row.severity, row.optional) + tested_within(row.validity);
    out_ += "  " + subject_phrase(rules, *row.demand->assertion) + " shall be " + limit + "\n  cite " +
            rule_text(source) + "\n" + exceptions_not_required(row.exceptions) + "\n";
  }
};

std::string latest_edition(const Specifications& all) {
  std::string out;
  for (const check::Rules* rules : all) {
    out = std::max(out, rules->specification->edition);
  }
  return out;
}

}  // namespace

std::string rule_file(const Envelope& envelope, const Specifications& specifications,
                      const std::vector<std::string>& vocabularies, const Classes& classes) {
  std::string titles;
  for (const check::Rules* rules : specifications) {
    titles += (titles.empty() ? "" : "; ") + rules->specification->title + ", edition " + rules->specification->edition;
  }
  std::string chosen;
  for (const auto& [category, word] : classes) {
    chosen.append(" ").append(category).append(" ").append(word);
  }
  std::string uses;
  for (const std::string& name : vocabularies) {
    uses += (uses.empty() ? "" : ", ") + name;
  }
  std::string out = "plumbrule 1\n\n# Made by `plumbrule envelope`. The documents themselves govern.\n\n";
  out += "specification envelope \"The tightest of several specifications\"\n  edition " +
         latest_edition(specifications) + "\n";
  out += uses.empty() ? "" : "  uses " + uses + "\n";
  out += "  compare by the absolute method\n  status unverified " + rule_text("made from: " + titles) + "\n";
  out += chosen.empty() ? "\n" : "  note " + rule_text("for" + chosen + " only") + "\n\n";
  RuleFileWriter writer(specifications, classes);
  writer.categories();
  for (const std::string& one : envelope.left_out) {
    writer.by_hand(one, {});
  }
  for (const Uncovered& one : envelope.uncovered) {
    writer.by_hand(specifications[one.specification]->specification->name + " asks nothing of these mixes that counts",
                   one.classes);
  }
  for (const Row& row : envelope.rows) {
    writer.row(row);
  }
  for (const Kept& kept : envelope.kept) {
    writer.kept(kept);
  }
  return out + writer.take();
}

}  // namespace plumbrule::contrast
