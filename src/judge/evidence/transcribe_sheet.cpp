// A submittal as a sheet of one row. Whatever is written is read back: a sheet that says less is never handed out.

#include <algorithm>
#include <map>

#include "base/diagnose/quote.hpp"
#include "base/quantity/unit.hpp"
#include "base/source/source.hpp"
#include "judge/evidence/heading.hpp"
#include "judge/evidence/transcribe.hpp"
#include "judge/evidence/written.hpp"
#include "judge/evidence/written_fault.hpp"
#include "judge/evidence/yaml_text.hpp"

namespace plumbrule::evidence {
namespace {

using diagnose::Code;

struct Refusal {};

struct Column {
  std::string heading, cell;
};

// What a cell says, and the unit that its heading says for it.
struct Split {
  std::string cell, unit;
};

Split split_unit(const std::string& text, quantity::UnitTable& units) {
  const auto read = read_written(text);
  const auto* written = std::get_if<Written>(&read);
  if (written == nullptr || written->unit.empty() || !units.find(written->unit)) {
    return {text, ""};
  }
  const std::string_view last = written->basis.empty() ? written->unit : written->basis;
  const auto begin = static_cast<std::size_t>(written->unit.data() - text.data());
  const auto end = static_cast<std::size_t>(last.data() + last.size() - text.data());
  const std::string before = text.substr(0, text.find_last_not_of(' ', begin - 1) + 1);
  Split out{before + text.substr(end), text.substr(begin, end - begin)};
  return with_unit(out.cell, out.unit) == text ? out : Split{text, ""};
}

std::string csv(const std::string& text) {
  const bool plain = text.find_first_of("\",") == std::string::npos && !text.starts_with(' ') && !text.ends_with(' ') &&
                     !text.starts_with('\t') && !text.ends_with('\t') && !text.starts_with(source::byte_order_mark);
  if (plain) {
    return text;
  }
  std::string out = "\"";
  for (const char byte : text) {
    out += byte == '"' ? "\"\"" : std::string(1, byte);
  }
  return out + "\"";
}

class SheetWriter {
 public:
  explicit SheetWriter(diagnose::Diagnostics& diagnostics) : diagnostics_(diagnostics) {}

  std::vector<Column> run(const Node& submittal) {
    if (submittal.kind != Node::Kind::map || submittal.find("submittal") == nullptr) {
      refuse(submittal.span, "found no submittal", "begin with `submittal: 1`");
    }
    for (const Entry& entry : submittal.entries) {
      if (entry.key == "submittal") {
        version(entry.value);
      } else if (entry.key == "classes") {
        each(entry.value, [&](const Entry& one) { text("classes; " + one.key, one.value); });
      } else if (entry.key == "materials") {
        materials(entry.value);
      } else if (entry.key == "job_mix") {
        each(entry.value, [&](const Entry& one) { target("job_mix; " + one.key, one.value); });
      } else if (entry.key == "results") {
        items(entry.value, [&](const Node& one, std::size_t) { result(one); });
      } else if (is_identity(entry.key)) {
        text(entry.key, entry.value);
      } else {
        refuse(entry.key_span, "found " + diagnose::quoted(entry.key) + ", no entry of a submittal", "take it out");
      }
    }
    return std::move(columns_);
  }

 private:
  diagnose::Diagnostics& diagnostics_;
  quantity::UnitTable units_;
  std::vector<Column> columns_;
  std::map<std::string, int> results_;  // how many with this measure and these conditions

  [[noreturn]] void refuse(const source::Span& where, const std::string& message, const std::string& help = {}) {
    diagnostics_.error(Code::submittal_sheet, where, message, help.empty() ? "write it as yaml or json" : help);
    throw Refusal{};
  }

  void version(const Node& node) {
    if (node.text != "1") {
      refuse(node.span, "found submittal version " + diagnose::quoted(node.text) + ", expected `1`");
    }
  }

  template <typename Do>
  void each(const Node& map, Do&& one) {
    if (map.kind != Node::Kind::map || map.entries.empty()) {
      refuse(map.span, "found no names with values, where a sheet has columns");
    }
    std::for_each(map.entries.begin(), map.entries.end(), one);
  }

  template <typename Do>
  void items(const Node& list, Do&& one) {
    if (list.kind != Node::Kind::list || list.items.empty()) {
      refuse(list.span, "found no list of values, where a sheet has columns");
    }
    for (std::size_t at = 0; at < list.items.size(); ++at) {
      one(list.items[at], at + 1);
    }
  }

  void column(const std::string& heading, const Node& node, const Split& split) {
    if (node.kind != Node::Kind::scalar || node.text.find_first_not_of(" \t") == std::string::npos) {
      refuse(node.span, node.kind == Node::Kind::list || node.kind == Node::Kind::map
                            ? "found a list or map where a sheet has one cell"
                            : "found no value, which a sheet cannot tell from a column that it does not have");
    }
    const std::string whole = heading + (split.unit.empty() ? "" : " (" + split.unit + ")");
    diagnose::Diagnostics unread;
    const auto read = read_heading({whole, {}, true}, units_, unread);
    const bool unseen =
        node.text.find_first_of("\r\n") != std::string::npos || first_control_character(node.text).has_value();
    if (unseen) {
      refuse(node.span, "found a line break or a control character, which no cell holds");
    }
    if (whole.find_first_of("\r\n") != std::string::npos || first_control_character(whole) || !read ||
        read->unit != split.unit) {
      refuse(node.span, "found a value that the heading " + diagnose::quoted(whole, 80) + " cannot carry");
    }
    columns_.push_back({whole, split.cell});
  }

