#include "apply/contrast/definition.hpp"

#include <algorithm>
#include <array>
#include <set>

#include "judge/explain/wording.hpp"

namespace plumbrule::contrast {
namespace {

using check::Formula;
using check::FormulaId;
using check::FormulaKind;
using quantity::Decimal;

std::string joined(const std::vector<std::string>& parts, const char* between) {
  std::string out;
  for (const std::string& part : parts) {
    out += (out.empty() ? "" : between) + part;
  }
  return out;
}

// The order in which they are declared says nothing.
std::string in_order(std::vector<std::string> parts) {
  std::sort(parts.begin(), parts.end());
  return joined(parts, ", ");
}

// Writes one definition, part by part.
class DefinitionWriter {
 public:
  DefinitionWriter(const check::Rules& rules, const check::Measure& measure) : rules_(rules), measure_(measure) {}

  Definition run() {
    type(measure_.type, "unit");
    put("title", measure_.title, true);
    put("reporting place", measure_.reporting_place ? amount(*measure_.reporting_place, difference()) : "");
    put("method", measure_.method);
    put("readings", readings());
    put("formula", measure_.computed ? formula(*measure_.computed) : "");
    put("repeatability", repeatability());
    conditions();
    refusals();
    held();
    provenance("measure", measure_.provenance);
    return std::move(out_);
  }

 private:
  const check::Rules& rules_;
  const check::Measure& measure_;
  Definition out_;

  void put(const std::string& name, const std::string& text, bool wording = false) {
    if (!text.empty()) {
      out_[name] = {{}, text, wording};
    }
  }

  [[nodiscard]] check::UnitId difference() const { return rules_.units.difference(measure_.type.unit); }
  [[nodiscard]] std::string amount(const Decimal& value, check::UnitId unit) const {
    const std::string& text = rules_.units.at(unit).text;
    return value.stripped().text() + (text.empty() ? "" : " " + text);
  }

  [[nodiscard]] std::string in(const check::Type& type) const {
    if (type.text) {
      return "text";
    }
    if (type.category != check::none) {
      return "among " + rules_.categories[type.category].name;
    }
    const std::string& unit = rules_.units.at(type.unit).text;
    return "in " + (unit.empty() ? "number" : unit) +
           (type.basis == check::none ? "" : " of " + rules_.bases[type.basis].name);
  }

  void words_of(check::CategoryId id) {
    if (id != check::none) {
      const check::Category& category = rules_.categories[id];
      put("words of " + category.name, in_order(category.words));
    }
  }

  void type(const check::Type& type, const std::string& name) {
    put(name, in(type));
    words_of(type.category);
  }

  std::string readings() {
    std::vector<std::string> out;
    for (const check::Reading& reading : measure_.readings) {
      out.push_back(reading.name + " " + in(reading.type));
      words_of(reading.type.category);
    }
    return in_order(out);
  }

  [[nodiscard]] std::string repeatability() const {
    return !measure_.repeatability ? ""
           : measure_.relative     ? (*measure_.repeatability * Decimal{100}).stripped().text() + " % of the mean"
                                   : amount(*measure_.repeatability, difference());
  }

  // Their tolerances are told with the demands that state them; in which unit they count is of no consequence.
  void conditions() {
    std::vector<std::string> names;
    for (const check::ConditionId id : measure_.conditions) {
      const check::Condition& condition = rules_.conditions[id];
      names.push_back(condition.name);
      put("condition " + condition.name, condition.scale == check::Scale::sieve ? "as sieve designation"
                                         : condition.scale == check::Scale::category
                                             ? "among " + rules_.categories[condition.category].name
                                             : quantity::describe(rules_.units.at(condition.unit).dimension));
      words_of(condition.scale == check::Scale::category ? condition.category : check::none);
    }
    put("conditions", in_order(names));
  }

  void refusals() {
    std::vector<std::string> out, reasons;
    for (const check::Refusal& refusal : measure_.refusals) {
      constexpr std::array<const char*, 5> signs{" < ", " <= ", " > ", " >= ", " = "};
      out.push_back(formula(refusal.left) + signs.at(static_cast<std::size_t>(refusal.comparison)) +
                    formula(refusal.right));
      reasons.push_back(refusal.because);
    }
    put("refused when", in_order(out));
    put("reasons of refusal", in_order(reasons), true);
  }

  void held() {
    std::vector<std::string> out;
    for (const check::Held& one : measure_.held) {
      out.push_back(one.name + " " + amount(one.value, one.unit) + " within " +
                    amount(one.within, rules_.units.difference(one.unit)));
    }
    put("held at", in_order(out));
  }

  void provenance(const std::string& of, const check::Provenance& one) {
    put("source of " + of, one.source, true);
    put("note on " + of, one.note, true);
    if (one.status != check::Status::unstated) {
      put("status of " + of, explain::standing_text(one), true);
    }
  }

