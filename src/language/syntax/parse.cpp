// The only translation unit that sees PEGTL.

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "base/diagnose/quote.hpp"
#include "base/diagnose/suggest.hpp"
#include "grammar/messages.hpp"
#include "grammar/words.hpp"
#include "language/syntax/branch.hpp"

namespace plumbrule::syntax {
namespace {

namespace g = plumbrule::grammar;
namespace peg = TAO_PEGTL_NAMESPACE;

struct Reader {
  const source::SourceMap& sources;
  source::FileId file;
  const char* start;
  diagnose::Diagnostics& diagnostics;
  std::vector<Branch> stack;
  const char* failed_at = nullptr;  // where reading stopped last

  [[nodiscard]] std::uint32_t offset(const char* at) const { return static_cast<std::uint32_t>(at - start); }

  // Branches arrive innermost first. What lies at or behind the beginning of a new one is its content, or, for a
  // leaf, left over from an alternative that was tried before.
  void add(Kind kind, const char* begin, const char* end, bool container, bool whole) {
    const std::uint32_t from = offset(begin);
    auto inner = stack.end();
    while (inner != stack.begin() && std::prev(inner)->span.begin >= from) {
      --inner;
    }
    Branch branch{kind, {file, from, offset(end)}, {}};
    if (container) {
      branch.children.assign(std::make_move_iterator(inner), std::make_move_iterator(stack.end()));
      if (!branch.children.empty() && !whole) {
        branch.span.end = branch.children.back().span.end;
      }
    }
    stack.erase(inner, stack.end());
    stack.push_back(std::move(branch));
  }
};

template <typename Rule>
struct action {};

// A container ends with its last child, so that blanks behind it do not count; a `whole` one ends as it was matched.
template <Kind kind, bool container, bool whole>
struct keep {
  template <typename Input>
  static void apply(const Input& in, Reader& reader) {
    reader.add(kind, in.begin(), in.end(), container, whole);
  }
};

// A skipped stretch: the stop that it is about is dealt with.
struct skipped {
  template <typename Input>
  static void apply(const Input& in, Reader& reader) {
    reader.failed_at = nullptr;
    reader.add(Kind::broken, in.begin(), in.end(), false, true);
  }
};

template <Kind kind>
using leaf = keep<kind, false, true>;
template <Kind kind>
using container = keep<kind, true, false>;
template <Kind kind>
using whole = keep<kind, true, true>;

// clang-format off
template <typename Word> struct action<g::lead<Word>> : leaf<Kind::choice> {};
template <> struct action<g::name> : leaf<Kind::name> {};
template <> struct action<g::new_name> : leaf<Kind::name> {};
template <> struct action<g::word> : leaf<Kind::name> {};
template <> struct action<g::basis_name> : leaf<Kind::name> {};
template <> struct action<g::condition_name> : leaf<Kind::name> {};
template <> struct action<g::measure_name> : leaf<Kind::name> {};
template <> struct action<g::grading_name> : leaf<Kind::name> {};
template <> struct action<g::category_name> : leaf<Kind::name> {};
template <> struct action<g::reading_name> : leaf<Kind::name> {};
template <> struct action<g::status_word> : leaf<Kind::name> {};
template <> struct action<g::severity_word> : leaf<Kind::name> {};
template <> struct action<g::library_name> : leaf<Kind::name> {};
template <> struct action<g::text> : leaf<Kind::text> {};
template <> struct action<g::number> : leaf<Kind::number> {};
template <> struct action<g::percent_sign> : leaf<Kind::percent> {};
template <> struct action<g::unit_symbol> : leaf<Kind::unit> {};
template <> struct action<g::plain_number> : leaf<Kind::unit> {};
template <> struct action<g::integer> : leaf<Kind::integer> {};
template <> struct action<g::version> : leaf<Kind::integer> {};
template <> struct action<g::sieve_designation> : leaf<Kind::sieve> {};
template <> struct action<g::edition_mark> : leaf<Kind::edition> {};
template <> struct action<g::clause_number> : leaf<Kind::clause> {};
template <> struct action<g::example_target> : leaf<Kind::clause> {};
template <> struct action<g::product_sign> : leaf<Kind::sign> {};
template <> struct action<g::sum_sign> : leaf<Kind::sign> {};
template <> struct action<g::comparison_sign> : leaf<Kind::sign> {};
template <> struct action<g::no_limit> : leaf<Kind::no_limit> {};
template <typename Opener> struct action<g::broken_clause<Opener>> : skipped {};
template <> struct action<g::broken_item> : skipped {};
template <> struct action<g::statistic_name> : leaf<Kind::choice> {};
template <> struct action<g::each_statistic> : leaf<Kind::choice> {};
template <> struct action<g::at_phrase> : leaf<Kind::choice> {};
template <> struct action<g::between_phrase> : leaf<Kind::choice> {};
template <> struct action<g::one_of_phrase> : leaf<Kind::choice> {};
template <> struct action<g::conform_phrase> : leaf<Kind::choice> {};
template <> struct action<g::is_not_one_of> : leaf<Kind::choice> {};
template <> struct action<g::is_not> : leaf<Kind::choice> {};
template <> struct action<g::is_one_of> : leaf<Kind::choice> {};
template <> struct action<g::absolute_method> : leaf<Kind::choice> {};
template <> struct action<g::rounding_word> : leaf<Kind::choice> {};
template <> struct action<g::ties_to_even> : leaf<Kind::choice> {};
template <> struct action<g::ties_up> : leaf<Kind::choice> {};
template <> struct action<g::reporting_place> : leaf<Kind::choice> {};
template <> struct action<g::bound_word> : leaf<Kind::choice> {};
template <> struct action<g::expected_verdict> : leaf<Kind::choice> {};
template <> struct action<g::sieve_designations> : leaf<Kind::choice> {};
template <> struct action<g::texts> : container<Kind::texts> {};
template <> struct action<g::title> : container<Kind::texts> {};
template <> struct action<g::words> : container<Kind::words> {};
template <> struct action<g::basis_of> : container<Kind::basis_of> {};
template <> struct action<g::quantity> : container<Kind::quantity> {};
template <> struct action<g::condition_value> : container<Kind::condition_value> {};
template <> struct action<g::under_conditions> : container<Kind::conditions> {};
template <> struct action<g::statistic> : whole<Kind::statistic> {};
template <> struct action<g::at_limit> : container<Kind::limit> {};
template <> struct action<g::between_limit> : container<Kind::limit> {};
template <> struct action<g::one_of_limit> : container<Kind::limit> {};
template <> struct action<g::one_word> : container<Kind::limit> {};
template <> struct action<g::conform_limit> : container<Kind::limit> {};
template <> struct action<g::test> : container<Kind::test> {};
template <> struct action<g::reading> : container<Kind::reading> {};
template <> struct action<g::given_reading> : container<Kind::given_reading> {};
template <> struct action<g::given_readings> : container<Kind::given_readings> {};
template <> struct action<g::given_amount> : container<Kind::given_amount> {};
template <> struct action<g::assertion> : container<Kind::assertion> {};
template <> struct action<g::alternative> : container<Kind::assertion> {};
template <> struct action<g::bracketed> : whole<Kind::bracketed> {};
template <> struct action<g::call> : whole<Kind::call> {};
template <> struct action<g::product> : container<Kind::product> {};
template <> struct action<g::expression> : container<Kind::sum> {};
template <> struct action<g::comparison> : container<Kind::comparison> {};
template <> struct action<g::table_row> : container<Kind::row> {};
template <> struct action<g::value_row> : container<Kind::row> {};
template <> struct action<g::grading_row> : container<Kind::row> {};
template <> struct action<g::source_clause> : container<Kind::clause_group> {};
template <> struct action<g::note_clause> : container<Kind::clause_group> {};
template <> struct action<g::status_clause> : container<Kind::clause_group> {};
template <> struct action<g::because_clause> : container<Kind::clause_group> {};
template <> struct action<g::cite_clause> : container<Kind::clause_group> {};
template <> struct action<g::mend_clause> : container<Kind::clause_group> {};
template <> struct action<g::in_clause> : container<Kind::clause_group> {};
template <> struct action<g::as_clause> : container<Kind::clause_group> {};
template <> struct action<g::among_clause> : container<Kind::clause_group> {};
template <> struct action<g::reported_clause> : container<Kind::clause_group> {};
template <> struct action<g::measure_under_clause> : container<Kind::clause_group> {};
template <> struct action<g::method_clause> : container<Kind::clause_group> {};
template <> struct action<g::from_clause> : container<Kind::clause_group> {};
template <> struct action<g::computed_clause> : container<Kind::clause_group> {};
template <> struct action<g::refused_clause> : container<Kind::clause_group> {};
template <> struct action<g::repeatability_clause> : container<Kind::clause_group> {};
template <> struct action<g::held_clause> : container<Kind::clause_group> {};
template <> struct action<g::held_name> : leaf<Kind::name> {};
template <> struct action<g::outliers_clause> : container<Kind::clause_group> {};
template <> struct action<g::certificates_clause> : container<Kind::clause_group> {};
template <> struct action<g::table_by> : container<Kind::clause_group> {};
template <> struct action<g::edition_clause> : container<Kind::clause_group> {};
template <> struct action<g::uses_clause> : container<Kind::clause_group> {};
template <> struct action<g::agency_clause> : container<Kind::clause_group> {};
template <> struct action<g::compare_clause> : container<Kind::clause_group> {};
template <> struct action<g::where_clause> : container<Kind::clause_group> {};
template <> struct action<g::optional_clause> : container<Kind::clause_group> {};
template <> struct action<g::severity_clause> : container<Kind::clause_group> {};
template <> struct action<g::either_clause> : container<Kind::clause_group> {};
template <> struct action<g::assertion_clause> : container<Kind::clause_group> {};
template <> struct action<g::given_clause> : container<Kind::clause_group> {};
template <> struct action<g::expect_clause> : container<Kind::clause_group> {};
template <> struct action<g::term_name> : leaf<Kind::name> {};
template <> struct action<g::compared_measure> : leaf<Kind::name> {};
template <> struct action<g::specification_name> : leaf<Kind::name> {};
template <> struct action<g::result_word> : leaf<Kind::choice> {};
template <> struct action<g::each_lot> : leaf<Kind::choice> {};
template <> struct action<g::within_phrase> : leaf<Kind::choice> {};
template <> struct action<g::tolerance_name> : leaf<Kind::choice> {};
template <> struct action<g::text_word> : leaf<Kind::choice> {};
template <> struct action<g::month_or_day> : leaf<Kind::choice> {};
template <> struct action<g::not_required> : leaf<Kind::choice> {};
template <> struct action<g::effective_date> : leaf<Kind::edition> {};
template <> struct action<g::lot_name> : leaf<Kind::clause> {};
template <> struct action<g::job_mix_given> : leaf<Kind::choice> {};
template <> struct action<g::lint_code> : leaf<Kind::clause> {};
template <> struct action<g::within_condition> : container<Kind::within> {};
template <> struct action<g::with_tolerance> : container<Kind::within> {};
template <> struct action<g::row_tolerance> : container<Kind::within> {};
template <> struct action<g::within_limit> : container<Kind::limit> {};
template <> struct action<g::new_title> : container<Kind::texts> {};
template <> struct action<g::as_text_clause> : container<Kind::clause_group> {};
template <> struct action<g::ends_clause> : container<Kind::clause_group> {};
template <> struct action<g::round_clause> : container<Kind::clause_group> {};
template <> struct action<g::tested_clause> : container<Kind::clause_group> {};
template <> struct action<g::effective_clause> : container<Kind::clause_group> {};
template <> struct action<g::accept_clause> : container<Kind::clause_group> {};
template <> struct action<g::except_clause> : container<Kind::clause_group> {};
template <> struct action<g::amends_clause> : container<Kind::clause_group> {};
template <> struct action<g::retitle_clause> : container<Kind::clause_group> {};
template <> struct action<g::withdraw_clause> : container<Kind::clause_group> {};
template <> struct action<g::replace_clause> : container<Kind::clause_group> {};
template <> struct action<g::add_clause> : container<Kind::clause_group> {};
template <> struct action<g::term_item> : container<Kind::item> {};
template <> struct action<g::amendment_item> : container<Kind::item> {};
template <> struct action<g::vocabulary_item> : container<Kind::item> {};
template <> struct action<g::category_item> : container<Kind::item> {};
template <> struct action<g::condition_item> : container<Kind::item> {};
template <> struct action<g::basis_item> : container<Kind::item> {};
template <> struct action<g::measure_item> : container<Kind::item> {};
template <> struct action<g::table_item> : container<Kind::item> {};
template <> struct action<g::grading_item> : container<Kind::item> {};
template <> struct action<g::specification_item> : container<Kind::item> {};
template <> struct action<g::section_item> : container<Kind::item> {};
template <> struct action<g::requirement_item> : container<Kind::item> {};
template <> struct action<g::example_item> : container<Kind::item> {};
// clang-format on

bool part_of_token(char byte) {
  return std::isalnum(static_cast<unsigned char>(byte)) != 0 || byte == '_' || byte == '-' || byte == '.' ||
         static_cast<unsigned char>(byte) >= 0x80U;
}

// The token at a place, for "found": a word, a quoted text, or one character.
std::string_view token_at(std::string_view rest) {
  if (rest.empty()) {
    return rest;
  }
  std::size_t length = 0;
  if (rest.front() == '"') {
    length = std::min(rest.find_first_of("\"\n", 1), rest.size() - 1) + 1;
    return rest.substr(0, rest[length - 1] == '\n' ? length - 1 : length);
  }
  while (length < rest.size() && part_of_token(rest[length])) {
    ++length;
  }
  return rest.substr(0, std::max<std::size_t>(length, 1));
}

using Words = std::vector<std::string_view>;

template <typename Text>
struct text_of;
template <char... Letters>
struct text_of<peg::string<Letters...>> {
  static constexpr std::array<char, sizeof...(Letters)> value{Letters...};
};

// The words by which a rule opens clauses: a key, or a choice of such rules.
template <typename Text>
void add_words(Words& out, const g::key<Text>* /*rule*/) {
  out.emplace_back(text_of<Text>::value.data(), text_of<Text>::value.size());
}
template <typename... Rules>
void add_words(Words& out, const peg::sor<Rules...>* /*rule*/) {
  (add_words(out, static_cast<const Rules*>(nullptr)), ...);
}

std::string listed(const Words& words) {
  std::string out;
  for (const std::string_view word : words) {
    out += (out.empty() ? "`" : ", `") + std::string(word) + "`";
  }
  return out;
}

const Words& item_openers() {
  static const Words words(g::item_words.begin(), g::item_words.end());
  return words;
}

// A word of this item, else one that opens an item, else, as it may be in an amendment, a clause of that.
std::optional<std::string_view> meant(std::string_view token, const Words& clauses) {
  Words here = item_openers();
  here.insert(here.end(), clauses.begin(), clauses.end());
  if (const auto near = diagnose::nearest(token, here)) {
    return near;
  }
  Words amending;
  add_words(amending, static_cast<const g::amendment_word*>(nullptr));
  return diagnose::nearest(token, amending);
}

template <typename Rule>
struct Help {
  static std::string text(std::string_view /*token*/) {
    static_assert(g::expectation_of<Rule>.help[0] != '\0', "every error owes a way to mend it");
    return g::expectation_of<Rule>.help;
  }
};

template <>
struct Help<g::unknown_item> {
  static std::string text(std::string_view token) {
    const auto near = diagnose::nearest(token, item_openers());
    return near ? "did you mean `" + std::string(*near) + "`?" : "an item begins with one of " + listed(item_openers());
  }
};

// What people write where a clause of a requirement should begin.
std::optional<std::string> instead_of(std::string_view token) {
  if (token == "if" || token == "when") {
    return "did you mean `where`?";
  }
  if (token == "or") {
    return "write `either` in front of the first of several demands, `one of` in front of several words";
  }
  return std::nullopt;
}

// What stands in an item beside the clauses that begin with a word of the language.
template <typename Opener>
constexpr std::string_view besides = "";
template <>
constexpr std::string_view besides<g::requirement_opener> = "; a demand is `MEASURE shall be ...`";
template <>
constexpr std::string_view besides<g::table_opener> =
    "; a row is a word, or `at most` and a value, then `:` and a number";

template <typename Opener>
struct Help<g::unknown_clause<Opener>> {
  static std::string text(std::string_view token) {
    if (token == "," || token == ";" || token == ":") {
      return "leave it out; a clause ends where the next one begins";
    }
    if constexpr (std::is_same_v<Opener, g::requirement_opener>) {
      if (const auto help = instead_of(token)) {
        return *help;
      }
    }
    Words clauses;
    add_words(clauses, static_cast<const Opener*>(nullptr));
    const auto near = meant(token, clauses);
    return near ? "did you mean `" + std::string(*near) + "`?"
                : "clauses of this item begin with " + listed(clauses).append(besides<Opener>);
  }
};

// Blanks and comments in front of the token where reading stopped.
std::string_view skip_gap(std::string_view rest) {
  while (!rest.empty()) {
    if (rest.front() == '#') {
      rest.remove_prefix(std::min(rest.find('\n'), rest.size()));
    } else if (std::isspace(static_cast<unsigned char>(rest.front())) != 0) {
      rest.remove_prefix(1);
    } else {
      break;
    }
  }
  return rest;
}

struct Stop {
  std::string_view token;
  std::string found;
};

// What stands where reading stopped. An open text is shown from its quote on.
template <typename Rule>
Stop stop_at(const Reader& reader, const char* current, const char* end) {
  if constexpr (std::is_same_v<Rule, g::closing_quote>) {
    const std::string_view before(reader.start, static_cast<std::size_t>(current - reader.start));
    const std::string_view open = before.substr(before.rfind('"'));
    return {open, diagnose::quoted(open)};
  } else {
    // A word that was read in part is shown whole.
    const auto inside = [](char byte) { return std::isalnum(static_cast<unsigned char>(byte)) != 0 || byte == '.'; };
    while (current > reader.start && current < end && inside(*current) && inside(current[-1])) {
      --current;
    }
    const std::string_view token = token_at(skip_gap({current, static_cast<std::size_t>(end - current)}));
    return {token, token.empty() ? "the end of the file" : diagnose::quoted(token)};
  }
}

template <typename Rule>
struct control : peg::normal<Rule> {
  template <typename Input, typename... States>
  [[noreturn]] static void raise(const Input& in, Reader& reader, States&&... /*unused*/) {
    static_assert(g::expectation_of<Rule>.expected != nullptr, "a rule that can stop the reading needs a text");
    const Stop stop = stop_at<Rule>(reader, in.current(), in.end());
    const std::uint32_t at = reader.offset(stop.token.data());
    const source::Span span{reader.file, at, at + static_cast<std::uint32_t>(stop.token.size())};
    reader.failed_at = std::max(in.current(), stop.token.data());
    reader.diagnostics.error(diagnose::Code::syntax_unexpected, span,
                             "found " + stop.found + ", expected " + g::expectation_of<Rule>.expected,
                             Help<Rule>::text(stop.token));
    throw peg::parse_error("stopped", in);
  }
};

// Brackets are counted before reading, so that no text can exhaust the stack.
bool nested_too_deep(std::string_view text, std::uint32_t& where) {
  int depth = 0;
  bool in_text = false;
  bool in_comment = false;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char byte = text[at];
    in_text = byte == '\n' ? false : (!in_comment && byte == '"') != in_text;
    in_comment = byte == '\n' ? false : in_comment || (byte == '#' && !in_text);
    if (in_text || in_comment) {
      continue;
    }
    depth += byte == '(' ? 1 : byte == ')' ? -1 : 0;
    if (depth > deepest_brackets) {
      where = static_cast<std::uint32_t>(at);
      return true;
    }
  }
  return false;
}

}  // namespace

std::vector<Branch> parse_branches(const source::SourceMap& sources, source::FileId file,
                                   diagnose::Diagnostics& diagnostics) {
  const std::string_view text = sources.text(file);
  std::uint32_t where = 0;
  if (nested_too_deep(text, where)) {
    diagnostics.error(diagnose::Code::syntax_depth, {file, where, where + 1},
                      "found brackets nested more than " + std::to_string(deepest_brackets) + " deep",
                      "split the formula into measures of its own");
    return {};
  }
  Reader reader{sources, file, text.data(), diagnostics, {}, nullptr};
  const std::size_t skipped = text.size() - source::behind_mark(text).size();
  peg::memory_input<peg::tracking_mode::lazy> in(text.data() + skipped, text.data() + text.size(), "");
  if (!peg::parse<g::file, action, control>(in, reader)) {
    diagnostics.error(diagnose::Code::syntax_unexpected, {file, 0, 0}, "the file cannot be read as rules");
  }
  return std::move(reader.stack);
}

}  // namespace plumbrule::syntax
