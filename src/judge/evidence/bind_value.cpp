#include "base/diagnose/quote.hpp"
#include "base/diagnose/suggest.hpp"
#include "base/quantity/sieve.hpp"
#include "base/quantity/unit_suggestion.hpp"
#include "judge/evidence/binder.hpp"

namespace plumbrule::evidence {

bool same_word(std::string_view written, std::string_view name) {
  const auto plain = [](char byte) { return byte == ' ' || byte == '-' ? '_' : byte; };
  if (written.size() != name.size()) {
    return false;
  }
  for (std::size_t at = 0; at < name.size(); ++at) {
    if (plain(written[at]) != plain(name[at])) {
      return false;
    }
  }
  return true;
}

std::string Binder::type_text(const check::Type& type) const {
  if (type.text) {
    return "a text";
  }
  if (type.is_word()) {
    return "a word of `" + rules_.categories[type.category].name + "`";
  }
  if (type.basis != none) {
    return "`% of " + rules_.bases[type.basis].name + "`";
  }
  const quantity::Unit& unit = out_.units.at(type.unit);
  return unit.text.empty() ? "a plain number" : "`" + unit.text + "`";
}

bool Binder::is_map(const Node& node, const std::string& what) {
  if (node.kind != Node::Kind::map) {
    error(diagnose::Code::submittal_shape, node.span, "found something else than names with values for " + what,
          "write it as `name: value`, a line each");
  }
  return node.kind == Node::Kind::map;
}

bool Binder::is_list(const Node& node, const std::string& what) {
  if (node.kind != Node::Kind::list) {
    error(diagnose::Code::submittal_shape, node.span, "found something else than a list for " + what,
          "begin each entry of the list with `- `");
  }
  return node.kind == Node::Kind::list;
}

void Binder::unknown_key(const Entry& entry, const std::vector<std::string_view>& known, const std::string& what) {
  error(diagnose::Code::submittal_unknown_key, entry.key_span, "found " + diagnose::quoted(entry.key) + ", " + what,
        diagnose::suggestion(entry.key, known));
}

bool Binder::known_keys(const Node& map, std::initializer_list<std::string_view> known, const std::string& where) {
  bool all = true;
  for (const Entry& entry : map.entries) {
    if (std::find(known.begin(), known.end(), entry.key) == known.end()) {
      unknown_key(entry, known, "no entry of " + where);
      all = false;
    }
  }
  return all;
}

Value Binder::word(const Node& node, check::CategoryId category, const std::string& what) {
  const check::Category& words = rules_.categories[category];
  if (node.kind == Node::Kind::scalar) {
    for (std::uint32_t at = 0; at < words.words.size(); ++at) {
      if (same_word(node.text, words.words[at])) {
        return {Value::Kind::word, {}, at, node.span};
      }
    }
  }
  const std::vector<std::string_view> known(words.words.begin(), words.words.end());
  const std::string found = node.kind == Node::Kind::scalar ? diagnose::quoted(node.text) : "no single word";
  error(diagnose::Code::submittal_word, node.span,
        "found " + found + " for " + what + ", no word of `" + words.name + "`",
        diagnose::suggestion(node.text, known));
  return unusable(node.span);
}

bool Binder::basis(const Node& node, const Written& written, const check::Type& type, const std::string& what) {
  const std::string wanted = type.basis == none ? "" : rules_.bases[type.basis].name;
  if (type.basis != none && written.basis.empty()) {
    std::string said = wanted;
    std::replace(said.begin(), said.end(), '_', ' ');
    error(diagnose::Code::submittal_basis, node.span,
          "found " + diagnose::quoted(node.text) + " for " + what + ", a percentage that does not say of what",
          "write `% of " + said + "` if that is its basis; other bases must be converted first");
    return false;
  }
  if (!written.basis.empty() && (type.basis == none || !same_word(written.basis, wanted))) {
    error(diagnose::Code::submittal_basis, node.span,
          "found " + diagnose::quoted(node.text) + " for " + what + ", expected " + type_text(type),
          "percentages of different bases are different quantities; convert it, or correct the basis");
    return false;
  }
  return true;
}

Value Binder::quantity(const Node& node, const check::Type& type, const std::string& what) {
  const auto read = read_written(node.text);
  if (const auto* bad = std::get_if<Unreadable>(&read)) {
    error(diagnose::Code::submittal_value, node.span, bad->message + " for " + what, bad->help);
    return unusable(node.span);
  }
  const auto& written = std::get<Written>(read);
  const auto unit = out_.units.find(written.unit == "number" ? "" : written.unit);
  if (!unit) {
    error(diagnose::Code::submittal_unit, node.span,
          "found " + diagnose::quoted(written.unit) + " for " + what + ", no unit that is known",
          quantity::unit_suggestion(written.unit));
    return unusable(node.span);
  }
  if (!quantity::convertible(out_.units.at(*unit), out_.units.at(type.unit))) {
    const bool bare = written.unit.empty();
    error(diagnose::Code::submittal_unit, node.span,
          "found " + diagnose::quoted(node.text) + " for " + what + ", expected a value in " + type_text(type),
          bare ? "write the unit behind the number"
               : "`" + std::string(written.unit) + "` is " + quantity::describe(out_.units.at(*unit)) + ", not " +
                     quantity::describe(out_.units.at(type.unit)));
    return unusable(node.span);
  }
  // A plain number for a percentage would be taken as a ratio: 8 as 800 %. It must say what it is.
  if (!quantity::same_kind_of_number(out_.units.at(*unit), out_.units.at(type.unit))) {
    const bool percent = out_.units.at(type.unit).text == "%";
    error(diagnose::Code::submittal_unit, node.span,
          "found " + diagnose::quoted(node.text) + " for " + what +
              (written.unit.empty() ? ", a number without its `%`" : ", expected a value in " + type_text(type)),
          percent ? "write `%` behind the number" : "leave the unit out, or correct it");
    return unusable(node.span);
  }
  if (!basis(node, written, type, what)) {
    return unusable(node.span);
  }
  return {Value::Kind::quantity, {written.value, *unit, written.bound}, none, node.span};
}

Value Binder::value(const Node& node, const check::Type& type, const std::string& what) {
  if (node.kind != Node::Kind::scalar) {
    error(diagnose::Code::submittal_value, node.span,
          node.kind == Node::Kind::empty ? "found no value for " + what
                                         : "found several values for " + what + ", expected one",
          node.kind == Node::Kind::empty ? "fill it in, or leave the whole line out"
                                         : "write one value; several specimens stand under `specimens`");
    return unusable(node.span);
  }
  if (type.text) {
    if (node.text.find_first_not_of(" \t\r\n") == std::string::npos) {
      error(diagnose::Code::submittal_value, node.span, "found an empty text for " + what,
            "fill it in, or leave the whole line out");
      return unusable(node.span);
    }
    return {Value::Kind::word, {}, 0, node.span};
  }
  return type.is_word() ? word(node, type.category, what) : quantity(node, type, what);
}

Value Binder::sieve(const Node& node) {
  const auto opening = node.kind == Node::Kind::scalar ? quantity::sieve_opening(node.text) : std::nullopt;
  if (!opening) {
    const auto names = quantity::known_sieves();
    const std::vector<std::string_view> known(names.begin(), names.end());
    error(diagnose::Code::submittal_value, node.span,
          "found " + diagnose::quoted(node.text) + ", no sieve of that designation",
          diagnose::suggestion(node.text, known));
    return unusable(node.span);
  }
  return {Value::Kind::quantity, {*opening, *out_.units.find("mm"), quantity::Bound::exact}, none, node.span};
}

ConditionStated Binder::condition(const Node& node, check::ConditionId id) {
  const check::Condition& condition = rules_.conditions[id];
  const std::string what = "condition `" + condition.name + "`";
  if (condition.scale == check::Scale::sieve) {
    return {id, sieve(node)};
  }
  check::Type type;
  type.unit = condition.unit;
  type.category = condition.category;
  ConditionStated out{id, value(node, type, what)};
  if (out.value.kind == Value::Kind::quantity) {
    if (out.value.amount.bound != quantity::Bound::exact) {
      error(diagnose::Code::submittal_value, node.span, "found only a bound for " + what, "state its value");
      return {id, unusable(node.span)};
    }
    out.value.amount.value =
        quantity::convert(out.value.amount.value, out_.units.at(out.value.amount.unit), out_.units.at(condition.unit));
    out.value.amount.unit = condition.unit;
  }
  return out;
}

}  // namespace plumbrule::evidence
