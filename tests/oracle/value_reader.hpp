#pragma once
// Single values of a submittal: quantities, words, sieves, dates.

#include "judge/evidence/written.hpp"
#include "record.hpp"

namespace plumbrule::oracle {

/// What a value must be: a quantity in a unit (with or without a basis), a word of a category, or any text.
struct Wanted {
  std::optional<syntax::WrittenUnit> unit;
  std::string category;
  bool text = false;
};
[[nodiscard]] Wanted wanted(const syntax::Measure& measure);
[[nodiscard]] Wanted wanted(const syntax::Reading& reading);

/// The word of the category that is meant: blanks, hyphens and underscores are the same. Empty: none.
[[nodiscard]] std::string meant_word(const syntax::Category& category, const evidence::Node& node);
/// Nothing but blanks.
[[nodiscard]] bool blank(std::string_view text);
/// The same reading of names with several words, such as a basis.
[[nodiscard]] bool same_words(std::string_view left, std::string_view right);

class ValueReader {
 public:
  ValueReader(const Rulebook& book, Units& units) : book_(book), units_(units) {}
  [[nodiscard]] Stated value(const evidence::Node& node, const Wanted& wanted);
  /// In the condition's own unit; a sieve in mm.
  [[nodiscard]] Stated condition(const evidence::Node& node, const std::string& name);

 private:
  const Rulebook& book_;
  Units& units_;
  [[nodiscard]] Stated quantity(const evidence::Node& node, const syntax::WrittenUnit& wanted);
};

}  // namespace plumbrule::oracle
