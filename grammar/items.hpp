#pragma once
// Items and their clauses (language.md, sections 4 to 8), and how reading goes on after an error.

#include "grammar/phrases.hpp"

namespace plumbrule::grammar {

/// A stretch skipped after an error: its first token, then on past the place where reading stopped, up to the next
/// opener. Texts and comments are skipped whole, so that a word inside them opens nothing.
struct any_token : sor<seq<one<'"'>, text_body, opt<one<'"'>>>, comment, plus<name_char>, peg::any> {};
/// Holds from the place on where reading stopped; the state knows it.
struct past_failure {
  using rule_t = past_failure;
  using subs_t = peg::type_list<>;
  template <peg::apply_mode, peg::rewind_mode, template <typename...> class, template <typename...> class,
            typename Input, typename State>
  [[nodiscard]] static bool match(Input& in, State& state) {
    return in.current() >= state.failed_at;
  }
};
struct next_item : sor<item_opener, peg::eof> {};
template <typename Opener>
struct broken_clause : seq<any_token, peg::until<at<past_failure, sor<Opener, next_item>>, sor<gap_one, any_token>>> {};
struct broken_item : seq<any_token, peg::until<at<past_failure, next_item>, sor<gap_one, any_token>>> {};

/// Holds if reading stopped here or behind: only then is anything skipped.
struct stopped_here {
  using rule_t = stopped_here;
  using subs_t = peg::type_list<>;
  template <peg::apply_mode, peg::rewind_mode, template <typename...> class, template <typename...> class,
            typename Input, typename State>
  [[nodiscard]] static bool match(Input& in, State& state) {
    return state.failed_at != nullptr && state.failed_at >= in.current();
  }
};

/// Words that end an item though they open no item: the clauses of an amendment, in which requirements stand.
struct amendment_word : sor<k_amends, k_effective, k_retitle, k_withdraw, k_replace, k_add> {};
/// Something that opens no clause here: reported, never skipped in silence.
template <typename Opener>
struct unknown_clause : seq<not_at<sor<item_opener, amendment_word, peg::eof>>, peg::raise<unknown_clause<Opener>>> {};
struct unknown_item : seq<not_at<peg::eof>, peg::raise<unknown_item>> {};

/// The clauses of an item. `Opener`: the words that open one, at which reading goes on after an error.
template <typename Clause, typename Opener>
struct clauses
    : star<sor<peg::try_catch<sor<Clause, unknown_clause<Opener>>>, seq<stopped_here, broken_clause<Opener>>>, gap> {};

/// A clause begins with its word, which becomes the first child of its branch.
template <typename Word>
struct lead : Word {};

struct new_name : name {};
struct title : texts {};

// Clauses shared by several items.
struct source_clause : if_must<lead<k_source>, gap, texts> {};
struct note_clause : if_must<lead<k_note>, gap, texts> {};
struct status_word : name {};
struct status_clause : if_must<lead<k_status>, gap, status_word, opt<gap, texts>> {};
struct because_clause : if_must<lead<k_because>, gap, texts> {};
/// The reason that something owes, named apart so that a missing one can say what it is the reason of.
struct refusal_reason : seq<because_clause> {};
struct acceptance_reason : seq<because_clause> {};
struct withdrawal_reason : seq<because_clause> {};
struct cite_clause : if_must<lead<k_cite>, gap, texts> {};
struct mend_clause : if_must<lead<k_mend>, gap, texts> {};
struct in_clause : if_must<lead<k_in>, gap, unit> {};

// Vocabulary, category, condition, basis.
struct provenance_opener : sor<k_source, k_status, k_note> {};
struct vocabulary_item : if_must<lead<k_vocabulary>, gap, new_name, gap, title, gap,
                                 clauses<sor<source_clause, status_clause, note_clause>, provenance_opener>> {};
struct category_item : if_must<lead<k_category>, gap, new_name, gap, title, gap, colon, gap, words> {};
struct sieve_designations : seq<k_sieve, gap, must<k_designation>> {};
struct as_clause : if_must<lead<k_as>, gap, sieve_designations> {};
struct text_word : k_text {};
struct as_text_clause : if_must<lead<k_as>, gap, text_word> {};
struct among_clause : if_must<lead<k_among>, gap, category_name> {};
struct condition_scale : sor<in_clause, as_clause, among_clause> {};
struct condition_item
    : if_must<lead<k_condition>, gap, new_name, gap, title, gap, condition_scale, opt<gap, within_condition>> {};
struct basis_item : if_must<lead<k_basis>, gap, new_name, gap, title> {};

// Measure.
struct reported_clause : if_must<lead<k_reported>, gap, k_to, gap, quantity> {};
struct under_names : seq<condition_name, star<gap, k_and, gap, must<condition_name>>> {};
struct measure_under_clause : if_must<lead<k_under>, gap, under_names> {};
struct method_clause : if_must<lead<k_method>, gap, texts> {};
struct reading_name : name {};
struct in_before_unit : not_at<gap, name> {};
struct reading : seq<reading_name, must<in_before_unit>, opt<gap, sor<in_clause, among_clause>>> {};
struct readings : seq<reading, star<gap, comma, gap, must<reading>>> {};
struct from_clause : if_must<lead<k_from>, gap, readings> {};
struct computed_clause : if_must<lead<k_computed>, gap, k_as, gap, expression> {};
struct refused_clause : if_must<lead<k_refused>, gap, k_when, gap, comparison, gap, refusal_reason> {};
/// What the audit holds readings against (language.md, section 16).
struct repeatability_clause : if_must<lead<k_repeatability>, gap, quantity> {};
struct held_name : name {};
struct held_clause : if_must<lead<k_held>, gap, k_at, gap, held_name, gap, quantity, gap, within_condition> {};
struct measure_clause : sor<in_clause, among_clause, as_text_clause, reported_clause, measure_under_clause,
                            method_clause, from_clause, computed_clause, refused_clause, repeatability_clause,
                            held_clause, source_clause, status_clause, note_clause> {};
struct measure_opener : sor<k_in, k_among, k_as, k_reported, k_under, k_method, k_from, k_computed, k_refused,
                            k_repeatability, k_held, provenance_opener> {};
struct measure_item
    : if_must<lead<k_measure>, gap, new_name, gap, title, gap, clauses<measure_clause, measure_opener>> {};

// Table.
struct by_value : if_must<k_value, gap, k_in, gap, unit> {};
struct value_or_category : sor<by_value, category_name> {};
struct table_by : if_must<lead<k_by>, gap, value_or_category> {};
struct table_row : seq<word, gap, colon, gap, must<number>> {};
struct row_colon : colon {};
/// A row of a table by value. Its last one, `otherwise: 0`, reads as the row of a word.
struct value_row : if_must<bound_word, gap, quantity, gap, row_colon, gap, number> {};
struct table_clause : sor<source_clause, status_clause, note_clause, value_row, table_row> {};
struct table_opener : provenance_opener {};
struct table_item : if_must<lead<k_table>, gap, new_name, gap, opt<title, gap>, table_by, gap, in_clause, gap,
                            clauses<table_clause, table_opener>> {};

// Grading.
struct sieve_amount : sor<sieve_designation, quantity> {};
struct no_limit : seq<k_no, gap, must<k_limit>> {};
struct band : seq<quantity, opt<gap, k_to, gap, must<quantity>>> {};
struct band_or_none : sor<no_limit, band> {};
struct row_tolerance : if_must<tolerance_name, gap, k_within, gap, quantity> {};
struct grading_row : if_must<k_sieve, gap, sieve_amount, gap, band_or_none, star<gap, row_tolerance>> {};
/// The rule on consecutive sieves: what part of the band counts as its end.
struct ends_clause : if_must<lead<k_ends>, gap, k_of, gap, k_the, gap, k_band, gap, quantity> {};
struct grading_clause : sor<source_clause, status_clause, note_clause, cite_clause, ends_clause, grading_row> {};
struct grading_opener : sor<k_sieve, k_cite, k_ends, provenance_opener> {};
struct grading_item
    : if_must<lead<k_grading>, gap, new_name, gap, title, gap, clauses<grading_clause, grading_opener>> {};

// Specification and section.
struct edition_clause : if_must<lead<k_edition>, gap, edition_mark> {};
struct library_name : name {};
struct library_names : seq<library_name, star<gap, comma, gap, must<library_name>>> {};
struct uses_clause : if_must<lead<k_uses>, gap, library_names> {};
struct agency_clause : if_must<lead<k_agency>, gap, texts> {};
struct absolute_method : seq<k_absolute, gap, must<k_method>> {};
struct ties_to_even : seq<k_to, gap, must<k_even>> {};
struct ties_up : k_up {};
struct ties_rule : if_must<k_ties, gap, sor<ties_to_even, ties_up>> {};
struct reporting_place : seq<k_reporting, gap, must<k_place>> {};
struct rounding_place : if_must<k_to, gap, sor<reporting_place, quantity>> {};
struct rounding_word : k_rounding {};
struct rounding_method
    : if_must<rounding_word, gap, k_method, gap, opt<rounding_place, gap>, opt<comma, gap>, ties_rule> {};
struct comparing_method : sor<absolute_method, rounding_method> {};
struct compared_measure : name {};
struct compare_clause
    : if_must<lead<k_compare>, gap, opt<compared_measure, gap>, k_by, gap, k_the, gap, comparing_method> {};
/// Staged rounding: each specimen before the statistic.
struct round_clause
    : if_must<lead<k_round>, gap, k_each, gap, k_specimen, gap, rounding_place, gap, opt<comma, gap>, ties_rule> {};
/// Validity of a test by its date.
struct month_or_day : sor<k_months, k_days> {};
struct tested_clause : if_must<lead<k_tested>, gap, k_within, gap, integer, gap, month_or_day> {};
struct effective_date : edition_mark {};
struct effective_clause : if_must<lead<k_effective>, gap, effective_date> {};
struct lint_code : clause_number {};
struct accept_clause : if_must<lead<k_accept>, gap, lint_code, gap, acceptance_reason> {};
struct outliers_clause : if_must<lead<k_outliers>, gap, k_at, gap, quantity> {};
struct required_word : k_required {};
struct certificates_clause : if_must<lead<k_certificates>, gap, required_word> {};
struct specification_clause
    : sor<edition_clause, uses_clause, agency_clause, compare_clause, round_clause, tested_clause, effective_clause,
          accept_clause, outliers_clause, certificates_clause, source_clause, status_clause, note_clause> {};
struct specification_opener : sor<k_edition, k_uses, k_agency, k_compare, k_round, k_tested, k_effective, k_accept,
                                  k_outliers, k_certificates, provenance_opener> {};
struct specification_item : if_must<lead<k_specification>, gap, new_name, gap, title, gap,
                                    clauses<specification_clause, specification_opener>> {};
struct section_item : if_must<lead<k_section>, gap, clause_number, gap, title> {};

// Requirement.
struct where_clause : if_must<lead<k_where>, gap, test, more_tests> {};
struct optional_clause : seq<lead<k_optional>> {};
struct severity_word : name {};
struct severity_clause : if_must<lead<k_severity>, gap, severity_word> {};
struct either_clause : if_must<lead<k_either>, gap, alternative, gap, plus<seq<k_or, gap, must<alternative>, gap>>> {};
struct assertion_clause : seq<assertion_ahead, assertion> {};
struct not_required : seq<k_not, gap, must<k_required>> {};
struct shall_be : seq<k_shall, gap, must<k_be>> {};
struct except_demand : sor<not_required, seq<shall_be, gap, must<be_limit>>> {};
struct except_clause : if_must<lead<k_except>, gap, k_where, gap, test, more_tests, gap, opt<comma, gap>, except_demand,
                               opt<gap, cite_clause>> {};
struct requirement_clause : sor<where_clause, optional_clause, severity_clause, compare_clause, tested_clause,
                                accept_clause, except_clause, cite_clause, because_clause, mend_clause, source_clause,
                                status_clause, note_clause, either_clause, assertion_clause> {};
struct requirement_opener : sor<k_where, k_optional, k_severity, k_compare, k_tested, k_accept, k_except, k_cite,
                                k_because, k_mend, k_either, provenance_opener> {};
struct requirement_item : if_must<lead<k_requirement>, gap, clause_number, gap, title, gap,
                                  clauses<requirement_clause, requirement_opener>> {};

// Example.
struct given_value : sor<sieve_designation, quantity, word> {};
struct given_reading : seq<reading_name, gap, must<given_value>> {};
struct given_readings : if_must<k_from, gap, given_reading, star<gap, comma, gap, must<given_reading>>> {};
struct given_amount : seq<opt<bound_word, gap>, quantity> {};
struct given_amounts : seq<given_amount, star<gap, k_and, gap, must<given_amount>>> {};
struct given_result : sor<given_readings, given_amounts, word> {};
struct job_mix_given : seq<k_job, gap, must<k_mix>> {};
struct lot_name : clause_number {};
struct in_lot : if_must<k_in, gap, k_lot, gap, lot_name> {};
struct given_clause : if_must<lead<k_given>, gap, opt<job_mix_given, gap>, measure_name, gap, given_result,
                              opt<gap, under_conditions>, opt<gap, in_lot>> {};
struct not_shown : seq<k_not, gap, must<k_shown>> {};
struct does_not_apply : seq<k_does, gap, must<k_not>, gap, must<k_apply>> {};
struct expected_verdict : sor<k_complies, k_fails, not_shown, does_not_apply, k_refused> {};
struct expected_value : if_must<k_value, gap, quantity> {};
struct expectation : sor<expected_value, expected_verdict> {};
struct expect_clause : if_must<lead<k_expect>, gap, expectation> {};
struct example_clause : sor<given_clause, expect_clause, note_clause> {};
struct example_target : clause_number {};
struct example_opener : sor<k_given, k_expect, k_note> {};
struct example_item : if_must<lead<k_example>, gap, title, gap, k_for, gap, example_target, gap,
                              clauses<example_clause, example_opener>> {};

// Term: a name for conditions or for a limit, so that nothing is written twice.
struct term_conditions : seq<condition_value, more_conditions> {};
struct term_limit : sor<at_limit, between_limit, one_of_limit, within_limit> {};
struct term_meaning : sor<term_limit, term_conditions> {};
struct term_item : if_must<lead<k_term>, gap, new_name, gap, opt<title, gap>, k_means, gap, term_meaning> {};

// Amendment: changes to an edition of a specification, by clause number.
struct specification_name : name {};
struct amends_clause : if_must<lead<k_amends>, gap, specification_name, gap, k_edition, gap, edition_mark> {};
struct new_title : texts {};
struct retitle_clause : if_must<lead<k_retitle>, gap, clause_number, gap, new_title, opt<gap, cite_clause>> {};
struct withdraw_clause : if_must<lead<k_withdraw>, gap, clause_number, gap, withdrawal_reason> {};
struct new_limit : be_limit {};
struct limit_by : k_by {};
struct replace_limit : if_must<k_limit, gap, limit_by, gap, new_limit> {};
struct replace_rest : sor<requirement_item, seq<clause_number, gap, must<replace_limit>, opt<gap, cite_clause>>> {};
struct replace_clause : if_must<lead<k_replace>, gap, replace_rest> {};
struct add_clause : if_must<lead<k_add>, gap, requirement_item> {};
struct amendment_clause : sor<amends_clause, effective_clause, retitle_clause, withdraw_clause, replace_clause,
                              add_clause, source_clause, status_clause, note_clause> {};
struct amendment_opener : sor<k_amends, k_effective, k_retitle, k_withdraw, k_replace, k_add, provenance_opener> {};
struct amendment_item
    : if_must<lead<k_amendment>, gap, new_name, gap, title, gap, clauses<amendment_clause, amendment_opener>> {};

// The file.
struct item : sor<vocabulary_item, category_item, condition_item, basis_item, measure_item, table_item, grading_item,
                  specification_item, section_item, requirement_item, example_item, term_item, amendment_item> {};
struct version : integer {};
struct first_line : seq<must<k_plumbrule>, gap, must<version>> {};
struct broken_start : peg::until<at<next_item>, sor<gap_one, any_token>> {};
struct file
    : seq<gap, sor<peg::try_catch<first_line>, broken_start>, gap,
          star<sor<peg::try_catch<sor<item, unknown_item>>, seq<not_at<peg::eof>, broken_item>>, gap>, peg::eof> {};

}  // namespace plumbrule::grammar
