// The same record in other units gives the same verdict (language.md, section 3.5).

#include <algorithm>

#include "judge/evidence/written.hpp"
#include "law_tools.hpp"

namespace plumbrule::property {
namespace {

using evidence::Node;
using quantity::Decimal;

std::string bound_words(quantity::Bound bound) {
  switch (bound) {
    case quantity::Bound::at_least:
      return "at least ";
    case quantity::Bound::above:
      return "above ";
    case quantity::Bound::at_most:
      return "at most ";
    case quantity::Bound::below:
      return "below ";
    default:
      return "";
  }
}

// The same value in another unit of its family, if it can be written exactly there.
std::optional<std::string> elsewhere(const std::string& text, quantity::UnitTable& units, Random& random) {
  const auto read = evidence::read_written(text);
  const auto* const written = std::get_if<evidence::Written>(&read);
  if (written == nullptr || !written->basis.empty()) {
    return std::nullopt;
  }
  for (const Family& one : families()) {
    if (std::find(one.units.begin(), one.units.end(), written->unit) == one.units.end()) {
      continue;
    }
    const std::string& other = random.pick(one.units);
    const auto from = units.find(written->unit);
    const auto to = units.find(other);
    if (!from || !to) {
      return std::nullopt;  // "number" is written without a unit
    }
    const Decimal moved = quantity::convert(written->value, units.at(*from), units.at(*to)).stripped();
    const bool exact =
        Decimal::parse(moved.text()) && quantity::convert(moved, units.at(*to), units.at(*from)) == written->value;
    return exact ? std::optional(bound_words(written->bound) + moved.text() + " " + other) : std::nullopt;
  }
  return std::nullopt;
}

TEST_CASE("the same record in other units gives the same verdict") {
  LAW("units", [] {
    const Scene scene = draw_scene({10, 0, 2});
    Node other = scene.submittal;
    Random random(*rc::gen::resize(100, rc::gen::noShrink(rc::gen::arbitrary<std::uint64_t>())));
    quantity::UnitTable units;
    std::size_t moved = 0;
    for (const Scalar& one : scalars(other)) {
      if (one.key == "sieve") {
        continue;  // a designation, no quantity
      }
      if (const auto text = elsewhere(one.node->text, units, random)) {
        one.node->text = *text;
        ++moved;
      }
    }
    RC_LOG() << "rewritten values: " << moved << "\n";
    RC_ASSERT(verdicts(*scene.made, scene.submittal) == verdicts(*scene.made, other));
  });
}

}  // namespace
}  // namespace plumbrule::property
