#pragma once
// The words of the language. Every one is reserved: a name of the user's may not be one of them. The list is the
// normative one of language.md, section 2.3; tests/docs compares the two.

#include <array>
#include <string_view>

namespace plumbrule::grammar {

/// Words that open an item of a rule file.
inline constexpr std::array<std::string_view, 13> item_words{
    "vocabulary",    "category", "condition",   "basis",   "measure", "table",     "grading",
    "specification", "section",  "requirement", "example", "term",    "amendment",
};

/// Words that open a clause of an item.
inline constexpr std::array<std::string_view, 39> clause_words{
    "in",       "reported", "under",   "method",        "from",    "among",     "computed",     "refused",
    "edition",  "uses",     "compare", "status",        "source",  "agency",    "note",         "where",
    "optional", "severity", "either",  "cite",          "because", "mend",      "given",        "expect",
    "except",   "round",    "tested",  "ends",          "amends",  "effective", "replace",      "withdraw",
    "retitle",  "add",      "accept",  "repeatability", "held",    "outliers",  "certificates",
};

/// Words inside a phrase.
inline constexpr std::array<std::string_view, 30> phrase_words{
    "plumbrule", "to",   "as",   "by",    "of",      "or",    "and",     "not",      "is",     "shall",
    "be",        "at",   "most", "least", "between", "one",   "conform", "mean",     "each",   "greatest",
    "range",     "when", "for",  "ties",  "above",   "below", "the",     "standard", "within", "means",
};

}  // namespace plumbrule::grammar
