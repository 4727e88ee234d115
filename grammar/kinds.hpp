#pragma once
// The kinds of branch that a parsed rule file consists of: what the grammar hands to the builder of the syntax tree.
// A leaf keeps its text; a container keeps its children in order.

#include <cstdint>

namespace plumbrule::grammar {

enum class Kind : std::uint8_t {
  // leaves
  name,      // a name of the user's, also a word of a category
  text,      // "..." (quotes included in the span)
  number,    // -12.50
  percent,   // %
  unit,      // g/m2, number
  integer,   // 2
  sieve,     // No. 4, 3/8 in
  edition,   // 2026-03-01, 2020-05 or 2010
  clause,    // 512.3.1
  sign,      // + - * / < <= > >= =
  choice,    // a fixed phrase that chooses, and the word that leads an item or a clause
  no_limit,  // no limit
  broken,    // a stretch that was skipped after an error
  // containers
  quantity,         // number or sieve; then percent or unit; then basis
  basis_of,         // of dry_aggregate
  texts,            // adjacent texts: one text
  words,            // list of names
  condition_value,  // soak 1 h
  conditions,       // under ... and ...
  statistic,        // choice, then an integer
  limit,            // choice, then quantities, words or the name of a grading; or one word
  test,             // applicability: category, choice, words
  reading,          // of a reduction: name, then unit or category
  given_reading,    // of an example: name, then a value
  given_readings,
  given_amount,  // of an example: a bound, then a quantity
  assertion,
  bracketed,
  call,
  product,
  sum,
  comparison,
  clause_group,  // one clause of an item: its first child is a choice with the clause's word
  row,           // of a table or grading
  within,        // a tolerance: a name of it, a quantity, or both
  item,          // its first child is a choice with the item's word
};

}  // namespace plumbrule::grammar
