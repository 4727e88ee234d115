// The clauses of an item as lines and rows.

#include <algorithm>
#include <array>

#include "language/syntax/tidy_sheet.hpp"

namespace plumbrule::syntax {
namespace {

// Clauses that are a word and what is said about it: what is said stands in one column. In the head of a
// specification or amendment that holds for more words than elsewhere.
bool labelled(std::string_view item, std::string_view word) {
  constexpr std::array<std::string_view, 7> anywhere{"source", "status", "note", "cite", "mend", "because", "method"};
  constexpr std::array<std::string_view, 9> in_head{"edition", "agency", "uses",   "compare",  "round",
                                                    "tested",  "accept", "amends", "effective"};
  const bool head = item == "specification" || item == "amendment";
  return holds(anywhere, word) || (head && holds(in_head, word));
}

class Clauses {
 public:
  explicit Clauses(Sheet& sheet) : sheet_(sheet) {}

  void body(const std::vector<Part>& inner, std::string_view item, std::size_t indent) {
    std::size_t lead = 0;
    for (const Part& part : inner) {
      lead = labelled(item, sheet_.word(part.range)) ? std::max(lead, sheet_.word(part.range).size()) : lead;
    }
    sheet_.begin_block();
    tolerances_.clear();
    for (std::size_t index = 0; index < inner.size();) {
      const Blank blank = index == 0 ? Blank::none : Blank::author;
      const std::size_t first = sheet_.lines().size();
      const std::size_t done = clause(inner, index, indent);
      sheet_.lines()[first].blank = blank;
      if (labelled(item, sheet_.word(inner[index].range)) && sheet_.lines()[first].cells.empty()) {
        sheet_.lines()[first].lead = lead;
      }
      index += done;
    }
  }

 private:
  Sheet& sheet_;
  std::vector<std::string> tolerances_;

  // Whether the rows are those of a table by value: some row begins with a word of the language.
  [[nodiscard]] bool by_value(const std::vector<Part>& inner) const {
    return std::any_of(inner.begin(), inner.end(), [&](const Part& part) {
      return part.branch->kind == Kind::row && sheet_.tokens()[part.range.first].kind == TokenKind::word;
    });
  }

  // How many clauses were laid out.
  std::size_t clause(const std::vector<Part>& inner, std::size_t index, std::size_t indent) {
    const Part& part = inner[index];
    const std::string_view first = sheet_.word(part.range);
    if (part.branch->kind == Kind::row) {
      const std::vector<Token>& tokens = sheet_.tokens();
      const bool grading = tokens[part.range.first].is("sieve");  // in a table it is a name
      sheet_.row(
          part.range, indent, Blank::author,
          grading ? grading_cells(tokens, part.range, tolerances_) : table_cells(tokens, part.range, by_value(inner)));
      return 1;
    }
    if (first == "given") {
      return given(inner, index, indent);
    }
    if (first == "in" && index + 1 < inner.size() && unit_and_place(part.range, inner[index + 1].range, indent)) {
      return 2;
    }
    if (first == "refused") {
      refused(part.range, indent);
    } else if (first == "either") {
      either(part, indent);
    } else if (first == "replace" || first == "add") {
      change(part, indent);
    } else {
      sheet_.line(part.range, indent, Blank::author);
    }
    return 1;
  }

  // `in g/m2  reported to 1 g/m2` on one line.
  bool unit_and_place(Range unit, Range place, std::size_t indent) {
    const Range both{unit.first, place.last};
    if (!sheet_.tokens()[place.first].is("reported") || !clean(sheet_.tokens(), both)) {
      return false;
    }
    sheet_.begin_block();
    sheet_.row(both, indent, Blank::author, {{unit, 0, 1, false, false}, {place, 1, 2, false, false}}).alone = true;
    return true;
  }

  // `given` clauses of one shape, up to a blank line.
  std::size_t given(const std::vector<Part>& inner, std::size_t index, std::size_t indent) {
    std::vector<Range> run{inner[index].range};
    while (index + run.size() < inner.size()) {
      const Range next = inner[index + run.size()].range;
      if (!sheet_.tokens()[next.first].is("given") || sheet_.blank_above(next.first) ||
          given_shape(sheet_.tokens(), next) != given_shape(sheet_.tokens(), run.front())) {
        break;
      }
      run.push_back(next);
    }
    sheet_.begin_block();
    auto cells = given_cells(sheet_.tokens(), run, 0);
    for (std::size_t at = 0; at < run.size(); ++at) {
      sheet_.row(run[at], indent, Blank::author, std::move(cells[at])).width = row_width;
    }
    return run.size();
  }

  void refused(Range range, std::size_t indent) {
    std::size_t because = range.first;
    while (because < range.last && !sheet_.tokens()[because].is("because")) {
      ++because;
    }
    sheet_.line({range.first, because}, indent, Blank::author);
    sheet_.line({because, range.last}, indent + indent_step, Blank::none);
  }

  void either(const Part& part, std::size_t indent) {
    constexpr std::string_view longest = "either";
    const auto alternatives = sheet_.parts(part.branch->children, part.range,
                                           [](const Branch& child) { return child.kind == Kind::assertion; });
    sheet_.begin_block();
    for (std::size_t at = 0; at < alternatives.size(); ++at) {
      const std::size_t last = at + 1 < alternatives.size() ? alternatives[at + 1].range.first - 1 : part.range.last;
      const Range range{alternatives[at].range.first - 1, last};
      sheet_.row(range, indent, Blank::none, alternative_cells(sheet_.tokens(), range, *alternatives[at].branch)).lead =
          longest.size();
    }
  }

  // A change of an amendment, in which a requirement may stand.
  void change(const Part& part, std::size_t indent) {
    for (const Branch& child : part.branch->children) {
      if (child.kind == Kind::item) {
        const std::vector<Part> inner = sheet_.clauses(child, part.range);
        sheet_.line(Sheet::head(part.range, inner), indent, Blank::author);
        lay_clauses(sheet_, inner, "requirement", indent + indent_step);
        return;
      }
    }
    sheet_.line(part.range, indent, Blank::author);
  }
};

}  // namespace

void lay_clauses(Sheet& sheet, const std::vector<Part>& clauses, std::string_view item, std::size_t indent) {
  Clauses(sheet).body(clauses, item, indent);
}

}  // namespace plumbrule::syntax
