#include "language/syntax/builder.hpp"

namespace plumbrule::syntax {

void Builder::vocabulary(const Branch& item) {
  Vocabulary out{name(item.children.at(1)), text(item.children.at(2)), {}};
  for (const Branch& clause : Parts(item.children).subspan(3)) {
    if (clause.kind == Kind::clause_group) {
      provenance(out.provenance, clause);
    }
  }
  out_.items.emplace_back(std::move(out));
}

void Builder::category(const Branch& item) {
  out_.items.emplace_back(Category{name(item.children.at(1)), text(item.children.at(2)), words(item.children.at(3))});
}

void Builder::condition(const Branch& item) {
  Condition out{name(item.children.at(1)), text(item.children.at(2)), {}, {}, {}, {}};
  if (item.children.size() > 4) {
    out.within = quantity(item.children[4].children.at(0));
  }
  const Branch& scale = item.children.at(3);
  Parts rest = Parts(scale.children).subspan(1);
  const std::string word = phrase(scale.children.at(0));
  if (word == "in") {
    out.scale = Condition::Scale::unit;
    out.unit = unit(rest);
  } else if (word == "as") {
    out.scale = Condition::Scale::sieve;
  } else {
    out.scale = Condition::Scale::category;
    out.category = name(rest.front());
  }
  out_.items.emplace_back(std::move(out));
}

void Builder::basis(const Branch& item) {
  out_.items.emplace_back(Basis{name(item.children.at(1)), text(item.children.at(2))});
}

Reading Builder::reading(const Branch& branch) const {
  Reading out{name(branch.children.at(0)), std::nullopt, {}};
  if (branch.children.size() > 1) {
    const Branch& scale = branch.children[1];
    Parts rest = Parts(scale.children).subspan(1);
    if (phrase(scale.children.at(0)) == "in") {
      out.unit = unit(rest);
    } else {
      out.category = name(rest.front());
    }
  }
  return out;
}

Refusal Builder::refusal(const Branch& clause) {
  Refusal out;
  out.span = clause.span;
  const Branch& comparison = clause.children.at(1);
  out.left = expression(comparison.children.at(0));
  out.right = expression(comparison.children.at(2));
  const std::string_view sign = written(comparison.children.at(1));
  out.comparison = sign == "<"    ? Comparison::less
                   : sign == "<=" ? Comparison::less_or_equal
                   : sign == ">"  ? Comparison::greater
                   : sign == ">=" ? Comparison::greater_or_equal
                                  : Comparison::equal;
  out.because = text(clause.children.at(2).children.at(1));
  return out;
}

void Builder::measure_clause(Measure& out, const Branch& clause) {
  const std::string word = phrase(clause.children.at(0));
  Parts rest = Parts(clause.children).subspan(1);
  if (word == "in") {
    if (free_slot(out.unit.has_value(), clause)) {
      out.unit = unit(rest);
    }
  } else if (word == "among") {
    once(out.category, clause);
  } else if (word == "as") {
    out.text = true;
  } else if (word == "reported") {
    if (free_slot(out.reported.has_value(), clause)) {
      out.reported = quantity(rest.front());
    }
  } else if (word == "under") {
    if (free_slot(!out.conditions.empty(), clause)) {
      for (const Branch& condition : rest) {
        out.conditions.push_back(name(condition));
      }
    }
  } else if (word == "method") {
    once(out.method, clause);
  } else if (word == "from") {
    if (free_slot(!out.readings.empty(), clause)) {
      for (const Branch& part : rest) {
        out.readings.push_back(reading(part));
      }
    }
  } else if (word == "computed") {
    if (free_slot(out.computed.has_value(), clause)) {
      out.computed = expression(rest.front());
    }
  } else if (word == "refused") {
    out.refusals.push_back(refusal(clause));
  } else if (word == "repeatability") {
    if (free_slot(out.repeatability.has_value(), clause)) {
      out.repeatability = quantity(rest.front());
    }
  } else if (word == "held") {
    out.held.push_back({name(rest[0]), quantity(rest[1]), quantity(rest[2].children.at(0)), clause.span});
  } else {
    provenance(out.provenance, clause);
  }
}

void Builder::measure(const Branch& item) {
  Measure out;
  out.name = name(item.children.at(1));
  out.title = text(item.children.at(2));
  for (const Branch& clause : Parts(item.children).subspan(3)) {
    if (clause.kind == Kind::broken) {
      out.broken = true;
    } else {
      measure_clause(out, clause);
    }
  }
  out_.items.emplace_back(std::move(out));
}

TableRow Builder::table_row(const Branch& row) {
  TableRow out;
  out.span = row.span;
  out.value = number(row.children.back());
  const Branch& first = row.children.at(0);
  if (first.kind == Kind::name) {
    out.word = name(first);
    return out;
  }
  using Edge = TableEdge::Kind;
  const std::string choice = phrase(first);
  const Edge kind = choice == "at most"    ? Edge::at_most
                    : choice == "below"    ? Edge::below
                    : choice == "at least" ? Edge::at_least
                                           : Edge::above;
  const Branch& bound = row.children.at(1);
  out.edge = TableEdge{kind, quantity(bound), source::cover(first.span, bound.span)};
  return out;
}

void Builder::table(const Branch& item) {
  Table out;
  out.name = name(item.children.at(1));
  for (const Branch& part : Parts(item.children).subspan(2)) {
    if (part.kind == Kind::texts) {
      out.title = text(part);
    } else if (part.kind == Kind::broken) {
      out.broken = true;
    } else if (part.kind == Kind::row) {
      out.rows.push_back(table_row(part));
    } else if (const std::string word = phrase(part.children.at(0)); word == "by") {
      Parts rest = Parts(part.children).subspan(1);
      if (rest.front().kind == Kind::name) {
        out.category = name(rest.front());
      } else {
        out.by_unit = unit(rest);
      }
    } else if (word == "in") {
      Parts rest = Parts(part.children).subspan(1);
      out.unit = unit(rest);
    } else {
      provenance(out.provenance, part);
    }
  }
  out_.items.emplace_back(std::move(out));
}

GradingRow Builder::grading_row(const Branch& row) {
  GradingRow out;
  out.span = row.span;
  out.sieve = quantity(row.children.at(0));
  if (row.children.size() > 1 && row.children[1].kind == Kind::quantity) {
    out.low = quantity(row.children[1]);
    const bool range = row.children.size() > 2 && row.children[2].kind == Kind::quantity;
    out.high = range ? quantity(row.children[2]) : *out.low;
  }
  for (const Branch& part : row.children) {
    if (part.kind == Kind::within) {
      (phrase(part.children.at(0)) == "stockpile" ? out.stockpile : out.job_mix) = quantity(part.children.at(1));
    }
  }
  return out;
}

void Builder::grading(const Branch& item) {
  Grading out;
  out.name = name(item.children.at(1));
  out.title = text(item.children.at(2));
  for (const Branch& part : Parts(item.children).subspan(3)) {
    if (part.kind == Kind::broken) {
      out.broken = true;
    } else if (part.kind == Kind::row) {
      out.rows.push_back(grading_row(part));
    } else if (const std::string word = phrase(part.children.at(0)); word == "cite") {
      once(out.cite, part);
    } else if (word == "ends") {
      if (free_slot(out.ends.has_value(), part)) {
        out.ends = quantity(part.children.at(1));
      }
    } else {
      provenance(out.provenance, part);
    }
  }
  out_.items.emplace_back(std::move(out));
}

}  // namespace plumbrule::syntax
