#include "language/check/checker.hpp"

namespace plumbrule::check {
namespace {

using EdgeKind = syntax::TableEdge::Kind;

bool rises(EdgeKind kind) { return kind == EdgeKind::at_most || kind == EdgeKind::below; }

bool leaves_out(EdgeKind kind) { return kind == EdgeKind::below || kind == EdgeKind::above; }

// Whether the second row takes values that the first, which stands before it, leaves.
bool goes_beyond(const Edge& first, const Edge& second) {
  const bool beyond = rises(first.kind) ? second.value > first.value : second.value < first.value;
  return beyond || (second.value == first.value && leaves_out(first.kind) && !leaves_out(second.kind));
}

}  // namespace

void Checker::resolve(const syntax::Table& tree) {
  // Not by its name: another item may have it too, which was reported.
  const auto own = std::find_if(rules_.tables.begin(), rules_.tables.end(),
                                [&](const Table& one) { return one.span == tree.name.span; });
  Table& out = *own;
  out.title = tree.title.value;
  out.provenance = provenance(tree.provenance);
  unit(tree.unit, out.type);
  if (tree.by_unit) {
    out.by_value = true;
    if (unit(*tree.by_unit, out.key)) {
      value_rows(tree, out);
    }
    return;
  }
  out.category = find_kind(names_, tree.category, NameKind::category);
  if (out.category != none) {
    word_rows(tree, out);
  }
}

void Checker::word_rows(const syntax::Table& tree, Table& table) {
  const Category& category = rules_.categories.at(table.category);
  std::vector<Span> seen(category.words.size());
  table.values.assign(category.words.size(), Decimal{});
  bool misspelt = false;
  for (const syntax::TableRow& row : tree.rows) {
    if (row.edge) {
      misspelt = true;
      error(diagnose::Code::table_row, row.edge->span,
            "found an edge in table `" + table.name + "`, which is by category `" + category.name + "`",
            "for a table by value write `by value in` and the unit of its edges");
      continue;
    }
    const std::uint32_t word = find_word(table.category, row.word);
    if (word == none) {
      misspelt = true;
      continue;
    }
    if (seen[word].known()) {
      auto& report = diagnostics_.error(diagnose::Code::table_row, row.span,
                                        "found a second row for `" + row.word.value + "`", "keep one of them");
      report.secondary.push_back({seen[word], "the first one"});
    }
    seen[word] = row.span;
    table.values[word] = row.value;
  }
  table.spans = seen;
  const bool whole = !tree.broken && !misspelt;
  for (std::size_t word = 0; word < seen.size() && whole; ++word) {
    if (!seen[word].known()) {
      error(diagnose::Code::table_gap, tree.name.span,
            "found no row for `" + category.words[word] + "` in table `" + table.name + "`",
            "give every word of category `" + category.name + "` a row");
    }
  }
}

void Checker::value_rows(const syntax::Table& tree, Table& table) {
  bool edges = tree.broken;
  for (const syntax::TableRow& row : tree.rows) {
    edges = edges || row.edge;
    if (!row.edge) {
      otherwise(tree, row, table);
    } else if (edge_in_unit(*row.edge, table) && edge_in_order(row, table)) {
      table.edges.push_back({row.edge->kind, row.edge->quantity.number, row.edge->span});
      table.values.push_back(row.value);
      table.spans.push_back(row.span);
    }
  }
  if (!edges) {
    error(diagnose::Code::table_gap, tree.name.span, "found no row with an edge in table `" + table.name + "`",
          "give it rows such as `at most 1.5" +
              (table.key.unit == 0 ? "" : " " + rules_.units.at(table.key.unit).text) + ": 4`");
  }
}

// The row for all values that no edge takes.
void Checker::otherwise(const syntax::Table& tree, const syntax::TableRow& row, Table& table) {
  if (row.word.value != "otherwise") {
    error(diagnose::Code::table_row, row.span,
          "found a row for `" + row.word.value + "` in table `" + table.name + "`, which is by value",
          "its rows begin with `at most`, `below`, `at least` or `above`, the last one perhaps with `otherwise`");
  } else if (&row != &tree.rows.back()) {
    error(diagnose::Code::table_row, row.span, "found `otherwise` before other rows of table `" + table.name + "`",
          "it takes every value that the others leave: put it last");
  } else {
    table.values.push_back(row.value);
    table.spans.push_back(row.span);
  }
}

// An edge is compared as it is printed: it is not converted.
bool Checker::edge_in_unit(const syntax::TableEdge& edge, const Table& table) {
  Type type;
  if (!unit(edge.quantity.unit, type)) {
    return false;
  }
  const std::string message = "found an edge in " + type_text(type) + " in table `" + table.name +
                              "`, which is by value in " + type_text(table.key);
  if (!quantity::convertible(unit_of(type), unit_of(table.key)) || lacks_percent(type, table.key)) {
    error(diagnose::Code::unit_dimension, edge.quantity.span, message, "write the edge in the unit of the table");
  } else if (type.basis != table.key.basis) {
    error(diagnose::Code::percent_basis, edge.quantity.span, message, "write the edge in the unit of the table");
  } else if (type.unit != table.key.unit) {
    error(diagnose::Code::table_row, edge.quantity.span, message,
          "write the edge in the unit of the table: an edge is not converted, values are");
  } else {
    return true;
  }
  return false;
}

bool Checker::edge_in_order(const syntax::TableRow& row, const Table& table) {
  if (table.edges.empty()) {
    return true;
  }
  const Edge& before = table.edges.back();
  const Edge edge{row.edge->kind, row.edge->quantity.number, row.edge->span};
  const bool rising = rises(before.kind);
  if (rises(edge.kind) == rising && goes_beyond(before, edge)) {
    return true;
  }
  std::string message = "found an edge that takes no value which the rows before it leave";
  std::string help = rising ? "let the edges rise from row to row" : "let the edges fall from row to row";
  if (rises(edge.kind) != rising) {
    message = "found edges that run both ways in table `" + table.name + "`";
    help = "let all rows begin with `at most` or `below`, or all with `at least` or `above`";
  } else if (edge.kind == before.kind && edge.value == before.value) {
    message = "found a second row for the same edge";
    help = "keep one of them";
  }
  auto& report = diagnostics_.error(diagnose::Code::table_row, edge.span, message, help);
  report.secondary.push_back({before.span, "the row before"});
  return false;
}

std::optional<FormulaId> Checker::lookup(const syntax::CallExpr& node, TableId table, const Measure& measure,
                                         const Span& span) {
  const Table& rows = rules_.tables.at(table);
  if (node.arguments.size() != 1) {
    error(diagnose::Code::limit_kind, span,
          "found " + std::to_string(node.arguments.size()) + " arguments for table `" + rows.name + "`, expected one",
          "write the one value by which the table is read");
    return std::nullopt;
  }
  const auto key = formula(node.arguments.front(), measure);
  if (!key || !key_fits(rules_.formulas.at(*key), rows)) {
    return std::nullopt;
  }
  const Type type = rows.type;
  return add({rows.by_value ? FormulaKind::graded : FormulaKind::lookup, table, {}, {*key}, type, span});
}

bool Checker::key_fits(const Formula& key, const Table& table) {
  const std::string message = "found " + type_text(key.type) + " as the key of table `" + table.name + "`";
  if (!table.by_value) {
    const bool fits = key.kind == FormulaKind::reading && key.type.category == table.category;
    if (!fits && table.category != none) {
      error(diagnose::Code::limit_kind, key.span, message,
            "the table is by category `" + rules_.categories.at(table.category).name + "`");
    }
    return fits && table.category != none;
  }
  if (key.type.broken || table.key.broken) {
    return false;
  }
  const std::string help = "the table is by value in " + type_text(table.key);
  if (key.type.is_word()) {
    error(diagnose::Code::limit_kind, key.span, message, help);
  } else if (!quantity::convertible(unit_of(key.type), unit_of(table.key))) {
    error(diagnose::Code::unit_dimension, key.span, message, help);
  } else if (key.type.basis != none && key.type.basis != table.key.basis) {
    error(diagnose::Code::percent_basis, key.span, message, help);
  } else {
    return true;
  }
  return false;
}

}  // namespace plumbrule::check
