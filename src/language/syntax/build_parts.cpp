#include <algorithm>
#include <charconv>
#include <chrono>

#include "base/diagnose/quote.hpp"
#include "language/syntax/builder.hpp"

namespace plumbrule::syntax {

std::string Builder::phrase(const Branch& branch) const {
  std::string out;
  bool comment = false;  // a gap may hold comments
  for (const char byte : written(branch)) {
    comment = byte != '\n' && (comment || byte == '#');
    const bool blank = comment || byte == ' ' || (byte >= '\t' && byte <= '\r');
    if (!blank) {
      out.push_back(byte);
    } else if (!out.empty() && out.back() != ' ') {
      out.push_back(' ');
    }
  }
  return out;
}

Text Builder::name(const Branch& branch) const { return {std::string(written(branch)), branch.span}; }

Text Builder::text(const Branch& branch) const {
  if (branch.kind != Kind::texts) {
    const std::string_view quoted = written(branch);
    return {std::string(quoted.substr(1, quoted.size() - 2)), branch.span};
  }
  Text out{{}, branch.span};
  for (const Branch& part : branch.children) {
    out.value += out.value.empty() ? "" : " ";
    out.value += text(part).value;
  }
  return out;
}

std::vector<Text> Builder::words(const Branch& branch) const {
  std::vector<Text> out;
  for (const Branch& word : branch.children) {
    out.push_back(name(word));
  }
  return out;
}

quantity::Decimal Builder::number(const Branch& branch) {
  const auto value = quantity::Decimal::parse(written(branch));
  if (!value) {
    diagnostics_.error(diagnose::Code::syntax_number, branch.span,
                       "found " + diagnose::quoted(written(branch)) + ", a number of more than " +
                           std::to_string(quantity::most_digits) + " digits",
                       "write the number with the digits that the document prints");
    return 1;  // a value that causes no follow-on errors
  }
  return *value;
}

std::uint32_t Builder::integer(const Branch& branch) {
  std::uint32_t value = 0;
  const std::string_view digits = written(branch);
  const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (read.ec != std::errc() || value == 0 || value > 1000) {
    diagnostics_.error(diagnose::Code::syntax_number, branch.span,
                       "found " + diagnose::quoted(digits) + ", expected a count from 1 to 1000",
                       "write a whole number from 1 to 1000");
    return 1;
  }
  return value;
}

WrittenUnit Builder::unit(std::span<const Branch>& rest) const {
  WrittenUnit out;
  if (rest.empty() || (rest.front().kind != Kind::percent && rest.front().kind != Kind::unit)) {
    return out;
  }
  out.text = written(rest.front());
  out.span = rest.front().span;
  rest = rest.subspan(1);
  if (!rest.empty() && rest.front().kind == Kind::basis_of && !rest.front().children.empty()) {
    out.basis = name(rest.front().children.front());
    out.span = source::cover(out.span, out.basis.span);
    rest = rest.subspan(1);
  }
  return out;
}

Quantity Builder::quantity(const Branch& branch) {
  Quantity out;
  out.span = branch.span;
  if (branch.kind == Kind::sieve) {
    out.sieve = phrase(branch);
    return out;
  }
  Parts rest = branch.children;
  out.number = number(rest.front());
  rest = rest.subspan(1);
  out.unit = unit(rest);
  return out;
}

std::variant<Quantity, Text> Builder::amount_or_word(const Branch& branch) {
  if (branch.kind == Kind::name) {
    return name(branch);
  }
  return quantity(branch);
}

ConditionValue Builder::condition_value(const Branch& branch) {
  ConditionValue out;
  out.span = branch.span;
  if (branch.kind == Kind::name) {
    out.name = name(branch);
    out.term = true;
    return out;
  }
  out.name = name(branch.children.at(0));
  for (const Branch& part : Parts(branch.children).subspan(1)) {
    if (part.kind == Kind::choice) {
      out.end = phrase(part) == "at most" ? ConditionEnd::at_most : ConditionEnd::at_least;
    } else if (part.kind == Kind::within) {
      out.within = quantity(part.children.at(0));
    } else {
      out.value = amount_or_word(part);
    }
  }
  return out;
}

std::vector<ConditionValue> Builder::conditions(const Branch& branch) {
  std::vector<ConditionValue> out;
  for (const Branch& value : branch.children) {
    out.push_back(condition_value(value));
  }
  return out;
}

ExprId Builder::add(Expr expr) {
  out_.exprs.push_back(std::move(expr));
  return static_cast<ExprId>(out_.exprs.size() - 1);
}

// "a - b + c" reads from the left: (a - b) + c.
ExprId Builder::fold(const Branch& branch) {
  ExprId left = expression(branch.children.at(0));
  if (branch.children.size() > 2 * 64 + 1) {
    diagnostics_.error(diagnose::Code::syntax_depth, branch.span, "found a formula of more than 64 signs",
                       "split the formula into measures of its own");
    return left;
  }
  for (std::size_t at = 1; at + 1 < branch.children.size(); at += 2) {
    const char sign = written(branch.children[at]).front();
    const Operator op = sign == '+'   ? Operator::add
                        : sign == '-' ? Operator::subtract
                        : sign == '*' ? Operator::multiply
                                      : Operator::divide;
    const ExprId right = expression(branch.children[at + 1]);
    const Span span = source::cover(out_.exprs[left].span, out_.exprs[right].span);
    left = add({BinaryExpr{op, left, right}, span});
  }
  return left;
}

ExprId Builder::expression(const Branch& branch) {
  switch (branch.kind) {
    case Kind::sum:
    case Kind::product:
      return fold(branch);
    case Kind::bracketed: {
      const ExprId inner = expression(branch.children.at(0));
      out_.exprs[inner].span = branch.span;
      return inner;
    }
    case Kind::call: {
      CallExpr call{name(branch.children.at(0)), {}};
      for (std::size_t at = 1; at < branch.children.size(); ++at) {
        call.arguments.push_back(expression(branch.children[at]));
      }
      return add({std::move(call), branch.span});
    }
    case Kind::quantity:
      return add({NumberExpr{quantity(branch)}, branch.span});
    default:
      return add({NameExpr{name(branch)}, branch.span});
  }
}

// "2026-13-01" has the form of a date but is none.
void Builder::calendar(const Branch& mark) {
  const std::string_view text = written(mark);
  const auto number = [&](std::size_t from) {
    return static_cast<unsigned>(text[from] - '0') * 10 + static_cast<unsigned>(text[from + 1] - '0');
  };
  const std::chrono::year year{static_cast<int>(number(0) * 100 + number(2))};
  const std::chrono::month month{text.size() > 4 ? number(5) : 1U};
  const std::chrono::day day{text.size() > 7 ? number(8) : 1U};
  if (!std::chrono::year_month_day(year, month, day).ok()) {
    diagnostics_.error(diagnose::Code::syntax_number, mark.span,
                       "found " + diagnose::quoted(text) + ", no date of the calendar",
                       "a date, a month or a year: `2026-03-01`, `2020-05`, `2010`");
  }
}

Limit Builder::limit(const Branch& branch) {
  Limit out;
  out.span = branch.span;
  const Branch& first = branch.children.at(0);
  if (first.kind == Kind::name) {
    out.kind = LimitKind::words;
    out.words = {name(first)};
    return out;
  }
  const std::string choice = phrase(first);
  out.kind = choice == "at most"    ? LimitKind::at_most
             : choice == "at least" ? LimitKind::at_least
             : choice == "between"  ? LimitKind::between
             : choice == "one of"   ? LimitKind::words
             : choice == "within"   ? LimitKind::tolerance
                                    : LimitKind::grading;
  for (const Branch& part : Parts(branch.children).subspan(1)) {
    if (part.kind == Kind::quantity) {
      out.quantities.push_back(quantity(part));
    } else if (part.kind == Kind::words) {
      out.words = words(part);
    } else if (part.kind == Kind::name) {
      out.words.push_back(name(part));
    } else if (part.kind == Kind::within) {
      const bool stockpile = phrase(part.children.at(0)) == "stockpile";
      out.tolerance = stockpile ? ToleranceKind::stockpile : ToleranceKind::job_mix;
    }
  }
  return out;
}

Statistic Builder::statistic(const Branch& branch) {
  Statistic out;
  out.span = branch.span;
  const std::string choice = phrase(branch.children.at(0));
  out.kind = choice == "mean"       ? StatisticKind::mean
             : choice == "each"     ? StatisticKind::each
             : choice == "least"    ? StatisticKind::least
             : choice == "greatest" ? StatisticKind::greatest
             : choice == "range"    ? StatisticKind::range
                                    : StatisticKind::standard_deviation;
  for (const Branch& part : Parts(branch.children).subspan(1)) {
    if (part.kind == Kind::integer) {
      out.at_least = integer(part);
    } else {
      out.over = phrase(part).starts_with("in ") ? Over::results_of_lot : Over::results;
    }
  }
  return out;
}

Validity Builder::validity(const Branch& clause) {
  return {integer(clause.children.at(1)), phrase(clause.children.at(2)) == "days", clause.span};
}

Accepted Builder::accepted(const Branch& clause) const {
  return {name(clause.children.at(1)), text(clause.children.at(2).children.at(1))};
}

Assertion Builder::assertion(const Branch& branch) {
  Assertion out;
  out.span = branch.span;
  for (const Branch& part : branch.children) {
    switch (part.kind) {
      case Kind::name:
        out.measure = name(part);
        break;
      case Kind::conditions:
        out.conditions = conditions(part);
        break;
      case Kind::statistic:
        out.statistic = statistic(part);
        break;
      default:
        out.limit = limit(part);
    }
  }
  return out;
}

Comparing Builder::comparing(std::span<const Branch> parts) {
  Comparing out;
  for (const Branch& part : parts) {
    out.span = source::cover(out.span, part.span);
    const std::string choice = part.kind == Kind::quantity || part.kind == Kind::name ? "" : phrase(part);
    if (part.kind == Kind::name) {
      out.measure = name(part);
    } else if (part.kind == Kind::quantity) {
      out.place = Comparing::Place::given;
      out.given = quantity(part);
    } else if (choice == "rounding") {
      out.method = Comparing::Method::rounding;
    } else if (choice == "reporting place") {
      out.place = Comparing::Place::reporting;
    } else if (choice == "up") {
      out.ties = quantity::Ties::up;
    }
  }
  return out;
}

bool Builder::free_slot(bool taken, const Branch& clause) {
  if (taken) {
    diagnostics_.error(diagnose::Code::clause_duplicate, clause.span,
                       "found a second `" + phrase(clause.children.at(0)) + "` clause in this item",
                       "keep one of them");
  }
  return !taken;
}

void Builder::once(Text& slot, const Branch& clause, std::size_t part) {
  if (free_slot(slot.given(), clause)) {
    const Branch& value = clause.children.at(part);
    slot = value.kind == Kind::texts || value.kind == Kind::text ? text(value) : name(value);
  }
}

bool Builder::provenance(Provenance& out, const Branch& clause) {
  const std::string word = phrase(clause.children.at(0));
  if (word == "source") {
    once(out.source, clause);
  } else if (word == "note") {
    once(out.note, clause);
  } else if (word == "status") {
    once(out.status, clause);
    if (clause.children.size() > 2) {
      out.status_note = text(clause.children[2]);
    }
  } else {
    return false;
  }
  return true;
}

}  // namespace plumbrule::syntax