  void text(const std::string& heading, const Node& node) { column(heading, node, {node.text, ""}); }
  void quantity(const std::string& heading, const Node& node) { column(heading, node, split_unit(node.text, units_)); }

  void materials(const Node& list) {
    items(list, [&](const Node& item, std::size_t number) {
      each(item, [&](const Entry& one) { text("material " + std::to_string(number) + "; " + one.key, one.value); });
    });
  }

  void target(const std::string& heading, const Node& node) {
    if (node.kind == Node::Kind::map) {
      each(node, [&](const Entry& one) { quantity(heading + "; under " + one.key, one.value); });
    } else {
      quantity(heading, node);
    }
  }

  // `held` and `clock`; true if it was one of them.
  bool circumstance(const std::string& before, const Entry& entry) {
    if (entry.key == "held") {
      each(entry.value, [&](const Entry& one) { quantity(before + "held " + one.key, one.value); });
    } else if (entry.key == "clock") {
      each(entry.value, [&](const Entry& one) {
        if (one.value.items.size() != 2) {
          refuse(one.value.span, "found no begin and end of a clock");
        }
        text(before + "clock " + one.key + "; begin", one.value.items[0]);
        text(before + "clock " + one.key + "; end", one.value.items[1]);
      });
    }
    return entry.key == "held" || entry.key == "clock";
  }

  // The readings of a specimen, a row, or shared ones.
  void readings(const std::string& before, const Node& map) {
    each(map, [&](const Entry& one) {
      if (one.key == "label") {
        text(before + one.key, one.value);
      } else if (!circumstance(before, one)) {
        quantity(before + one.key, one.value);
      }
    });
  }

  void numbered(const std::string& before, const std::string& word, const Node& list) {
    items(list, [&](const Node& item, std::size_t number) {
      const std::string which = before + word + " " + std::to_string(number);
      if (item.kind == Node::Kind::map || word == "row") {
        readings(which + "; ", item);
      } else {
        quantity(which, item);
      }
    });
  }

  std::string conditions(const Node& result, const std::string& key, const std::string& before) {
    std::string out;
    const Node* map = result.find(key);
    if (map != nullptr) {
      each(*map, [&](const Entry& one) {
        const std::string& text = one.value.text;
        if (one.value.kind != Node::Kind::scalar || text.find(';') != std::string::npos ||
            text.find("  ") != std::string::npos || trimmed(text) != text) {
          refuse(one.value.span, "found a condition that no heading can carry");
        }
        out += "; " + before + one.key + " " + one.value.text;
      });
    }
    return out;
  }

  void result(const Node& result) {
    const Node* measure = result.find("measure");
    if (result.kind != Node::Kind::map || measure == nullptr || measure->kind != Node::Kind::scalar) {
      refuse(result.span, "found a result without `measure`", "say what was measured");
    }
    std::string which = measure->text + conditions(result, "under", "") + conditions(result, "at", "at ");
    const int count = ++results_[which];
    which += count == 1 ? "" : "; result " + std::to_string(count);
    for (const Entry& one : result.entries) {
      entry(which, one);
    }
  }

  void entry(const std::string& which, const Entry& one) {
    const std::string before = which + "; ";
    if (one.key == "measure" || one.key == "under" || one.key == "at" || circumstance(before, one)) {
      return;
    }
    if (one.key == "reported") {
      quantity(which, one.value);
    } else if (one.key == "also") {
      quantity(before + one.key, one.value);
    } else if (one.key == "shared") {
      readings(before + "shared; ", one.value);
    } else if (one.key == "specimens" || one.key == "series") {
      numbered(before, one.key == "series" ? "row" : "specimen", one.value);
    } else if (one.key == "materials") {
      each(one.value, [&](const Entry& used) { text(before + "material " + used.key, used.value); });
    } else {
      text(before + one.key, one.value);
    }
  }
};

// The columns as the reader would see them.
std::optional<Node> read_back(const std::vector<Column>& columns, const source::Span& somewhere) {
  std::vector<Cell> headings, cells;
  for (const Column& one : columns) {
    headings.push_back({one.heading, somewhere, true});
    cells.push_back({one.cell, somewhere, true});
  }
  diagnose::Diagnostics unread;
  const auto plan = read_headings(headings, unread);
  return plan ? submittal_of(*plan, cells, somewhere, unread) : std::nullopt;
}

}  // namespace

std::optional<std::string> to_sheet(const Node& submittal, diagnose::Diagnostics& diagnostics) {
  std::vector<Column> columns;
  try {
    columns = SheetWriter(diagnostics).run(submittal);
  } catch (const Refusal&) {
    return std::nullopt;
  }
  const auto back = read_back(columns, submittal.span);
  if (!back || !same_values(*back, submittal)) {
    diagnostics.error(Code::submittal_sheet, submittal.span, "found a submittal that headings cannot carry whole",
                      "write it as yaml or json");
    return std::nullopt;
  }
  std::string head, row;
  for (const Column& one : columns) {
    head += (head.empty() ? "" : ",") + csv(one.heading);
    row += (row.empty() ? "" : ",") + csv(one.cell);
  }
  return head + "\n" + row + "\n";
}

}  // namespace plumbrule::evidence
