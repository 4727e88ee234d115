// From planned lines to text: columns where there are rows, else broken at the width, comments where they were.

#include <algorithm>
#include <array>

#include "language/syntax/tidy_layout.hpp"

namespace plumbrule::syntax {
namespace {

using Tokens = std::vector<Token>;

constexpr std::size_t continued = 4;  // further blanks of a line that goes on
constexpr std::size_t clause_indent = 2;

bool may_break_before(const Tokens& tokens, std::size_t at) {
  constexpr std::array<std::string_view, 11> words{"under", "shall",  "and", "because", "cite", "from",
                                                   "ties",  "within", "for", "means",   "by"};
  const Token& token = tokens[at];
  const bool opens = token.kind == TokenKind::word && holds(words, token.text);
  return opens || token.kind == TokenKind::sign || tokens[at - 1].text == ",";
}

class Page {
 public:
  explicit Page(const Tokens& tokens) : tokens_(tokens) {}

  void row(const Line& line, const Row& row) {
    above(line);
    out_ += row.text;
    column_ = width_of(row.text);
    end_line(tokens_[line.range.last - 1], row.comment);
  }

  void flow(const Line& line) {
    above(line);
    const std::size_t goes_on = line.indent + continued;
    blanks(line.indent);
    put(tokens_[line.range.first].text);
    const bool goes_on_here = line.range.first + 1 < line.range.last && !forced(line.range.first + 1);
    if (goes_on_here && column_ < line.indent + line.lead) {
      blanks(line.indent + line.lead - column_);
    }
    between_ = false;
    for (std::size_t at = line.range.first + 1; at < line.range.last; ++at) {
      const bool text_follows = tokens_[at].kind == TokenKind::text && tokens_[at - 1].kind == TokenKind::text;
      if (text_follows && stacked_) {
        go_on(at, text_column_);
      } else if (forced(at) || breaks(line, at)) {
        go_on(at, goes_on);
      } else {
        put(between(tokens_[at - 1], tokens_[at]));
      }
      if (tokens_[at].kind == TokenKind::text && !text_follows) {
        begin_texts(line, at);
      }
      put(tokens_[at].text);
      between_ = tokens_[at].is("between") || (between_ && !tokens_[at].is("and"));
    }
    end_line(tokens_[line.range.last - 1], 0);
  }

  // Comments behind the last token.
  void end() {
    const std::size_t last = tokens_.size() - 1;
    if (!tokens_[last].above.empty()) {
      above({{last, last}, 0, Blank::one, 0, phrase_width, {}, 0, false});
    }
  }

  std::string take() { return std::move(out_); }

 private:
  const Tokens& tokens_;
  std::string out_;
  std::size_t column_ = 0;
  bool stacked_ = false;  // the texts that follow each other here stand one under the other
  std::size_t text_column_ = 0;
  bool between_ = false;  // the next `and` belongs to `between`

  void put(std::string_view text) {
    out_ += text;
    column_ += width_of(text);
  }
  void blanks(std::size_t count) {
    out_.append(count, ' ');
    column_ += count;
  }
  void new_line() {
    out_ += '\n';
    column_ = 0;
  }
  void own_line(const Comment& comment, std::size_t indent) {
    blanks(indent);
    put(comment.text);
    new_line();
  }
  // `at`: the column of the comment behind the token, if there is one.
  void end_line(const Token& last, std::size_t at) {
    if (!last.beside.empty()) {
      blanks(std::max(comment_gap, at > column_ ? at - column_ : 0));
      put(last.beside);
    }
    new_line();
  }

  [[nodiscard]] bool forced(std::size_t at) const {
    return !tokens_[at].above.empty() || !tokens_[at - 1].beside.empty();
  }

  // Ends the line in front of a token and goes on below.
  void go_on(std::size_t at, std::size_t indent) {
    end_line(tokens_[at - 1], 0);
    for (const Comment& comment : tokens_[at].above) {
      own_line(comment, indent);
    }
    blanks(indent);
  }

  // A demand or a reason stays whole rather than that the line is filled.
  static int rank(const Token& token) {
    constexpr std::array<std::string_view, 2> reasons{"because", "cite"};
    const bool reason = token.kind == TokenKind::word && holds(reasons, token.text);
    return reason ? 2 : token.is("shall") ? 1 : 0;
  }

  // What should not be broken from here on does not fit.
  [[nodiscard]] bool breaks(const Line& line, std::size_t at) const {
    if (!may_break_before(tokens_, at) || (between_ && tokens_[at].is("and"))) {
      return false;
    }
    std::size_t last = at + 1;
    while (last < line.range.last && !forced(last) && tokens_[last - 1].kind != TokenKind::text &&
           !(may_break_before(tokens_, last) && rank(tokens_[last]) >= rank(tokens_[at]))) {
      ++last;
    }
    const std::size_t gap = between(tokens_[at - 1], tokens_[at]).size();
    return column_ + gap + width_of(joined(tokens_, {at, last})) > line.width;
  }

  // Texts that follow each other and do not fit on this line, or have comments between them, stand below each other.
  void begin_texts(const Line& line, std::size_t at) {
    std::size_t last = at + 1;
    while (last < line.range.last && tokens_[last].kind == TokenKind::text) {
      ++last;
    }
    text_column_ = column_;
    stacked_ = !clean(tokens_, {at, last}) || column_ + width_of(joined(tokens_, {at, last})) > line.width;
  }

  // Blank lines and comments in front of a line. Indented comments close to the line before belong to that.
  void above(const Line& line) {
    const Token& token = tokens_[line.range.first];
    std::size_t first = 0;
    while (line.indent == 0 && !out_.empty() && first < token.above.size() && token.above[first].indented &&
           !token.above[first].blank_above) {
      own_line(token.above[first], clause_indent);
      ++first;
    }
    bool blank = line.blank == Blank::one;
    for (std::size_t at = first; at < token.above.size(); ++at) {
      separate(blank || (line.blank != Blank::none && token.above[at].blank_above));
      own_line(token.above[at], line.indent);
      blank = false;
    }
    separate(blank || (line.blank != Blank::none && token.blank_above));
  }
  void separate(bool wanted) {
    if (wanted && !out_.empty() && !out_.ends_with("\n\n")) {
      new_line();
    }
  }
};

}  // namespace

std::string print_lines(const Tokens& tokens, const std::vector<Line>& lines) {
  const auto rows = rows_of(tokens, lines);
  Page page(tokens);
  for (std::size_t index = 0; index < lines.size(); ++index) {
    const auto found = rows.find(index);
    if (found != rows.end()) {
      page.row(lines[index], found->second);
    } else {
      page.flow(lines[index]);
    }
  }
  page.end();
  return page.take();
}

}  // namespace plumbrule::syntax
