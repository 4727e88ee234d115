#include "language/syntax/tidy_tokens.hpp"

#include <algorithm>
#include <optional>

namespace plumbrule::syntax {
namespace {

struct Leaf {
  source::Span span;
  TokenKind kind{};
};

std::optional<TokenKind> leaf_kind(Kind kind) {
  switch (kind) {
    case Kind::name:
      return TokenKind::name;
    case Kind::number:
      return TokenKind::number;
    case Kind::sign:
      return TokenKind::sign;
    case Kind::text:
      return TokenKind::text;
    case Kind::percent:
    case Kind::unit:
    case Kind::integer:
    case Kind::sieve:
    case Kind::edition:
    case Kind::clause:
      return TokenKind::other;
    default:
      return std::nullopt;
  }
}

void collect(const std::vector<Branch>& branches, std::vector<Leaf>& out) {
  for (const Branch& branch : branches) {
    if (const auto kind = leaf_kind(branch.kind)) {
      out.push_back({branch.span, *kind});
    }
    collect(branch.children, out);
  }
}

bool word_byte(char byte) { return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') || byte == '_'; }

// A sieve is one token, though blanks may stand in it: "No.  4".
std::string with_single_blanks(std::string_view text) {
  std::string out;
  for (const char byte : text) {
    if (!is_blank(byte) || out.empty() || out.back() != ' ') {
      out += is_blank(byte) ? ' ' : byte;
    }
  }
  return out;
}

class Scanner {
 public:
  Scanner(std::string_view text, std::vector<Leaf> leaves) : text_(text), leaves_(std::move(leaves)) {}

  std::vector<Token> run() {
    while (tokens_.empty() || tokens_.back().kind != TokenKind::end) {
      Token token;
      gap(token);
      token.begin = static_cast<std::uint32_t>(at_);
      take(token);
      tokens_.push_back(std::move(token));
    }
    return std::move(tokens_);
  }

 private:
  std::string_view text_;
  std::vector<Leaf> leaves_;
  std::vector<Token> tokens_;
  std::size_t at_ = 0;
  std::size_t leaf_ = 0;

  void gap(Token& next) {
    std::size_t line_ends = 0;
    next.new_line = tokens_.empty();
    for (; at_ < text_.size() && (is_blank(text_[at_]) || text_[at_] == '#'); ++at_) {
      if (text_[at_] == '\n') {
        ++line_ends;
        next.new_line = true;
      } else if (text_[at_] == '#') {
        comment(next, line_ends);
        line_ends = 0;
      }
    }
    next.blank_above = line_ends > 1;
  }

  // Stops at the last byte of the comment.
  void comment(Token& next, std::size_t line_ends) {
    const std::size_t end = std::min(text_.find('\n', at_), text_.size());
    std::string_view found = text_.substr(at_, end - at_);
    while (is_blank(found.back())) {
      found.remove_suffix(1);
    }
    if (next.new_line) {
      next.above.push_back({found, line_ends > 1, at_ > 0 && text_[at_ - 1] != '\n'});
    } else {
      tokens_.back().beside = found;
    }
    at_ = end - 1;
  }

  void take(Token& token) {
    if (at_ >= text_.size()) {
      token.kind = TokenKind::end;
      return;
    }
    while (leaf_ < leaves_.size() && leaves_[leaf_].span.end <= at_) {
      ++leaf_;
    }
    std::size_t length = 1;
    if (leaf_ < leaves_.size() && leaves_[leaf_].span.begin == at_) {
      token.kind = leaves_[leaf_].kind;
      length = leaves_[leaf_].span.end - at_;
    } else {
      token.kind = word_byte(text_[at_]) ? TokenKind::word : TokenKind::mark;
      while (token.kind == TokenKind::word && at_ + length < text_.size() && word_byte(text_[at_ + length])) {
        ++length;
      }
    }
    const std::string_view written = text_.substr(at_, length);
    token.text = token.kind == TokenKind::text ? std::string(written) : with_single_blanks(written);
    at_ += length;
  }
};

}  // namespace

std::vector<Token> tokens_of(std::string_view text, const std::vector<Branch>& branches) {
  std::vector<Leaf> leaves;
  collect(branches, leaves);
  std::stable_sort(leaves.begin(), leaves.end(),
                   [](const Leaf& a, const Leaf& b) { return a.span.begin < b.span.begin; });
  return Scanner(text, std::move(leaves)).run();
}

}  // namespace plumbrule::syntax
