#include "tree_dump.hpp"

namespace plumbrule::test {
namespace {

using namespace syntax;

// Every part is written in brackets, so that nothing can run into its neighbour.
class Dump {
 public:
  template <typename... Parts>
  void parts(const Parts&... each) {
    out_ += '(';
    (one(each), ...);
    out_ += ")\n";
  }
  std::string take() { return std::move(out_); }

 private:
  std::string out_;

  template <typename Value>
  void one(const std::vector<Value>& list) {
    out_ += '[';
    for (const Value& value : list) {
      one(value);
    }
    out_ += ']';
  }
  template <typename Value>
  void one(const std::optional<Value>& value) {
    out_ += value ? '+' : '-';
    if (value) {
      one(*value);
    }
  }
  template <typename... Values>
  void one(const std::variant<Values...>& value) {
    out_ += std::to_string(value.index());
    std::visit([this](const auto& held) { one(held); }, value);
  }
  template <typename Value>
  requires std::is_enum_v<Value> || std::is_integral_v<Value>
  void one(Value value) { out_ += '{' + std::to_string(static_cast<unsigned>(value)) + '}'; }
  void one(const std::string& text) { out_ += '<' + text + '>'; }
  void one(const quantity::Decimal& number) { one(number.text()); }
  void one(const Text& text) { parts(text.given(), text.value); }
  void one(const WrittenUnit& unit) { parts(unit.text, unit.basis); }
  void one(const Quantity& amount) {
    parts(amount.sieve, amount.unit);
    if (amount.sieve.empty()) {
      one(amount.number);
    }
  }
  void one(const NumberExpr& expr) { one(expr.quantity); }
  void one(const NameExpr& expr) { one(expr.name); }
  void one(const CallExpr& expr) { parts(expr.name, expr.arguments); }
  void one(const BinaryExpr& expr) { parts(expr.op, expr.left, expr.right); }
  void one(const Expr& expr) { one(expr.node); }
  void one(const Provenance& from) { parts(from.source, from.status, from.status_note, from.note); }
  void one(const Vocabulary& item) { parts(item.name, item.title, item.provenance); }
  void one(const Category& item) { parts(item.name, item.title, item.words); }
  void one(const Condition& item) { parts(item.name, item.title, item.scale, item.unit, item.category, item.within); }
  void one(const Basis& item) { parts(item.name, item.title); }
  void one(const Reading& reading) { parts(reading.name, reading.unit, reading.category); }
  void one(const Refusal& refusal) { parts(refusal.left, refusal.right, refusal.comparison, refusal.because); }
  void one(const Measure& item) {
    parts(item.name, item.title, item.unit, item.category, item.text, item.reported, item.conditions, item.method,
          item.readings, item.computed, item.refusals, item.provenance);
  }
  void one(const TableEdge& edge) { parts(edge.kind, edge.quantity); }
  void one(const TableRow& row) { parts(row.word, row.edge, row.value); }
  void one(const Table& item) {
    parts(item.name, item.title, item.category, item.by_unit, item.unit, item.rows, item.provenance);
  }
  void one(const GradingRow& row) { parts(row.sieve, row.low, row.high, row.stockpile, row.job_mix); }
  void one(const Grading& item) { parts(item.name, item.title, item.rows, item.ends, item.cite, item.provenance); }
  void one(const Comparing& how) { parts(how.measure, how.method, how.place, how.given, how.ties); }
  void one(const Validity& validity) { parts(validity.count, validity.days); }
  void one(const Accepted& accepted) { parts(accepted.code, accepted.because); }
  void one(const Specification& item) {
    parts(item.name, item.title, item.edition, item.effective, item.uses, item.agency, item.comparing, item.staged,
          item.validity, item.accepted, item.provenance);
  }
  void one(const Section& item) { parts(item.number, item.title); }
  void one(const Test& test) { parts(test.category, test.negated, test.words); }
  void one(const ConditionValue& value) { parts(value.name, value.term, value.end, value.value, value.within); }
  void one(const Statistic& statistic) { parts(statistic.kind, statistic.over, statistic.at_least); }
  void one(const Limit& limit) { parts(limit.kind, limit.quantities, limit.words, limit.tolerance); }
  void one(const Assertion& assertion) {
    parts(assertion.measure, assertion.conditions, assertion.statistic, assertion.limit);
  }
  void one(const Exception& exception) { parts(exception.where, exception.limit, exception.cite); }
  void one(const Requirement& item) {
    parts(item.number, item.title, item.where, item.optional, item.severity, item.comparing, item.validity,
          item.accepted, item.exceptions, item.alternatives, item.cite, item.because, item.mend, item.provenance);
  }
  void one(const GivenReading& reading) { parts(reading.name, reading.value); }
  void one(const GivenAmount& amount) { parts(amount.bound, amount.quantity); }
  void one(const Given& given) {
    parts(given.job_mix, given.lot, given.name, given.amounts, given.readings, given.word, given.conditions);
  }
  void one(const Expect& expect) { parts(expect.verdict, expect.value); }
  void one(const Example& item) { parts(item.title, item.target, item.given, item.expect); }
  void one(const Term& item) { parts(item.name, item.title, item.conditions, item.limit); }
  void one(const Change& change) {
    parts(change.kind, change.number, change.title, change.limit, change.requirement, change.because, change.cite);
  }
  void one(const Amendment& item) {
    parts(item.name, item.title, item.specification, item.edition, item.effective, item.changes, item.provenance);
  }
};

}  // namespace

std::string dump(const RuleFile& file) {
  Dump out;
  out.parts(file.items, file.exprs);
  return out.take();
}

}  // namespace plumbrule::test
