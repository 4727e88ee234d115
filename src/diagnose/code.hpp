#pragma once
// The codes of all diagnostics. A code is stable: it is printed, matched by tests and by users' scripts. The part
// before the dot is the stage or subject, the part after it the fault. Each code is reached by a case under
// tests/diagnostics (tests/unit/diagnose checks that none is forgotten).

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace plumbrule::diagnose {

enum class Code : std::uint8_t {
  // reading files
  file_unreadable,
  file_encoding,
  // grammar
  syntax_unexpected,
  syntax_version,
  syntax_depth,
  syntax_number,
  // names
  name_unknown,
  name_duplicate,
  name_wrong_kind,
  library_missing,
  library_kind,
  // clauses of an item
  clause_duplicate,
  clause_missing,
  clause_conflict,
  // units, temperatures, percentages
  unit_unknown,
  unit_dimension,
  unit_temperature,
  percent_basis,
  sieve_unknown,
  // limits and rounding
  limit_order,
  limit_kind,
  rounding_place,
  case_ambiguous,
  case_unreachable,
  amendment_conflict,
  table_row,
  table_gap,
  // examples in rule files
  example_verdict,
  example_value,
  // remarks on rules that are in order but look wrong; each can be accepted with a reason
  lint_citation,
  lint_duplicate,
  lint_edge,
  lint_fine,
  lint_gap,
  lint_impossible,
  lint_unit,
  lint_unreachable,
  lint_unused,
  lint_accept,
  // submittals
  submittal_yaml,
  submittal_alias,
  submittal_depth,
  submittal_duplicate_key,
  submittal_unknown_key,
  submittal_missing_key,
  submittal_shape,
  submittal_value,
  submittal_unit,
  submittal_basis,
  submittal_word,
  count_,
};

inline constexpr std::array<std::string_view, static_cast<std::size_t>(Code::count_)> code_texts{
    "file.unreadable",
    "file.encoding",
    "syntax.unexpected",
    "syntax.version",
    "syntax.depth",
    "syntax.number",
    "name.unknown",
    "name.duplicate",
    "name.wrong-kind",
    "library.missing",
    "library.kind",
    "clause.duplicate",
    "clause.missing",
    "clause.conflict",
    "unit.unknown",
    "unit.dimension",
    "unit.temperature",
    "percent.basis",
    "sieve.unknown",
    "limit.order",
    "limit.kind",
    "rounding.place",
    "case.ambiguous",
    "case.unreachable",
    "amendment.conflict",
    "table.row",
    "table.gap",
    "example.verdict",
    "example.value",
    "lint.citation",
    "lint.duplicate",
    "lint.edge",
    "lint.fine",
    "lint.gap",
    "lint.impossible",
    "lint.unit",
    "lint.unreachable",
    "lint.unused",
    "lint.accept",
    "submittal.yaml",
    "submittal.alias",
    "submittal.depth",
    "submittal.duplicate-key",
    "submittal.unknown-key",
    "submittal.missing-key",
    "submittal.shape",
    "submittal.value",
    "submittal.unit",
    "submittal.basis",
    "submittal.word",
};

[[nodiscard]] constexpr std::string_view text(Code code) { return code_texts.at(static_cast<std::size_t>(code)); }

}  // namespace plumbrule::diagnose
