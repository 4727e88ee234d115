#pragma once
// Tokens of the language (language.md, section 2). Every token is one PEGTL rule; `gap` stands between tokens.

#include <tao/pegtl.hpp>

namespace plumbrule::grammar {

namespace peg = TAO_PEGTL_NAMESPACE;

struct comment : peg::seq<peg::one<'#'>, peg::until<peg::eolf>> {};
struct gap_one : peg::sor<peg::space, comment> {};
struct gap : peg::star<gap_one> {};
struct name_char : peg::sor<peg::alnum, peg::one<'_'>> {};
/// The end of a word: no letter, digit, underscore, nor a hyphen that joins a further part.
struct word_end : peg::not_at<peg::sor<name_char, peg::seq<peg::one<'-'>, name_char>>> {};

template <typename Text>
struct key : peg::seq<Text, word_end> {};

#define PLUMBRULE_KEY(identifier, word) \
  struct identifier : key<TAO_PEGTL_STRING(word)> {}

// Openers of items.
PLUMBRULE_KEY(k_plumbrule, "plumbrule");
PLUMBRULE_KEY(k_vocabulary, "vocabulary");
PLUMBRULE_KEY(k_category, "category");
PLUMBRULE_KEY(k_condition, "condition");
PLUMBRULE_KEY(k_basis, "basis");
PLUMBRULE_KEY(k_measure, "measure");
PLUMBRULE_KEY(k_table, "table");
PLUMBRULE_KEY(k_grading, "grading");
PLUMBRULE_KEY(k_specification, "specification");
PLUMBRULE_KEY(k_section, "section");
PLUMBRULE_KEY(k_requirement, "requirement");
PLUMBRULE_KEY(k_example, "example");
PLUMBRULE_KEY(k_term, "term");
PLUMBRULE_KEY(k_amendment, "amendment");
// Openers of clauses.
PLUMBRULE_KEY(k_in, "in");
PLUMBRULE_KEY(k_reported, "reported");
PLUMBRULE_KEY(k_under, "under");
PLUMBRULE_KEY(k_method, "method");
PLUMBRULE_KEY(k_from, "from");
PLUMBRULE_KEY(k_among, "among");
PLUMBRULE_KEY(k_computed, "computed");
PLUMBRULE_KEY(k_refused, "refused");
PLUMBRULE_KEY(k_edition, "edition");
PLUMBRULE_KEY(k_uses, "uses");
PLUMBRULE_KEY(k_compare, "compare");
PLUMBRULE_KEY(k_status, "status");
PLUMBRULE_KEY(k_source, "source");
PLUMBRULE_KEY(k_agency, "agency");
PLUMBRULE_KEY(k_note, "note");
PLUMBRULE_KEY(k_where, "where");
PLUMBRULE_KEY(k_optional, "optional");
PLUMBRULE_KEY(k_severity, "severity");
PLUMBRULE_KEY(k_either, "either");
PLUMBRULE_KEY(k_cite, "cite");
PLUMBRULE_KEY(k_because, "because");
PLUMBRULE_KEY(k_mend, "mend");
PLUMBRULE_KEY(k_given, "given");
PLUMBRULE_KEY(k_expect, "expect");
PLUMBRULE_KEY(k_except, "except");
PLUMBRULE_KEY(k_round, "round");
PLUMBRULE_KEY(k_tested, "tested");
PLUMBRULE_KEY(k_ends, "ends");
PLUMBRULE_KEY(k_amends, "amends");
PLUMBRULE_KEY(k_effective, "effective");
PLUMBRULE_KEY(k_replace, "replace");
PLUMBRULE_KEY(k_withdraw, "withdraw");
PLUMBRULE_KEY(k_retitle, "retitle");
PLUMBRULE_KEY(k_add, "add");
PLUMBRULE_KEY(k_accept, "accept");
PLUMBRULE_KEY(k_repeatability, "repeatability");
PLUMBRULE_KEY(k_held, "held");
PLUMBRULE_KEY(k_outliers, "outliers");
PLUMBRULE_KEY(k_certificates, "certificates");
// Inside phrases.
PLUMBRULE_KEY(k_to, "to");
PLUMBRULE_KEY(k_as, "as");
PLUMBRULE_KEY(k_by, "by");
PLUMBRULE_KEY(k_of, "of");
PLUMBRULE_KEY(k_or, "or");
PLUMBRULE_KEY(k_and, "and");
PLUMBRULE_KEY(k_not, "not");
PLUMBRULE_KEY(k_is, "is");
PLUMBRULE_KEY(k_shall, "shall");
PLUMBRULE_KEY(k_be, "be");
PLUMBRULE_KEY(k_at, "at");
PLUMBRULE_KEY(k_most, "most");
PLUMBRULE_KEY(k_least, "least");
PLUMBRULE_KEY(k_between, "between");
PLUMBRULE_KEY(k_one, "one");
PLUMBRULE_KEY(k_conform, "conform");
PLUMBRULE_KEY(k_mean, "mean");
PLUMBRULE_KEY(k_each, "each");
PLUMBRULE_KEY(k_greatest, "greatest");
PLUMBRULE_KEY(k_range, "range");
PLUMBRULE_KEY(k_when, "when");
PLUMBRULE_KEY(k_for, "for");
PLUMBRULE_KEY(k_ties, "ties");
PLUMBRULE_KEY(k_above, "above");
PLUMBRULE_KEY(k_below, "below");
PLUMBRULE_KEY(k_the, "the");
PLUMBRULE_KEY(k_standard, "standard");
PLUMBRULE_KEY(k_within, "within");
PLUMBRULE_KEY(k_means, "means");
// Not reserved: read only where they can stand.
PLUMBRULE_KEY(k_absolute, "absolute");
PLUMBRULE_KEY(k_rounding, "rounding");
PLUMBRULE_KEY(k_place, "place");
PLUMBRULE_KEY(k_reporting, "reporting");
PLUMBRULE_KEY(k_even, "even");
PLUMBRULE_KEY(k_up, "up");
PLUMBRULE_KEY(k_deviation, "deviation");
PLUMBRULE_KEY(k_specimen, "specimen");
PLUMBRULE_KEY(k_specimens, "specimens");
PLUMBRULE_KEY(k_sieve, "sieve");
PLUMBRULE_KEY(k_designation, "designation");
PLUMBRULE_KEY(k_no, "no");
PLUMBRULE_KEY(k_limit, "limit");
PLUMBRULE_KEY(k_value, "value");
PLUMBRULE_KEY(k_complies, "complies");
PLUMBRULE_KEY(k_fails, "fails");
PLUMBRULE_KEY(k_shown, "shown");
PLUMBRULE_KEY(k_does, "does");
PLUMBRULE_KEY(k_apply, "apply");
PLUMBRULE_KEY(k_number, "number");
PLUMBRULE_KEY(k_text, "text");
PLUMBRULE_KEY(k_stated, "stated");
PLUMBRULE_KEY(k_required, "required");
PLUMBRULE_KEY(k_result, "result");
PLUMBRULE_KEY(k_results, "results");
PLUMBRULE_KEY(k_lot, "lot");
PLUMBRULE_KEY(k_job, "job");
PLUMBRULE_KEY(k_mix, "mix");
PLUMBRULE_KEY(k_stockpile, "stockpile");
PLUMBRULE_KEY(k_tolerance, "tolerance");
PLUMBRULE_KEY(k_months, "months");
PLUMBRULE_KEY(k_days, "days");
PLUMBRULE_KEY(k_band, "band");
#undef PLUMBRULE_KEY

struct item_opener : peg::sor<k_vocabulary, k_category, k_condition, k_basis, k_measure, k_table, k_grading,
                              k_specification, k_section, k_requirement, k_example, k_term, k_amendment> {};
struct clause_opener
    : peg::sor<k_in, k_reported, k_repeatability, k_held, k_outliers, k_certificates, k_under, k_method, k_from,
               k_among, k_computed, k_refused, k_edition, k_uses, k_compare, k_status, k_source, k_agency, k_note,
               k_where, k_optional, k_severity, k_either, k_cite, k_because, k_mend, k_given, k_expect, k_except,
               k_round, k_tested, k_ends, k_amends, k_effective, k_replace, k_withdraw, k_retitle, k_add, k_accept> {};
struct phrase_word : peg::sor<k_plumbrule, k_to, k_as, k_by, k_of, k_or, k_and, k_not, k_is, k_shall, k_be, k_at,
                              k_most, k_least, k_between, k_one, k_conform, k_mean, k_each, k_greatest, k_range, k_when,
                              k_for, k_ties, k_above, k_below, k_the, k_standard, k_within, k_means> {};
struct reserved : peg::sor<item_opener, clause_opener, phrase_word> {};

/// A name begins with a letter; letters, digits, underscores follow, parts are joined by single hyphens (C-100). It is
/// not a reserved word.
struct name : peg::seq<peg::not_at<reserved>, peg::alpha, peg::star<name_char>,
                       peg::star<peg::one<'-'>, peg::plus<name_char>>> {};

struct closing_quote : peg::one<'"'> {};
struct text_body : peg::star<peg::not_one<'"', '\n'>> {};
struct text : peg::if_must<peg::one<'"'>, text_body, closing_quote> {};

struct no_decimal_comma : peg::not_at<peg::one<','>, peg::digit> {};
struct no_exponent : peg::not_at<peg::one<'e', 'E'>, peg::opt<peg::one<'+', '-'>>, peg::digit> {};
struct number
    : peg::seq<peg::opt<peg::one<'-'>>, peg::plus<peg::digit>, peg::opt<peg::seq<peg::one<'.'>, peg::plus<peg::digit>>>,
               peg::must<no_decimal_comma>, peg::must<no_exponent>> {};
struct integer
    : peg::seq<peg::plus<peg::digit>, peg::not_at<peg::sor<name_char, peg::seq<peg::one<'.'>, peg::digit>>>> {};

struct percent_sign : peg::one<'%'> {};
struct unit_letter : peg::sor<peg::alpha, peg::range<'\x80', '\xff'>> {};
struct unit_char : peg::sor<peg::alnum, peg::one<'/', '^'>, peg::range<'\x80', '\xff'>> {};
struct unit_joint : peg::seq<peg::one<'.', '-'>, peg::at<unit_letter>> {};
struct unit_start : peg::sor<unit_letter, peg::seq<peg::one<'1'>, peg::one<'/'>, unit_letter>> {};
/// Words that are not reserved, yet may follow a number that lacks its unit: the next row of a grading, or a tolerance.
struct row_word : peg::sor<k_sieve, k_stockpile, k_job> {};
/// A unit stands behind a number or behind `in`. Of the reserved words only `in` (the inch) can be a unit.
struct unit_symbol : peg::seq<peg::not_at<peg::not_at<k_in>, reserved>, peg::not_at<row_word>, unit_start,
                              peg::star<peg::sor<unit_char, unit_joint>>> {};

/// "No. 4" and "3/8 in": sieve designations that are not a number with a unit.
struct sieve_number : peg::seq<peg::sor<TAO_PEGTL_STRING("No."), TAO_PEGTL_STRING("No")>, peg::star<peg::one<' '>>,
                               peg::plus<peg::digit>> {};
struct sieve_fraction
    : peg::seq<peg::plus<peg::digit>, peg::one<'/'>, peg::plus<peg::digit>, peg::plus<peg::one<' '>>, k_in> {};
struct sieve_designation : peg::sor<sieve_number, sieve_fraction> {};

struct two_digits : peg::rep<2, peg::digit> {};
struct edition_mark
    : peg::seq<peg::rep<4, peg::digit>,
               peg::opt<peg::seq<peg::one<'-'>, two_digits, peg::opt<peg::seq<peg::one<'-'>, two_digits>>>>,
               peg::not_at<name_char>> {};

struct clause_part : peg::plus<name_char> {};
struct clause_number : peg::seq<clause_part, peg::star<peg::one<'.', '-'>, clause_part>> {};

}  // namespace plumbrule::grammar
