#include "value_reader.hpp"

#include "base/quantity/sieve.hpp"

namespace plumbrule::oracle {
namespace {

using evidence::Node;

Stated unusable() {
  Stated out;
  out.kind = Stated::Kind::unusable;
  return out;
}

Stated word(std::string text) {
  Stated out;
  out.kind = Stated::Kind::word;
  out.word = std::move(text);
  return out;
}

Stated amount(const Interval& value, quantity::UnitId unit) {
  Stated out;
  out.kind = Stated::Kind::quantity;
  out.amount = value;
  out.unit = unit;
  return out;
}

}  // namespace

Wanted wanted(const syntax::Measure& measure) { return {measure.unit, measure.category.value, measure.text}; }

Wanted wanted(const syntax::Reading& reading) {
  if (reading.unit) {
    return {reading.unit, {}, false};
  }
  return {std::nullopt, reading.category.given() ? reading.category.value : reading.name.value, false};
}

bool blank(std::string_view text) { return text.find_first_not_of(" \t\r\n") == std::string_view::npos; }

bool same_words(std::string_view left, std::string_view right) {
  const auto joined = [](std::string_view text) {
    std::string out(text);
    for (char& byte : out) {
      byte = byte == ' ' || byte == '-' ? '_' : byte;
    }
    return out;
  };
  return joined(left) == joined(right);
}

std::string meant_word(const syntax::Category& category, const Node& node) {
  if (node.kind == Node::Kind::scalar) {
    for (const syntax::Text& one : category.words) {
      if (same_words(node.text, one.value)) {
        return one.value;
      }
    }
  }
  return {};
}

Stated ValueReader::quantity(const Node& node, const syntax::WrittenUnit& wanted_unit) {
  const auto read = evidence::read_written(node.text);
  const auto* written = std::get_if<evidence::Written>(&read);
  if (written == nullptr) {
    return unusable();
  }
  const quantity::UnitId unit = units_.of(wanted_unit);
  const auto found = units_.table().find(written->unit == "number" ? "" : written->unit);
  if (!found || !quantity::convertible(units_.table().at(*found), units_.table().at(unit))) {
    return unusable();
  }
  // A percentage says that it is one, and of what; plain numbers stand for counts, but not the other way round.
  const std::string& known = units_.table().at(unit).text;
  const std::string& stated = units_.table().at(*found).text;
  const bool counts = units_.table().at(unit).dimension == quantity::Dimension{};
  const bool bare = counts && stated != known && (!stated.empty() || known == "%");
  const bool basis_stated = !written->basis.empty();
  const bool basis_right =
      wanted_unit.basis.given() ? basis_stated && same_words(written->basis, wanted_unit.basis.value) : !basis_stated;
  if (bare || !basis_right) {
    return unusable();
  }
  return amount(Interval::reading(written->value, written->bound), *found);
}

Stated ValueReader::value(const Node& node, const Wanted& what) {
  if (node.kind != Node::Kind::scalar) {
    return unusable();
  }
  if (what.text) {
    return blank(node.text) ? unusable() : word(node.text);
  }
  if (what.unit) {
    return quantity(node, *what.unit);
  }
  const std::string meant = meant_word(*book_.category(what.category), node);
  return meant.empty() ? unusable() : word(meant);
}

Stated ValueReader::condition(const Node& node, const std::string& name) {
  const syntax::Condition& tree = book_.condition(name);
  if (tree.scale == syntax::Condition::Scale::sieve) {
    const auto opening = node.kind == Node::Kind::scalar ? quantity::sieve_opening(node.text) : std::nullopt;
    return opening ? amount(Interval::point(*opening), *units_.table().find("mm")) : unusable();
  }
  if (tree.scale == syntax::Condition::Scale::category) {
    return value(node, {std::nullopt, tree.category.value, false});
  }
  // A basis says nothing about a condition; a bound does not say at which value the trial was made.
  syntax::WrittenUnit plain = tree.unit;
  plain.basis = {};
  Stated out = value(node, {plain, {}, false});
  if (out.kind != Stated::Kind::quantity) {
    return out;
  }
  if (!out.amount.exact()) {
    return unusable();
  }
  const quantity::UnitId unit = units_.of(tree.unit);
  return amount(Interval::point(units_.convert(out.amount.value(), out.unit, unit)), unit);
}

}  // namespace plumbrule::oracle
