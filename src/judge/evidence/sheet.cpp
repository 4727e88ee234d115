#include "judge/evidence/sheet.hpp"

#include <algorithm>
#include <unordered_map>

#include "base/diagnose/quote.hpp"
#include "judge/evidence/heading.hpp"

namespace plumbrule::evidence {
namespace {

using diagnose::Code;
using source::Span;

}  // namespace

/// Slot 0 is the submittal.
struct Headings::Plan {
  // A node of the submittals to come. Entries of a map that say which result it is (`fixed`) are the same for all rows.
  struct Slot {
    Node::Kind kind = Node::Kind::scalar;
    Name name;
    std::vector<Entry> fixed;
    std::vector<std::uint32_t> children;
    std::optional<std::uint32_t> column;  // of a scalar
    bool direct = false;                  // stands for its map if it is alone in it
  };

  std::vector<Slot> slots;
  std::vector<std::string> units;   // by column
  std::vector<Span> heading_spans;  // by column
};

namespace {

using Plan = Headings::Plan;

Node constant(const Name& name) {
  Node out;
  out.kind = Node::Kind::scalar;
  out.text = name.text;
  out.span = name.span;
  return out;
}

void add_fixed(const Heading& heading, Headings::Plan::Slot& slot) {
  const Span& span = heading.measure.span;
  slot.fixed.push_back({"measure", span, constant(heading.measure)});
  const auto add = [&](const char* key, const std::vector<std::pair<Name, Name>>& conditions) {
    if (conditions.empty()) {
      return;
    }
    Node map;
    map.kind = Node::Kind::map;
    for (const auto& [name, value] : conditions) {
      map.entries.push_back({name.text, name.span, constant(value)});
      map.span = source::cover(map.span, source::cover(name.span, value.span));
    }
    slot.fixed.push_back({key, map.span, std::move(map)});
  };
  add("under", heading.under);
  add("at", heading.at);
}

class Planner {
 public:
  explicit Planner(diagnose::Diagnostics& diagnostics) : diagnostics_(diagnostics) {
    plan_.slots.emplace_back();
    plan_.slots.front().kind = Node::Kind::map;
  }

  bool add(const Heading& heading, const Cell& cell, std::uint32_t column) {
    std::uint32_t at = 0;
    for (std::size_t step = 0; step < heading.path.size(); ++step) {
      const bool last = step + 1 == heading.path.size();
      const Node::Kind kind = last                          ? Node::Kind::scalar
                              : heading.path[step + 1].item ? Node::Kind::list
                                                            : Node::Kind::map;
      const auto [found, is_new] = child(at, heading.path[step].name, kind);
      if (!is_new && (plan_.slots[found].kind != kind || plan_.slots[found].column)) {
        return twice(heading.path[step].name, cell, found);
      }
      at = found;
      if (is_new && heading.path[step].item && !heading.measure.text.empty() && step == 1) {
        add_fixed(heading, plan_.slots[at]);
      }
    }
    plan_.slots[at].column = column;
    plan_.slots[at].direct = heading.direct;
    plan_.units.push_back(heading.unit);
    plan_.heading_spans.push_back(cell.span);
    return true;
  }

  Plan take() { return std::move(plan_); }

 private:
  Plan plan_;
  diagnose::Diagnostics& diagnostics_;
  std::unordered_map<std::string, std::uint32_t> known_;  // by parent and name

  std::pair<std::uint32_t, bool> child(std::uint32_t parent, const Name& name, Node::Kind kind) {
    // A clock is a list of two, in this order, whichever column comes first.
    if (name.text == "end" && plan_.slots[parent].kind == Node::Kind::list) {
      static_cast<void>(make(parent, {"begin", name.span}, kind));
    }
    return make(parent, name, kind);
  }

  std::pair<std::uint32_t, bool> make(std::uint32_t parent, const Name& name, Node::Kind kind) {
    const auto next = static_cast<std::uint32_t>(plan_.slots.size());
    const auto [found, is_new] = known_.try_emplace(std::to_string(parent) + " " + name.text, next);
    if (is_new) {
      plan_.slots.emplace_back();
      plan_.slots.back().kind = kind;
      plan_.slots.back().name = name;
      plan_.slots[parent].children.push_back(next);
    }
    return {found->second, is_new};
  }

  bool twice(const Name& name, const Cell& cell, std::uint32_t first) {
    diagnostics_
        .error(Code::submittal_duplicate_key, cell.span,
               "found a second heading for the same, " + diagnose::quoted(cell.text),
               "keep one of them; a second result under the same conditions is marked with `result 2`")
        .secondary.push_back({plan_.slots[first].name.span, "the first one"});
    return name.text.empty();
  }
};

// Fills the slots with the cells of one row.
class Filler {
 public:
  Filler(const Plan& plan, const std::vector<Cell>& cells, diagnose::Diagnostics& diagnostics)
      : plan_(plan), cells_(cells), diagnostics_(diagnostics) {}

