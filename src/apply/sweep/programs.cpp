#include "apply/sweep/programs.hpp"

#include <algorithm>
#include <array>

#include "judge/evidence/written.hpp"

namespace plumbrule::sweep {
namespace {

// The place that stands for a column while a record is bound: no text is behind it.
source::Span place_of(std::uint32_t column) { return {0, 2 * column, 2 * column + 1}; }

std::vector<std::string> parts_of(const std::string& heading) {
  std::vector<std::string> out(1);
  for (const char byte : heading) {
    if (byte == ';') {
      out.emplace_back();
    } else if (byte != ' ' || !out.back().empty()) {
      out.back() += byte;
    }
  }
  for (std::string& part : out) {
    part.resize(part.find_last_not_of(' ') + 1);
  }
  return out;
}

bool is_identity(const std::string& heading) {
  static constexpr std::array<std::string_view, 5> known{"project", "mix", "laboratory", "prepared_by", "note"};
  return std::find(known.begin(), known.end(), heading) != known.end();
}

bool is_day(const std::string& heading) {
  const auto parts = parts_of(heading);
  return (parts.size() == 1 && parts.front() == "date") ||
         (parts.size() > 1 && parts.front() != "job_mix" && parts.front() != "classes" &&
          (parts.back() == "tested" || parts.back() == "made"));
}

// The result of which the column is the reported value, and nothing else stands in it.
std::optional<std::uint32_t> result_at(const evidence::Evidence& evidence, std::uint32_t column) {
  for (std::uint32_t at = 0; at < evidence.results.size(); ++at) {
    const evidence::Result& result = evidence.results[at];
    if (result.reported.span == place_of(column) && result.specimens.empty() && !result.declared &&
        result.series == check::none && result.reported.kind == evidence::Value::Kind::quantity &&
        result.reported.amount.bound == quantity::Bound::exact) {
      return at;
    }
  }
  return std::nullopt;
}

// Whether the second is the first without that one result.
bool is_without(const evidence::Evidence& whole, const evidence::Evidence& part, std::uint32_t left_out) {
  if (part.results.size() + 1 != whole.results.size() || part.targets.size() != whole.targets.size()) {
    return false;
  }
  for (std::size_t at = 0; at < part.results.size(); ++at) {
    const evidence::Result& other = whole.results[at < left_out ? at : at + 1];
    if (part.results[at].measure != other.measure || part.results[at].reported.span != other.reported.span ||
        part.results[at].design != other.design || part.results[at].conditions.size() != other.conditions.size()) {
      return false;
    }
  }
  return true;
}

}  // namespace

Programs::Programs(const std::vector<Against>& against, const evidence::KnownNames& names)
    : against_(&against), names_(&names), deferred_(against.size()) {
  for (const Against& one : *against_) {
    const auto& all = one.plan->requirements;
    days_matter_ = days_matter_ || std::any_of(all.begin(), all.end(), [](const plan::Requirement& requirement) {
                     return requirement.validity.count > 0;
                   });
  }
}

// The evidence for each specification; nothing where anything was remarked.
std::vector<std::optional<evidence::Evidence>> Programs::bound(std::span<const Cell> cells) const {
  std::vector<evidence::Cell> written;
  for (std::uint32_t column = 0; column < cells.size(); ++column) {
    const bool given = cells[column].kind != CellKind::absent;
    written.push_back({std::string(given ? cells[column].text : std::string_view{}), place_of(column), given});
  }
  diagnose::Diagnostics diagnostics;
  const auto document = evidence::submittal_of(*headings_, written, place_of(0), diagnostics);
  std::vector<std::optional<evidence::Evidence>> out(against_->size());
  for (std::size_t at = 0; document && diagnostics.all().empty() && at < against_->size(); ++at) {
    diagnose::Diagnostics remarks;
    auto evidence = evidence::bind(*document, *(*against_)[at].rules, *names_, remarks);
    out[at] = remarks.has_errors() ? std::nullopt : std::move(evidence);
  }
  return out;
}

Programs::Role Programs::role(const std::string& heading, std::uint32_t column, std::span<const Cell> cells,
                              const std::vector<std::optional<evidence::Evidence>>& whole) const {
  if (is_identity(heading)) {
    return Role::identity;
  }
  if (is_day(heading)) {
    return days_matter_ ? Role::literal : Role::day;
  }
  if (cells[column].kind == CellKind::absent) {
    return Role::unknown;
  }
  bool any = false;
  for (const auto& one : whole) {
    if (!one) {
      return Role::literal;
    }
    any = any || result_at(*one, column).has_value();
  }
  return !any ? Role::literal : stands_alone(column, cells, whole) ? Role::value : Role::present;
}

// Whether the same record without the column is one without the result, and nothing else is another for it.
bool Programs::stands_alone(std::uint32_t column, std::span<const Cell> cells,
                            const std::vector<std::optional<evidence::Evidence>>& whole) const {
  std::vector<Cell> without(cells.begin(), cells.end());
  without[column] = {};
  const auto less = bound(without);
  for (std::size_t at = 0; at < whole.size(); ++at) {
    if (!whole[at] || !less[at]) {
      return false;
    }
    const auto result = result_at(*whole[at], column);
    if (result ? !is_without(*whole[at], *less[at], *result) : whole[at]->results.size() != less[at]->results.size()) {
      return false;
    }
  }
  return true;
}

void Programs::learn(const Columns& columns, std::span<const Cell> cells, std::vector<SpecificationTally>& tallies) {
  if (roles_.size() != columns.size()) {
    forget(tallies);
    roles_.resize(columns.size(), Role::unknown);
    std::vector<evidence::Cell> names;
    for (std::uint32_t column = 0; column < columns.size(); ++column) {
      names.push_back({columns.name(column), place_of(column), true});
    }
    diagnose::Diagnostics diagnostics;
    headings_ = evidence::read_headings(names, diagnostics);
  }
  if (!headings_) {
    return;
  }
  const auto whole = bound(cells);
  const std::vector<Role> before = roles_;
  for (std::uint32_t column = 0; column < columns.size(); ++column) {
    if (roles_[column] == Role::unknown) {
      roles_[column] = role(columns.name(column), column, cells, whole);
    }
  }
  if (roles_ != before) {
    forget(tallies);
  }
}

// Kinds rest on what the columns are for: one that was made while a column was unknown has no place for its values, and
// must not be found again once the column is no part of the key.
void Programs::forget(std::vector<SpecificationTally>& tallies) {
  settle(tallies);  // while the programs are there that know the limits
  kinds_.clear();
  made_ = 0;
}

// What records must have in common: the texts of all columns but those whose number or text does not matter. False: a
// column that was not learned, or a day that is none.
bool Programs::write_key(std::span<const Cell> cells) {
  key_.clear();
  for (std::size_t column = 0; column < cells.size(); ++column) {
    const Cell& cell = cells[column];
    if (cell.kind == CellKind::absent || roles_[column] == Role::identity ||
        (roles_[column] == Role::value && cell.kind == CellKind::number)) {
      continue;
    }
    if (roles_[column] == Role::unknown || (roles_[column] == Role::day && !evidence::read_date(cell.text))) {
      return false;
    }
    const bool any_number =
        roles_[column] == Role::day ||  // that it is stated counts, as a result of which it is stated
        (roles_[column] == Role::present && cell.kind == CellKind::number);
    key_ += static_cast<char>(column & 0xFFU);
    key_ += static_cast<char>(column >> 8U);
    key_ += any_number ? std::string_view("\t") : cell.text;
    key_ += '\n';
  }
  return true;
}

void Programs::make(std::span<const Cell> cells, RecordKind& out) {
  const std::vector<Cell> filled = with_all_values(cells);
  auto all = bound(filled);
  for (std::uint32_t column = 0; column < filled.size(); ++column) {
    // What stood alone in the record that was learned from may have company in this kind.
    if (roles_[column] == Role::value && filled[column].kind == CellKind::number &&
        !stands_alone(column, filled, all)) {
      out.needed.push_back(column);
    }
  }
  for (std::size_t at = 0; at < all.size(); ++at) {
    if (!all[at]) {
      return;
    }
    std::vector<Slot> slots = slots_of(*all[at], filled);
    out.programs.emplace_back((*against_)[at], std::move(*all[at]), std::move(slots));
  }
  for (std::size_t at = 0; at < out.programs.size(); ++at) {
    out.programs[at].defer(deferred_[at]);
  }
  out.usable = true;
}

std::vector<Cell> Programs::with_all_values(std::span<const Cell> cells) const {
  std::vector<Cell> out(cells.begin(), cells.end());
  for (std::size_t column = 0; column < out.size(); ++column) {
    if (roles_[column] == Role::value && out[column].kind == CellKind::absent) {
      out[column] = {CellKind::number, {1, 0}, "1"};
    }
  }
  return out;
}

std::vector<Slot> Programs::slots_of(const evidence::Evidence& evidence, std::span<const Cell> cells) const {
  std::vector<Slot> out;
  for (std::uint32_t column = 0; column < cells.size(); ++column) {
    const auto result = result_at(evidence, column);
    const bool any_number = roles_[column] == Role::value || roles_[column] == Role::present;
    if (any_number && cells[column].kind == CellKind::number && result) {
      out.push_back({column, *result});
    }
  }
  return out;
}

void Programs::settle(std::vector<SpecificationTally>& tallies) {
  for (auto& [key, kind] : kinds_) {
    for (std::size_t at = 0; at < kind.programs.size(); ++at) {
      kind.programs[at].settle(tallies[at]);
    }
  }
}

std::vector<Program>* Programs::find(const Columns& columns, std::span<const Cell> cells) {
  if (!headings_ || roles_.size() != columns.size() || !write_key(cells)) {
    return nullptr;
  }
  const auto at = kinds_.find(key_);
  if (at == kinds_.end()) {
    if (kinds_.size() < most_remembered) {
      kinds_.emplace(key_, RecordKind{});
    }
    return nullptr;
  }
  if (!at->second.made && made_ < most) {
    ++made_;
    at->second.made = true;
    make(cells, at->second);
  }
  const auto& needed = at->second.needed;
  if (std::any_of(needed.begin(), needed.end(),
                  [&](std::uint32_t column) { return cells[column].kind == CellKind::absent; })) {
    return nullptr;
  }
  return at->second.usable ? &at->second.programs : nullptr;
}

}  // namespace plumbrule::sweep
