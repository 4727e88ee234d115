#include "base/quantity/unit_text.hpp"

#include <array>
#include <cstdlib>
#include <utility>

#include "base/quantity/symbols.hpp"

namespace plumbrule::quantity {

namespace {

// One spelling inside: '.' for a product, digits for powers.
std::string one_spelling(std::string_view text) {
  constexpr std::array<std::pair<std::string_view, char>, 4> spellings = {{
      {"\xC2\xB7", '.'},      // middle dot
      {"\xE2\x8B\x85", '.'},  // dot operator
      {"\xC2\xB2", '2'},      // superscripts
      {"\xC2\xB3", '3'},
  }};
  std::string spelled(text);
  for (const auto& [written, meant] : spellings) {
    for (std::size_t at = spelled.find(written); at != std::string::npos; at = spelled.find(written, at)) {
      spelled.replace(at, written.size(), 1, meant);
    }
  }
  return spelled;
}

struct Powered {
  std::string_view word;
  int power = 1;
};

// "ft2" is ft and 2, "m-2" is m and -2; one digit, not 0.
std::optional<Powered> split_power(std::string_view piece) {
  if (piece.size() < 2 || piece.back() < '1' || piece.back() > '9') {
    return std::nullopt;
  }
  const int digit = piece.back() - '0';
  piece.remove_suffix(1);
  if (!piece.ends_with('-')) {
    return Powered{piece, digit};
  }
  piece.remove_suffix(1);
  return Powered{piece, -digit};
}

class Reading {
 public:
  bool add_product(std::string_view text, int sign) {
    if (add_word(text, sign)) {  // "kg.cm" is one word, though it has a dot
      return true;
    }
    for (std::size_t dot = text.find('.'); dot != std::string_view::npos; dot = text.find('.')) {
      if (!add_piece(text.substr(0, dot), sign)) {
        return false;
      }
      text.remove_prefix(dot + 1);
    }
    return add_piece(text, sign);
  }

  // A temperature point stands alone: twice 10 degC is not 20 degC, and "degC/degC" means nothing.
  [[nodiscard]] std::optional<std::vector<UnitFactor>> result() const {
    const bool alone = words_ == 1 && powers_.begin()->second == 1;
    return has_point_ && !alone ? std::nullopt : factors_of(powers_);
  }

 private:
  Powers powers_;
  int words_ = 0;
  bool has_point_ = false;

  bool add_piece(std::string_view piece, int sign) {
    if (add_word(piece, sign)) {
      return true;
    }
    const std::optional<Powered> powered = split_power(piece);
    return powered && add_word(powered->word, sign * powered->power);
  }

  bool add_word(std::string_view word, int power) {
    if (const auto symbol = find_symbol(word)) {
      powers_[*symbol] += power;
      ++words_;
      has_point_ = has_point_ || !symbols()[*symbol].difference.empty();
      return true;
    }
    const auto meaning = find_alias(word);
    return meaning && add_product(*meaning, power);  // a meaning holds symbols only, so this ends
  }
};

// The factors on one side of the line, with the sign turned so that they are positive.
std::string side(const std::vector<UnitFactor>& factors, int sign, bool write_ones) {
  std::string written;
  for (const UnitFactor& factor : factors) {
    const int power = sign * factor.power;
    if (power <= 0) {
      continue;
    }
    written += written.empty() ? "" : ".";
    written += symbols()[factor.symbol].text;
    written += power > 1 || write_ones ? std::to_string(power) : "";
  }
  return written;
}

// A mass times a length would read back as a torque ("lb.in"); with its ones written ("lb1.in1") it does not.
std::string unmistakable_side(const std::vector<UnitFactor>& factors, int sign) {
  std::string written = side(factors, sign, false);
  return find_alias(written) ? side(factors, sign, true) : written;
}

}  // namespace

std::optional<std::vector<UnitFactor>> factors_of(const Powers& powers) {
  std::vector<UnitFactor> factors;
  for (const auto& [symbol, power] : powers) {
    if (std::abs(power) > largest_power) {
      return std::nullopt;
    }
    if (power != 0) {
      factors.push_back({symbol, static_cast<std::int8_t>(power)});
    }
  }
  return factors;
}

std::optional<std::vector<UnitFactor>> read_factors(std::string_view text) {
  const std::string spelled = one_spelling(text);
  const std::string_view whole = spelled;
  const std::size_t line = whole.find('/');
  const std::string_view above = whole.substr(0, line);
  Reading reading;
  const bool only_below = line != std::string_view::npos && above == "1";
  if (!only_below && !reading.add_product(above, 1)) {
    return std::nullopt;
  }
  // A second '/' is part of no word, so it is refused here.
  if (line != std::string_view::npos && !reading.add_product(whole.substr(line + 1), -1)) {
    return std::nullopt;
  }
  return reading.result();
}

std::string write_factors(const std::vector<UnitFactor>& factors) {
  std::string above = unmistakable_side(factors, 1);
  const std::string below = unmistakable_side(factors, -1);
  if (below.empty()) {
    return above;
  }
  return (above.empty() ? "1" : above) + "/" + below;
}

}  // namespace plumbrule::quantity