  // False if nothing of it is stated.
  bool fill(const Headings::Plan::Slot& slot, Node& out) {
    if (slot.kind == Node::Kind::scalar) {
      return scalar(slot, out);
    }
    if (slot.children.size() == 1 && plan_.slots[slot.children.front()].direct) {
      return scalar(plan_.slots[slot.children.front()], out);
    }
    out.kind = slot.kind;
    if (slot.kind == Node::Kind::map) {
      out.entries.reserve(slot.children.size() + slot.fixed.size() + 1);
    }
    for (const std::uint32_t id : slot.children) {
      const Headings::Plan::Slot& child = plan_.slots[id];
      Node value;
      if (!fill(child, value)) {
        continue;
      }
      out.span = source::cover(out.span, value.span);
      if (slot.kind == Node::Kind::list) {
        out.items.push_back(std::move(value));
      } else {
        out.entries.push_back({child.name.text, child.name.span, std::move(value)});
      }
    }
    const bool stated = !out.items.empty() || !out.entries.empty();
    if (stated && !slot.fixed.empty()) {
      out.entries.insert(out.entries.begin(), slot.fixed.begin(), slot.fixed.end());
    }
    return stated;
  }

  [[nodiscard]] bool good() const { return good_; }

 private:
  const Plan& plan_;
  const std::vector<Cell>& cells_;
  diagnose::Diagnostics& diagnostics_;
  bool good_ = true;

  bool scalar(const Headings::Plan::Slot& slot, Node& out) {
    if (!slot.column || !cells_[*slot.column].given) {
      return false;
    }
    const Cell& cell = cells_[*slot.column];
    auto text = with_unit(cell.text, plan_.units[*slot.column]);
    if (!text) {
      good_ = false;
      diagnostics_
          .error(Code::submittal_unit, cell.span,
                 "found " + diagnose::quoted(cell.text) + ", a unit under a heading that has one",
                 "write the number alone, in the unit of the heading, or take the unit out of the heading")
          .secondary.push_back({plan_.heading_spans[*slot.column], "the heading"});
    }
    out.kind = Node::Kind::scalar;
    out.text = std::move(text).value_or(cell.text);
    out.span = cell.span;
    return true;
  }
};

bool right_number(const Plan& plan, const std::vector<Cell>& cells, const Span& row,
                  diagnose::Diagnostics& diagnostics) {
  const std::size_t wanted = plan.units.size();
  if (cells.size() == wanted) {
    return true;
  }
  const bool more = cells.size() > wanted;
  diagnostics.error(
      Code::submittal_sheet, more ? cells[wanted].span : row,
      "found " + std::to_string(cells.size()) + (cells.size() == 1 ? " cell" : " cells") + " in a record, expected " +
          std::to_string(wanted) + ", one for each heading",
      more ? "a cell that holds a comma goes in quotes (`\"`)" : "write a comma for each cell that is left empty");
  return false;
}

}  // namespace

std::size_t Headings::size() const { return plan_->units.size(); }

std::optional<Headings> read_headings(const std::vector<Cell>& cells, diagnose::Diagnostics& diagnostics) {
  Planner planner(diagnostics);
  quantity::UnitTable units;
  bool good = true;
  std::uint32_t column = 0;
  for (const Cell& cell : cells) {
    const auto heading = read_heading(cell, units, diagnostics);
    good = heading && planner.add(*heading, cell, column) && good;
    ++column;
  }
  return good ? std::optional(Headings(std::make_shared<const Plan>(planner.take()))) : std::nullopt;
}

std::optional<Node> submittal_of(const Headings& headings, const std::vector<Cell>& cells, const Span& row,
                                 diagnose::Diagnostics& diagnostics) {
  const Plan& plan = headings.plan();
  if (!right_number(plan, cells, row, diagnostics)) {
    return std::nullopt;
  }
  Node out;
  Filler filler(plan, cells, diagnostics);
  if (!filler.fill(plan.slots.front(), out)) {
    diagnostics.error(Code::submittal_sheet, row, "found a record in which nothing is stated", "take it out");
    return std::nullopt;
  }
  out.span = row;
  out.entries.insert(out.entries.begin(), {"submittal", row, constant({"1", row})});
  return filler.good() ? std::optional(std::move(out)) : std::nullopt;
}

bool is_flat(const Node& map) {
  return map.kind == Node::Kind::map && std::all_of(map.entries.begin(), map.entries.end(), [](const Entry& entry) {
           return entry.key != "submittal" &&
                  (entry.value.kind == Node::Kind::scalar || entry.value.kind == Node::Kind::empty);
         });
}

FlatRecord flat_record(const Node& flat) {
  FlatRecord out;
  for (const Entry& entry : flat.entries) {
    const Node& value = entry.value;
    const bool given = value.kind == Node::Kind::scalar && value.text.find_first_not_of(" \t") != std::string::npos;
    out.headings.push_back({entry.key, entry.key_span, true});
    out.cells.push_back({value.text, value.span, given});
  }
  return out;
}

std::optional<Node> submittal_of(const Node& flat, diagnose::Diagnostics& diagnostics) {
  const FlatRecord record = flat_record(flat);
  const auto headings = read_headings(record.headings, diagnostics);
  return headings ? submittal_of(*headings, record.cells, flat.span, diagnostics) : std::nullopt;
}

}  // namespace plumbrule::evidence