  // A table that two formulas use is written once.
  std::string table(check::TableId id) {
    const check::Table& one = rules_.tables[id];
    const std::string name = "table " + one.name;
    if (out_.count(name) > 0) {
      return one.name;
    }
    DefinitionPart part;
    part.text = (one.by_value ? "by a value " + in(one.key) : "by " + rules_.categories[one.category].name) + ", " +
                in(one.type);
    if (one.by_value) {
      part.text += ": " + edges(one);
    } else {
      const std::vector<std::string>& words = rules_.categories[one.category].words;
      for (std::size_t at = 0; at < std::min(words.size(), one.values.size()); ++at) {
        part.rows.emplace(words[at], one.values[at].stripped().text());
      }
    }
    out_.emplace(name, std::move(part));
    put("title of " + name, one.title, true);
    provenance(name, one.provenance);
    return one.name;
  }

  static std::string edges(const check::Table& one) {
    std::vector<std::string> out;
    for (std::size_t at = 0; at < one.values.size(); ++at) {
      std::string edge = "all else";
      if (at < one.edges.size()) {
        edge = edge_word(one.edges[at].kind) + one.edges[at].value.stripped().text();
      }
      out.push_back(edge + ": " + one.values[at].stripped().text());
    }
    return joined(out, ", ");
  }
  static std::string edge_word(syntax::TableEdge::Kind kind) {
    constexpr std::array<const char*, 4> words{"at most ", "below ", "at least ", "above "};
    return words.at(static_cast<std::size_t>(kind));
  }

  std::string called(const char* name, const Formula& of) {
    std::vector<std::string> out;
    for (const FormulaId argument : of.arguments) {
      out.push_back(formula(argument));
    }
    return std::string(name) + "(" + joined(out, ", ") + ")";
  }

  std::string between(const char* sign, const Formula& of) {
    std::string out;
    for (const FormulaId argument : of.arguments) {
      const FormulaKind kind = rules_.formulas[argument].kind;
      const bool bracket = kind >= FormulaKind::add;
      out += (out.empty() ? "" : sign) + (bracket ? "(" + formula(argument) + ")" : formula(argument));
    }
    return out;
  }

  // Depth is capped by the language (5.1).
  std::string formula(FormulaId id) {
    const Formula& one = rules_.formulas[id];
    switch (one.kind) {
      case FormulaKind::number:
        return amount(one.value, one.type.unit) +
               (one.type.basis == check::none ? "" : " of " + rules_.bases[one.type.basis].name);
      case FormulaKind::reading:
        return measure_.readings[one.index].name;
      case FormulaKind::result:
        return measure_.name;
      case FormulaKind::cumulative:
        return "cumulative(" + measure_.readings[one.index].name + ")";
      case FormulaKind::total:
        return "total(" + measure_.readings[one.index].name + ")";
      case FormulaKind::lookup:
      case FormulaKind::graded:
        return called(table(one.index).c_str(), one);
      case FormulaKind::greatest:
        return called("larger", one);
      case FormulaKind::least:
        return called("smaller", one);
      case FormulaKind::fraction:
        return called("fraction", one);
      default:
        break;
    }
    constexpr std::array<const char*, 4> signs{" + ", " - ", " * ", " / "};
    return between(signs.at(static_cast<std::size_t>(one.kind) - static_cast<std::size_t>(FormulaKind::add)), one);
  }
};

std::string table_row(const DefinitionPart& part, const std::string& word) {
  const auto found = part.rows.find(word);
  return word + " " + (found == part.rows.end() ? "not there" : found->second);
}

// What a part says where the other says something else.
std::string part_text(const std::string& name, const DefinitionPart& own, const DefinitionPart& other) {
  std::vector<std::string> out;
  if (own.text != other.text) {
    out.push_back(own.text.empty() ? "none" : own.text);
  }
  std::set<std::string> words;
  for (const auto* part : {&own, &other}) {
    for (const auto& [word, value] : part->rows) {
      words.insert(word);
    }
  }
  for (const std::string& word : words) {
    if (table_row(own, word) != table_row(other, word)) {
      out.push_back(table_row(own, word));
    }
  }
  return name + ": " + joined(out, ", ");
}

}  // namespace

Definition definition_of(const check::Rules& rules, const check::Measure& measure) {
  return DefinitionWriter(rules, measure).run();
}

Redefined redefined(const Definition& before, const Definition& after) {
  Redefined out;
  std::set<std::string> names;
  for (const auto* side : {&before, &after}) {
    for (const auto& [name, part] : *side) {
      names.insert(name);
    }
  }
  for (const std::string& name : names) {
    const auto then = before.find(name);
    const auto now = after.find(name);
    const DefinitionPart left = then == before.end() ? DefinitionPart{} : then->second;
    const DefinitionPart right = now == after.end() ? DefinitionPart{} : now->second;
    if (left.text == right.text && left.rows == right.rows) {
      continue;
    }
    out.parts.push_back(name);
    out.before += (out.before.empty() ? "" : "; ") + part_text(name, left, right);
    out.after += (out.after.empty() ? "" : "; ") + part_text(name, right, left);
    out.wording = out.wording && (left.wording || right.wording);
  }
  return out;
}

}  // namespace plumbrule::contrast
