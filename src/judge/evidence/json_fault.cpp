#include "judge/evidence/json_fault.hpp"

#include <cstdint>
#include <vector>

#include "base/diagnose/quote.hpp"

namespace plumbrule::evidence {
namespace {

constexpr std::string_view texts_in_quotes = "texts stand in quotes, as in `\"text\"`; `null` stands for nothing";

bool is_digit(char byte) { return byte >= '0' && byte <= '9'; }
bool is_hex(char byte) { return is_digit(byte) || (byte >= 'a' && byte <= 'f') || (byte >= 'A' && byte <= 'F'); }
bool is_json_blank(char byte) { return byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r'; }

// Follows the text value by value; `open_` holds the places of the brackets that are open.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}
  std::optional<JsonFault> run();

 private:
  enum class Wants : std::uint8_t { value, value_or_end, name, name_or_end, comma_or_end, end_of_text };

  std::string_view text_;
  std::size_t at_ = 0;
  std::size_t comma_ = 0;
  Wants wants_ = Wants::value;
  std::vector<std::size_t> open_;
  std::optional<JsonFault> fault_;

  [[nodiscard]] char here() const { return at_ < text_.size() ? text_[at_] : '\0'; }
  [[nodiscard]] bool in_map() const { return text_[open_.back()] == '{'; }
  bool fault(std::size_t begin, std::size_t end, std::string message, std::string_view help);
  void skip_blanks();
  void value_done() { wants_ = open_.empty() ? Wants::end_of_text : Wants::comma_or_end; }
  [[nodiscard]] std::size_t word_end() const;
  void open();
  void close();
  bool value();
  bool name();
  bool comma_or_end();
  bool text();
  bool escape(std::size_t begin);
  [[nodiscard]] std::optional<unsigned> hex(std::size_t from) const;
  bool number();
  std::size_t digits();
  bool word();
  bool no_value();
  bool ended();
};

bool Scanner::fault(std::size_t begin, std::size_t end, std::string message, std::string_view help) {
  fault_ = JsonFault{begin, std::min(end, text_.size()), std::move(message), std::string(help)};
  return false;
}

void Scanner::skip_blanks() {
  while (at_ < text_.size() && is_json_blank(text_[at_])) {
    ++at_;
  }
}

std::size_t Scanner::word_end() const { return std::min(text_.find_first_of(" \t\r\n,:[]{}\"", at_), text_.size()); }

void Scanner::open() {
  open_.push_back(at_);
  wants_ = here() == '{' ? Wants::name_or_end : Wants::value_or_end;
  ++at_;
}

void Scanner::close() {
  open_.pop_back();
  ++at_;
  value_done();
}

bool Scanner::ended() {
  if (open_.empty()) {
    return fault(at_, at_, "found nothing, expected `{`", "begin with `{`");
  }
  const std::size_t bracket = open_.back();
  return in_map() ? fault(bracket, bracket + 1, "found entries in braces that are never closed", "close them with `}`")
                  : fault(bracket, bracket + 1, "found a list that is never closed", "close it with `]`");
}

bool Scanner::no_value() {
  const char byte = here();
  if (byte == '\'') {
    return fault(at_, at_ + 1, "found a single quote",
                 "texts and names stand in quotes of the other kind, as in `\"text\"`");
  }
  if (byte == '/' || byte == '#') {
    return fault(at_, std::min(text_.find('\n', at_), text_.size()), "found a comment, and JSON has none",
                 "take it out, or write the submittal as YAML");
  }
  if ((byte == '}' || byte == ']') && wants_ == Wants::value && !open_.empty() && text_[comma_] == ',') {
    return fault(comma_, comma_ + 1, "found a comma with nothing behind it", "take the comma out");
  }
  if (byte == ',' || byte == ':' || byte == '}' || byte == ']') {
    return fault(at_, at_ + 1, "found `" + std::string(1, byte) + "` where a value should stand",
                 "write a value, or `null` for nothing");
  }
  const std::size_t end = std::max(word_end(), at_ + 1);
  return fault(at_, end, "found " + diagnose::quoted(text_.substr(at_, end - at_)) + ", no value of JSON",
               texts_in_quotes);
}

bool Scanner::word() {
  for (const std::string_view known : {"true", "false", "null"}) {
    if (text_.substr(at_, word_end() - at_) == known) {
      at_ += known.size();
      value_done();
      return true;
    }
  }
  return no_value();
}

std::size_t Scanner::digits() {
  const std::size_t from = at_;
  while (is_digit(here())) {
    ++at_;
  }
  return at_ - from;
}

bool Scanner::number() {
  const std::size_t begin = at_;
  const std::size_t end = word_end();
  at_ += here() == '-' ? 1 : 0;
  const bool zero = here() == '0';
  const std::size_t whole = digits();
  bool good = whole == 1 || (whole > 1 && !zero);
  if (good && here() == '.') {
    ++at_;
    good = digits() > 0;
  }
  if (good && (here() == 'e' || here() == 'E')) {
    ++at_;
    at_ += here() == '+' || here() == '-' ? 1 : 0;
    good = digits() > 0;
  }
  if (!good || at_ != end) {
    return fault(begin, end, "found " + diagnose::quoted(text_.substr(begin, end - begin)) + ", no number of JSON",
                 "write digits, perhaps with a point between them; anything else stands in quotes, as in `\"text\"`");
  }
  value_done();
  return true;
}

std::optional<unsigned> Scanner::hex(std::size_t from) const {
  unsigned out = 0;
  for (std::size_t at = from; at < from + 4; ++at) {
    if (at >= text_.size() || !is_hex(text_[at])) {
      return std::nullopt;
    }
    const unsigned byte = static_cast<unsigned char>(text_[at]);
    out = out * 16U + (is_digit(text_[at]) ? byte - '0' : (byte | 0x20U) - 'a' + 10U);
  }
  return out;
}

// Behind a backslash.
bool Scanner::escape(std::size_t begin) {
  constexpr std::string_view known = "\"\\/bfnrt";
  constexpr std::string_view itself = "write the character itself";
  const auto is_high = [](unsigned code) { return code >= 0xD800U && code < 0xDC00U; };
  const auto is_low = [](unsigned code) { return code >= 0xDC00U && code < 0xE000U; };
  if (here() != 'u') {
    if (known.find(here()) == std::string_view::npos || at_ >= text_.size()) {
      return fault(begin, at_ + 1, "found a backslash before a character that needs none",
                   "write `\\\\` for a backslash");
    }
    ++at_;
    return true;
  }
  const auto code = hex(at_ + 1);
  if (!code) {
    return fault(begin, at_ + 1, "found a character number that is not written in four digits 0 to 9 and a to f",
                 itself);
  }
  at_ += 5;
  if (is_high(*code) && text_.substr(at_).starts_with("\\u")) {
    const auto second = hex(at_ + 2);
    if (second && is_low(*second)) {
      at_ += 6;
      return true;
    }
  }
  return is_high(*code) || is_low(*code)
             ? fault(begin, at_, "found the number of a character that does not exist", itself)
             : true;
}

bool Scanner::text() {
  const std::size_t begin = at_++;
  while (at_ < text_.size()) {
    const std::size_t from = at_;
    const auto byte = static_cast<unsigned char>(text_[at_++]);
    if (byte == '"') {
      return true;
    }
    if (byte == '\n' || byte == '\r') {
      return fault(begin, from, "found a quote that is not closed on its line",
                   "close it with `\"`; a line break inside a text is written `\\n`");
    }
    if (byte < 0x20U) {
      return fault(from, at_, byte == '\t' ? "found a tab inside a text" : "found a control character inside a text",
                   byte == '\t' ? "write `\\t`, or a blank" : "take it out");
    }
    if (byte == '\\' && !escape(from)) {
      return false;
    }
  }
  return fault(begin, begin + 1, "found a quote that is never closed", "close it with `\"` at the end of the text");
}

bool Scanner::value() {
  const char byte = here();
  if (at_ >= text_.size()) {
    return ended();
  }
  if (byte == '{' || byte == '[') {
    open();
    return true;
  }
  if (byte == ']' && wants_ == Wants::value_or_end) {
    close();
    return true;
  }
  if (byte == '"') {
    const bool good = text();
    value_done();
    return good;
  }
  return byte == '-' || is_digit(byte) ? number() : word();
}

bool Scanner::name() {
  if (at_ >= text_.size()) {
    return ended();
  }
  if (here() == '}' && wants_ == Wants::name_or_end) {
    close();
    return true;
  }
  if (here() == '}') {
    return fault(comma_, comma_ + 1, "found a comma with nothing behind it", "take the comma out");
  }
  if (here() != '"') {
    const std::size_t end = std::max(word_end(), at_ + 1);
    return here() == '\'' || here() == '/' || here() == '#'
               ? no_value()
               : fault(at_, end,
                       "found " + diagnose::quoted(text_.substr(at_, end - at_)) + " where a name should stand",
                       "write `\"name\": value`, the name in quotes");
  }
  if (!text()) {
    return false;
  }
  skip_blanks();
  if (here() != ':') {
    return at_ >= text_.size()
               ? ended()
               : fault(at_, at_ + 1, "found a name without a colon behind it", "write `\"name\": value`");
  }
  comma_ = at_++;
  wants_ = Wants::value;
  return true;
}

bool Scanner::comma_or_end() {
  if (at_ >= text_.size()) {
    return ended();
  }
  if (here() == (in_map() ? '}' : ']')) {
    close();
    return true;
  }
  if (here() == ',') {
    comma_ = at_++;
    wants_ = in_map() ? Wants::name : Wants::value;
    return true;
  }
  if (here() == '/' || here() == '#') {
    return no_value();
  }
  const std::size_t end = std::max(word_end(), at_ + 1);
  return fault(at_, end, "found " + diagnose::quoted(text_.substr(at_, end - at_)) + " behind a value",
               in_map() ? "put a comma between the entries, or close them with `}`"
                        : "put a comma between the values, or close the list with `]`");
}

std::optional<JsonFault> Scanner::run() {
  bool good = true;
  while (good) {
    skip_blanks();
    if (wants_ == Wants::end_of_text) {
      break;
    }
    const bool named = wants_ == Wants::name || wants_ == Wants::name_or_end;
    good = named ? name() : wants_ == Wants::comma_or_end ? comma_or_end() : value();
  }
  if (good && at_ < text_.size()) {
    fault(at_, std::max(word_end(), at_ + 1), "found text behind the end of the document",
          "put each submittal in a file of its own, or each record on a line of its own");
  }
  return fault_;
}

}  // namespace

std::optional<JsonFault> json_fault(std::string_view text) { return Scanner(text).run(); }

}  // namespace plumbrule::evidence
