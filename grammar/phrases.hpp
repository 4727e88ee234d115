#pragma once
// Phrases: quantities, expressions, conditions, statistics, limits (language.md, sections 3, 5 and 7).

#include "grammar/tokens.hpp"

namespace plumbrule::grammar {

using peg::at;
using peg::if_must;
using peg::must;
using peg::not_at;
using peg::one;
using peg::opt;
using peg::plus;
using peg::seq;
using peg::sor;
using peg::star;
using peg::success;

struct comma : one<','> {};
struct colon : one<':'> {};
struct more_texts : star<gap, text> {};
struct texts : seq<text, more_texts> {};
struct word : name {};
/// The comma in front of `shall` and `not required` ends the list.
struct list_comma : seq<comma, not_at<gap, sor<k_shall, k_not>>> {};
struct more_words : star<gap, list_comma, gap, must<word>> {};
struct words : seq<word, more_words> {};

// Quantities.
struct basis_name : name {};
struct basis_of : if_must<k_of, gap, basis_name> {};
struct percent : seq<percent_sign, opt<gap, basis_of>> {};
struct plain_number : k_number {};
struct unit : sor<percent, plain_number, unit_symbol> {};
/// A name with a text behind it: neither a unit nor a further word of a limit.
struct misspelt_clause : seq<name, gap, one<'"'>> {};
struct number_unit : sor<percent, seq<not_at<misspelt_clause>, unit_symbol>> {};
struct quantity : seq<number, opt<gap, number_unit>> {};

// Expressions.
struct expression;
struct open_bracket : one<'('> {};
struct close_bracket : one<')'> {};
struct bracketed : if_must<open_bracket, gap, expression, gap, close_bracket> {};
struct arguments : seq<expression, star<gap, comma, gap, must<expression>>> {};
struct call : seq<name, gap, open_bracket, gap, must<arguments>, gap, must<close_bracket>> {};
struct call_ahead : at<name, gap, open_bracket> {};
struct factor : sor<bracketed, seq<call_ahead, call>, quantity, name> {};
struct product_sign : one<'*', '/'> {};
struct product : seq<factor, star<gap, product_sign, gap, must<factor>>> {};
struct sum_sign : one<'+', '-'> {};
struct expression : seq<product, star<gap, sum_sign, gap, must<product>>> {};
struct comparison_sign : sor<TAO_PEGTL_STRING("<="), TAO_PEGTL_STRING(">="), one<'<', '>', '='>> {};
struct comparison : seq<expression, gap, must<comparison_sign>, gap, must<expression>> {};

struct term_name : name {};

// Conditions: soak 1 h, sieve No. 4, method_variant A.
struct condition_point : sor<sieve_designation, quantity, word> {};
struct most_or_least : sor<k_most, k_least> {};
struct at_phrase : seq<k_at, gap, must<most_or_least>> {};
struct condition_end : if_must<at_phrase, gap, quantity> {};
struct condition_amount : sor<condition_end, condition_point> {};
struct within_condition : if_must<k_within, gap, quantity> {};
struct condition_name : name {};
struct condition_value : seq<condition_name, gap, must<condition_amount>, opt<gap, within_condition>> {};
/// The name of a term that stands for conditions, told from a condition by what follows it.
struct conditions_term : seq<name, not_at<gap, sor<sieve_designation, number, at_phrase, name>>> {};
struct condition_or_term : sor<seq<at<conditions_term>, term_name>, condition_value> {};
struct more_conditions : star<gap, k_and, gap, must<condition_or_term>> {};
struct under_conditions : if_must<k_under, gap, condition_or_term, more_conditions> {};

// Statistics over the specimens of a result.
struct specimen_word : sor<k_specimens, k_specimen> {};
struct each_in_lot : k_each {};
struct each_lot : seq<k_in, gap, must<each_in_lot>, gap, must<k_lot>> {};
struct result_word : sor<k_results, k_result> {};
struct results_counted : seq<result_word, opt<gap, each_lot>> {};
struct counted : sor<results_counted, specimen_word> {};
struct counted_at_least : seq<k_at, gap, k_least, gap, must<integer>, gap, must<counted>> {};
struct counted_plainly : seq<integer, gap, must<counted>> {};
struct of_specimens : sor<counted_at_least, counted_plainly, specimen_word, results_counted> {};
struct standard_deviation : seq<k_standard, gap, must<k_deviation>> {};
struct statistic_name : sor<k_mean, k_least, k_greatest, k_range, standard_deviation> {};
struct each_statistic : k_each {};
struct statistic
    : sor<if_must<statistic_name, gap, k_of, gap, of_specimens>,
          if_must<each_statistic, gap, sor<seq<k_of, gap, must<of_specimens>>, specimen_word, result_word>>> {};
struct statistic_ahead : at<sor<statistic_name, k_each>> {};

/// How an edge or a bound stands to its value.
struct bound_word : sor<at_phrase, k_above, k_below> {};

// Limits.
struct at_limit : if_must<at_phrase, gap, quantity> {};
struct between_phrase : k_between {};
struct between_limit : if_must<between_phrase, gap, quantity, gap, k_and, gap, quantity> {};
struct one_of_phrase : seq<k_one, gap, must<k_of>> {};
struct one_of_limit : if_must<one_of_phrase, gap, words> {};
/// What shows on the same line that a word is not the whole limit: `less than 5 g`.
struct same_line : star<one<' ', '\t'>> {};
struct more_than_a_word : seq<same_line, not_at<misspelt_clause>, sor<number, name>> {};
struct one_word : seq<word, not_at<more_than_a_word>> {};
struct within_phrase : k_within {};
struct job_mix_words : seq<k_the, gap, k_job, gap, k_mix> {};
struct within_limit : if_must<within_phrase, gap, quantity, gap, k_from, gap, job_mix_words> {};
struct be_limit : sor<at_limit, between_limit, one_of_limit, within_limit, one_word> {};
struct conform_phrase : seq<k_conform, gap, must<k_to>, gap, must<k_grading>> {};
struct grading_name : name {};
struct stockpile_tolerance : k_stockpile {};
struct job_mix_tolerance : seq<k_job, gap, must<k_mix>> {};
struct tolerance_name : sor<stockpile_tolerance, job_mix_tolerance> {};
struct with_tolerance : if_must<k_within, gap, tolerance_name, gap, k_tolerance> {};
struct conform_limit : if_must<conform_phrase, gap, grading_name, opt<gap, with_tolerance>> {};
struct be_or_conform : sor<seq<k_be, gap, must<be_limit>>, conform_limit> {};
struct shall_limit : if_must<k_shall, gap, be_or_conform> {};

// An assertion: measure, conditions, statistic, limit. The look-ahead tells it from a misspelt clause.
struct measure_name : name {};
struct assertion_tail
    : seq<opt<under_conditions, gap>, opt<comma, gap>, opt<statistic, gap>, opt<comma, gap>, must<shall_limit>> {};
/// Without its `shall` it is one still: `loss at most 538 g/m2`, `loss must be at most 538 g/m2`.
struct demand_ahead : sor<k_shall, k_be, k_conform, k_between, seq<k_at, gap, most_or_least>, seq<name, gap, k_be>> {};
struct assertion_ahead : at<name, gap, sor<k_under, comma, statistic_ahead, demand_ahead>> {};
struct assertion : seq<measure_name, gap, assertion_tail> {};
struct alternative : assertion {};

// Applicability: traffic is one of medium, heavy.
struct is_not_one_of : seq<k_not, gap, k_one, gap, k_of> {};
struct is_not : k_not {};
struct is_one_of : seq<k_one, gap, must<k_of>> {};
/// Behind a single class no second one follows, unless a demand begins with it; a list of them has commas alone.
struct class_ahead : seq<word, not_at<gap, sor<k_under, demand_ahead>>> {};
struct no_second_class : not_at<gap, sor<k_or, seq<list_comma, gap, class_ahead>>> {};
struct no_or : not_at<gap, k_or> {};
struct is_words
    : sor<seq<is_not_one_of, gap, must<words>, must<no_or>>, seq<is_not, gap, must<word>, must<no_second_class>>,
          seq<is_one_of, gap, must<words>, must<no_or>>, seq<word, must<no_second_class>>> {};
struct category_name : name {};
struct test : seq<category_name, gap, must<k_is>, gap, must<is_words>> {};
struct more_tests : star<gap, k_and, gap, must<test>> {};

}  // namespace plumbrule::grammar
