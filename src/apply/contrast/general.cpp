#include "apply/contrast/general.hpp"

#include <algorithm>
#include <set>

#include "apply/contrast/definition.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

class Beside {
 public:
  Beside(const check::Rules& before, const check::Rules& after, const Contrast& found)
      : before_(before), after_(after), found_(found) {}

  std::vector<General> run() {
    head(*before_.specification, *after_.specification);
    for (const Demand& demand : found_.before) {
      if (demand.assertion != nullptr && told_.insert("measure " + demand.measure).second) {
        measure(before_.measures[demand.assertion->measure]);
      }
      for (const auto& [category, words] : demand.classes) {
        if (told_.insert("class " + category).second) {
          class_words(category);
        }
      }
    }
    return std::move(out_);
  }

 private:
  const check::Rules& before_;
  const check::Rules& after_;
  const Contrast& found_;
  std::set<std::string> told_;
  std::vector<General> out_;

  void compare(ChangeKind kind, const std::string& what, const std::string& left, const std::string& right) {
    if (left != right) {
      out_.push_back({kind, what, left, right, ""});
    }
  }

  void head(const check::Specification& left, const check::Specification& right) {
    compare(ChangeKind::conditions, "effective", effective(left), effective(right));
    compare(ChangeKind::conditions, "outliers", outliers(left), outliers(right));
    compare(ChangeKind::conditions, "certificates", certificates(left), certificates(right));
    if (found_.one_family) {
      compare(ChangeKind::reworded, "title", left.title, right.title);
      compare(ChangeKind::reworded, "agency", left.agency, right.agency);
      compare(ChangeKind::reworded, "status of the limits", explain::standing_text(left.provenance),
              explain::standing_text(right.provenance));
      compare(ChangeKind::reworded, "source", left.provenance.source, right.provenance.source);
      compare(ChangeKind::reworded, "note", left.provenance.note, right.provenance.note);
    }
  }

  static std::string effective(const check::Specification& one) {
    return one.effective.empty() ? "from the beginning" : "from " + one.effective;
  }
  static std::string outliers(const check::Specification& one) {
    return one.outliers ? "tested at " + (*one.outliers * quantity::Decimal{100}).stripped().text() + " %"
                        : "not tested";
  }
  static std::string certificates(const check::Specification& one) {
    return one.certificates ? "required" : "not required";
  }

  // One that the other does not demand is told with its demands.
  void measure(const check::Measure& left) {
    const auto demanded = std::find_if(found_.after.begin(), found_.after.end(), [&](const Demand& one) {
      return one.assertion != nullptr && one.measure == left.name;
    });
    if (demanded == found_.after.end()) {
      return;
    }
    const check::Measure& right = after_.measures[demanded->assertion->measure];
    const Redefined otherwise = redefined(definition_of(before_, left), definition_of(after_, right));
    if (otherwise.any()) {
      std::string parts;
      for (const std::string& part : otherwise.parts) {
        parts += (parts.empty() ? "" : ", ") + part;
      }
      out_.push_back({otherwise.wording ? ChangeKind::reworded : ChangeKind::conditions, "measure " + left.name,
                      otherwise.before, otherwise.after,
                      "the measure `" + left.name + "` is " + (otherwise.wording ? "worded" : "defined") +
                          " otherwise: " + parts});
    }
  }

  static std::string words_of(const check::Rules& rules, const std::string& category) {
    const auto found = std::find_if(rules.categories.begin(), rules.categories.end(),
                                    [&](const check::Category& one) { return one.name == category; });
    std::set<std::string> words;
    if (found != rules.categories.end()) {
      words.insert(found->words.begin(), found->words.end());
    }
    std::string out;
    for (const std::string& word : words) {
      out += (out.empty() ? "" : ", ") + explain::spaced(word);
    }
    return out;
  }

  // A word that the other does not know is no class there.
  void class_words(const std::string& category) {
    const bool asked = std::any_of(found_.after.begin(), found_.after.end(),
                                   [&](const Demand& one) { return one.classes.count(category) > 0; });
    if (asked) {
      compare(ChangeKind::conditions, "words of class " + explain::spaced(category), words_of(before_, category),
              words_of(after_, category));
    }
  }
};

}  // namespace

std::vector<General> general(const check::Rules& before, const check::Rules& after, const Contrast& found) {
  return Beside(before, after, found).run();
}

}  // namespace plumbrule::contrast
