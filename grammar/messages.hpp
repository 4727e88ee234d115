#pragma once
// What was expected where reading stopped. Every rule that may stop the reading has a text here (a missing one does
// not compile); `help` says how to mend it where more can be said than the expectation itself.

#include "grammar/items.hpp"

namespace plumbrule::grammar {

struct Expectation {
  const char* expected;
  const char* help;
};

template <typename Rule>
inline constexpr Expectation expectation_of{nullptr, nullptr};

// Rules that match nothing as well: they never stop the reading, but the compiler wants a text.
inline constexpr Expectation never{"anything", "nothing is missing"};
template <typename... Rules>
inline constexpr Expectation expectation_of<opt<Rules...>> = never;
template <typename... Rules>
inline constexpr Expectation expectation_of<star<Rules...>> = never;
template <typename Clause, typename Opener>
inline constexpr Expectation expectation_of<clauses<Clause, Opener>> = never;
template <>
inline constexpr Expectation expectation_of<gap> = never;
template <>
inline constexpr Expectation expectation_of<text_body> = never;
template <>
inline constexpr Expectation expectation_of<more_conditions> = never;
template <>
inline constexpr Expectation expectation_of<more_tests> = never;

/// How to mend these follows from what was found (syntax/parse.cpp).
template <typename Opener>
inline constexpr Expectation expectation_of<unknown_clause<Opener>>{"a clause of this item or the next item",
                                                                    "correct the word"};
#define PLUMBRULE_EXPECT(rule, ...)                   \
  template <>                                         \
  inline constexpr Expectation expectation_of<rule> { \
    __VA_ARGS__                                       \
  }

PLUMBRULE_EXPECT(k_plumbrule, "`plumbrule` and the language version", "begin the file with the line `plumbrule 1`");
PLUMBRULE_EXPECT(version, "the language version", "begin the file with the line `plumbrule 1`");
PLUMBRULE_EXPECT(unknown_item, "an item such as `requirement` or `measure`", "correct the word");
PLUMBRULE_EXPECT(closing_quote, "the closing quote of the text",
                 "end the text with `\"` on the same line; texts that follow each other are joined");
PLUMBRULE_EXPECT(no_decimal_comma, "a number", "write a point as the decimal sign and no thousands separators");
PLUMBRULE_EXPECT(no_exponent, "a number", "write the number out, without an exponent");
PLUMBRULE_EXPECT(new_name, "a name",
                 "a name begins with a letter and is not a word of the language, such as `abrasion_loss`");
PLUMBRULE_EXPECT(title, "a title in quotes", "give what people call it, such as `\"Wet-track abrasion loss\"`");
PLUMBRULE_EXPECT(texts, "a text in quotes", "write the text between `\"` signs");
PLUMBRULE_EXPECT(word, "a word", "words are letters, digits, underscores and inner hyphens, such as `C-100`");
PLUMBRULE_EXPECT(words, "a list of words", "separate the words by commas: `light, medium, heavy`");
PLUMBRULE_EXPECT(basis_name, "the basis of the percentage", "say of what: `% of dry_aggregate`");
PLUMBRULE_EXPECT(unit, "a unit", "units are written `g/m2`, `kg-cm`, `degC`, `% of dry_aggregate` or `number`");
PLUMBRULE_EXPECT(quantity, "a number with its unit", "such as `538 g/m2`");
PLUMBRULE_EXPECT(number, "a number", "such as `29.9`; the unit of a table stands once, behind `in`");
PLUMBRULE_EXPECT(integer, "a whole number", "such as `at least 2 specimens` or `tested within 12 months`");
PLUMBRULE_EXPECT(expression, "a formula", "such as `(mass_before - mass_after) * factor(mixer)`");
PLUMBRULE_EXPECT(product, "a term after the sign", "a number with its unit, a reading, or a formula in brackets");
PLUMBRULE_EXPECT(factor, "a factor after the sign", "a number with its unit, a reading, or a formula in brackets");
PLUMBRULE_EXPECT(arguments, "what the function or table is applied to",
                 "such as `factor(mixer)` or `larger(before, after)`");
PLUMBRULE_EXPECT(close_bracket, "`)`", "close the bracket");
PLUMBRULE_EXPECT(comparison, "a comparison", "such as `mass_after > mass_before`");
PLUMBRULE_EXPECT(comparison_sign, "a comparison sign", "one of `<`, `<=`, `>`, `>=`, `=`");
PLUMBRULE_EXPECT(condition_or_term, "a condition with its value, or a term", "such as `soak 1 h`");
PLUMBRULE_EXPECT(condition_value, "a condition with its value", "such as `soak 1 h`");
PLUMBRULE_EXPECT(condition_amount, "the value of the condition", "such as `1 h`, `No. 4` or a word");
PLUMBRULE_EXPECT(specimen_word, "`specimens`", "such as `at least 2 specimens`");
PLUMBRULE_EXPECT(of_specimens, "how many specimens or results", "such as `at least 2 specimens`");
PLUMBRULE_EXPECT(counted, "`specimens` or `results`", "such as `at least 2 specimens`");
PLUMBRULE_EXPECT(k_each, "`each`", "write `round each specimen to reporting place, ties to even`");
PLUMBRULE_EXPECT(each_in_lot, "`each`", "write `results in each lot`");
PLUMBRULE_EXPECT(lot_name, "the name of the lot", "such as `in lot 7`");
PLUMBRULE_EXPECT(k_lot, "`lot`", "write `results in each lot`");
PLUMBRULE_EXPECT(k_from, "`from the job mix`", "write `within 0.5 % of dry_aggregate from the job mix`");
PLUMBRULE_EXPECT(job_mix_words, "`the job mix`", "write `within 0.5 % of dry_aggregate from the job mix`");
PLUMBRULE_EXPECT(tolerance_name, "`stockpile` or `job mix`", "write `within stockpile tolerance`");
PLUMBRULE_EXPECT(k_tolerance, "`tolerance`", "write `within stockpile tolerance`");
PLUMBRULE_EXPECT(k_mix, "`mix`", "write `job mix`");
PLUMBRULE_EXPECT(k_within, "`within`", "write `stockpile within 5 %` or `tested within 12 months`");
PLUMBRULE_EXPECT(text_word, "`text`", "write `as text`");
PLUMBRULE_EXPECT(k_band, "`band`", "write `ends of the band 10 %`");
PLUMBRULE_EXPECT(k_specimen, "`specimen`", "write `round each specimen to reporting place, ties to even`");
PLUMBRULE_EXPECT(rounding_place, "`to` and a place", "such as `to reporting place`");
PLUMBRULE_EXPECT(month_or_day, "`months` or `days`", "write `tested within 12 months`");
PLUMBRULE_EXPECT(effective_date, "a date", "such as `2026-05-15`");
PLUMBRULE_EXPECT(lint_code, "the code of a remark", "such as `lint.citation`");
PLUMBRULE_EXPECT(k_at, "`at`", "write `outliers at 5 %` or `held at water_temperature 25 degC within 1 Cdeg`");
PLUMBRULE_EXPECT(held_name, "a name for what is held", "such as `water_temperature`");
PLUMBRULE_EXPECT(within_condition, "`within` and how far it may be off", "such as `within 1 Cdeg`");
PLUMBRULE_EXPECT(required_word, "`required`", "write `certificates required`");
PLUMBRULE_EXPECT(k_where, "`where`", "write `except where traffic is light, not required`");
PLUMBRULE_EXPECT(except_demand, "`shall be` and a limit, or `not required`",
                 "such as `except where traffic is light, not required`");
PLUMBRULE_EXPECT(k_be, "`be`", "write `shall be` and a limit");
PLUMBRULE_EXPECT(k_required, "`required`", "write `not required`");
PLUMBRULE_EXPECT(k_means, "`means`", "write `term NAME means at least 20 kg-cm`");
PLUMBRULE_EXPECT(term_meaning, "a limit or conditions", "such as `at least 20 kg-cm` or `cure 60 min`");
PLUMBRULE_EXPECT(specification_name, "the name of a specification", "write `amends harrow_512 edition 2026-03-01`");
PLUMBRULE_EXPECT(k_edition, "`edition`", "write `amends harrow_512 edition 2026-03-01`");
PLUMBRULE_EXPECT(new_title, "the new title in quotes", "write `retitle 512.3.1 \"Abrasion loss\"`");
PLUMBRULE_EXPECT(new_limit, "a limit", "such as `at most 430 g/m2`");
PLUMBRULE_EXPECT(limit_by, "`by`", "write `replace 512.3.1 limit by at most 430 g/m2`");
PLUMBRULE_EXPECT(replace_limit, "`limit by` and the new limit", "write `replace 512.3.1 limit by at most 430 g/m2`");
PLUMBRULE_EXPECT(replace_rest, "a clause number or a whole requirement",
                 "write `replace 512.3.1 limit by ...` or `replace requirement 512.3.1 ...`");
PLUMBRULE_EXPECT(requirement_item, "a requirement", "write `add requirement 512.3.9 ...`");
PLUMBRULE_EXPECT(k_deviation, "`deviation`", "write `standard deviation of at least 3 specimens`");
PLUMBRULE_EXPECT(k_of, "`of`", "such as `mean of 3 specimens`, `one of light, medium` or `ends of the band 10 %`");
using each_rest = sor<seq<k_of, gap, must<of_specimens>>, specimen_word, result_word>;
PLUMBRULE_EXPECT(each_rest, "`specimen` or `result`",
                 "write `each specimen`, `each result` or `each of at least 2 specimens`");
PLUMBRULE_EXPECT(most_or_least, "`most` or `least`", "write `at most` or `at least`");
PLUMBRULE_EXPECT(k_and, "`and`", "write `between 7.0 % and 8.5 %`");
PLUMBRULE_EXPECT(k_to, "`to`", "such as `conform to grading NAME` or `reported to 1 g/m2`");
PLUMBRULE_EXPECT(k_grading, "`grading`", "write `shall conform to grading NAME`");
PLUMBRULE_EXPECT(grading_name, "the name of a grading",
                 "write `conform to grading NAME`; it is declared by `grading NAME \"TITLE\"`");
PLUMBRULE_EXPECT(be_limit, "a limit",
                 "one of `at most`, `at least`, `between ... and ...`, `one of`, or a single word");
PLUMBRULE_EXPECT(be_or_conform, "`be` or `conform to grading`", "write `shall be at most 538 g/m2`");
PLUMBRULE_EXPECT(shall_limit, "`shall`", "write the demand as `MEASURE under CONDITION shall be at most ...`");
PLUMBRULE_EXPECT(alternative, "a demand such as `cohesion under cure 60 min shall be at least 20 kg-cm`",
                 "write `either` and a demand, then `or` and a demand");
using more_alternatives = plus<seq<k_or, gap, must<alternative>, gap>>;
PLUMBRULE_EXPECT(more_alternatives, "`or` and the other alternative", "`either` needs at least two alternatives");
PLUMBRULE_EXPECT(test, "a class", "write `where traffic is heavy`");
PLUMBRULE_EXPECT(k_is, "`is`", "write `where traffic is heavy`");
PLUMBRULE_EXPECT(is_words, "the classes", "a word, `one of` words, `not` a word or `not one of` words");
PLUMBRULE_EXPECT(no_second_class, "one class",
                 "write `is one of medium, heavy`, or `is not one of`, if there are several");
PLUMBRULE_EXPECT(no_or, "a comma between classes", "write `one of light, medium`");
PLUMBRULE_EXPECT(category_name, "the name of a category", "it is declared by `category NAME \"TITLE\": light, heavy`");
PLUMBRULE_EXPECT(status_word, "`verified`, `unverified` or `demonstration`", "such as `status verified`");
PLUMBRULE_EXPECT(severity_word, "`reject`, `refer` or `advise`", "such as `severity refer`");
PLUMBRULE_EXPECT(colon, "`:`", "write `category NAME \"TITLE\": light, heavy`");
PLUMBRULE_EXPECT(row_colon, "`:`", "such as `at most 1.0 g: 3`");
PLUMBRULE_EXPECT(sieve_designations, "`sieve designation`", "write `as sieve designation`");
PLUMBRULE_EXPECT(k_designation, "`designation`", "write `as sieve designation`");
PLUMBRULE_EXPECT(condition_scale, "the scale of the condition",
                 "`in` a unit, `as sieve designation` or `among` a category");
PLUMBRULE_EXPECT(under_names, "the name of a condition",
                 "such as `under soak`; it is declared by `condition NAME \"TITLE\" in min`");
PLUMBRULE_EXPECT(condition_name, "the name of a condition",
                 "such as `under soak`; it is declared by `condition NAME \"TITLE\" in min`");
PLUMBRULE_EXPECT(readings, "the readings of the reduction", "such as `mass_before in g, mixer`");
PLUMBRULE_EXPECT(in_before_unit, "`in` and the unit of the reading", "such as `mass_after in g`");
PLUMBRULE_EXPECT(reading, "a reading", "such as `mass_after in g`");
PLUMBRULE_EXPECT(k_as, "`as`", "write `computed as` and a formula");
PLUMBRULE_EXPECT(k_when, "`when`", "write `refused when mass_after > mass_before because \"...\"`");
PLUMBRULE_EXPECT(refusal_reason, "`because` and the reason", "say why the reading cannot be right");
PLUMBRULE_EXPECT(acceptance_reason, "`because` and the reason", "say why the remark is accepted");
PLUMBRULE_EXPECT(withdrawal_reason, "`because` and the reason", "say why the clause is withdrawn");
PLUMBRULE_EXPECT(table_by, "`by` and what chooses the row", "a category, or `value in` and a unit");
PLUMBRULE_EXPECT(value_or_category, "a category or `value in` and a unit",
                 "write `by mixer in 1/m2` for words, `by value in g in points` for values");
PLUMBRULE_EXPECT(k_in, "`in` and the unit of the value", "write `by value in g in points`");
PLUMBRULE_EXPECT(in_clause, "`in` and the unit of the table's values",
                 "such as `by mixer in 1/m2` or `by value in g in points`");
PLUMBRULE_EXPECT(sieve_amount, "a sieve", "such as `4.75 mm` or `No. 4`");
PLUMBRULE_EXPECT(k_limit, "`limit`", "write `no limit`");
PLUMBRULE_EXPECT(band_or_none, "the band of the sieve", "such as `70 % to 90 %`, `100 %` or `no limit`");
PLUMBRULE_EXPECT(edition_mark, "the edition", "a date, a month or a year: `2026-03-01`, `2020-05`, `2010`");
PLUMBRULE_EXPECT(library_names, "the name of a vocabulary", "such as `cold_mix`");
PLUMBRULE_EXPECT(library_name, "the name of a vocabulary", "such as `cold_mix`");
PLUMBRULE_EXPECT(k_by, "`by`", "write `compare by the absolute method`");
PLUMBRULE_EXPECT(k_the, "`the`", "write `compare by the rounding method, ties to even` or `by the absolute method`");
PLUMBRULE_EXPECT(k_method, "`method`", "write `absolute method` or `rounding method`");
PLUMBRULE_EXPECT(comparing_method, "`absolute method` or `rounding method`",
                 "write `compare by the absolute method` or `compare by the rounding method, ties to even`");
PLUMBRULE_EXPECT(ties_rule, "`ties`", "say how a tie is rounded: `ties to even` or `ties up`");
using ties_ways = sor<ties_to_even, ties_up>;
PLUMBRULE_EXPECT(ties_ways, "`to even` or `up`", "write `ties to even` or `ties up`");
PLUMBRULE_EXPECT(k_even, "`even`", "write `ties to even`");
using rounding_places = sor<reporting_place, quantity>;
PLUMBRULE_EXPECT(rounding_places, "`reporting place` or a place", "such as `0.1 kg-cm`");
PLUMBRULE_EXPECT(k_place, "`place`", "write `reporting place`");
PLUMBRULE_EXPECT(clause_number, "a clause number", "such as `512.3.1`");
PLUMBRULE_EXPECT(given_reading, "a reading with its value", "such as `mass_before 798.6 g`");
PLUMBRULE_EXPECT(given_value, "the value of the reading", "such as `mass_before 798.6 g`, or a word");
PLUMBRULE_EXPECT(measure_name, "the name of a measure or a category",
                 "such as `given loss 538.5 g/m2` or `given traffic heavy`");
PLUMBRULE_EXPECT(given_result, "a value", "such as `538.5 g/m2`, `at least 180 s`, a word, or `from` readings");
PLUMBRULE_EXPECT(expectation, "a verdict or a value",
                 "one of `complies`, `fails`, `not shown`, `does not apply`, `refused`, or `value 536.27 g/m2`");
PLUMBRULE_EXPECT(k_shown, "`shown`", "write `not shown`");
PLUMBRULE_EXPECT(k_not, "`not`", "write `does not apply`");
PLUMBRULE_EXPECT(k_apply, "`apply`", "write `does not apply`");
PLUMBRULE_EXPECT(k_for, "`for` and the clause or measure that the example is about",
                 "write `example \"TITLE\" for 512.3.1`");
PLUMBRULE_EXPECT(example_target, "the clause or measure that the example is about",
                 "write `example \"TITLE\" for 512.3.1`");
PLUMBRULE_EXPECT(given_amount, "a value", "such as `538.5 g/m2`");

#undef PLUMBRULE_EXPECT

}  // namespace plumbrule::grammar
