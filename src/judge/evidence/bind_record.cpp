// What a submittal notes beside its values: no verdict reads it, the audit does (language.md, section 16).

#include <algorithm>
#include <charconv>

#include "base/diagnose/quote.hpp"
#include "judge/evidence/binder.hpp"

namespace plumbrule::evidence {

Note Binder::note(const Node* node, const std::string& what) {
  if (node == nullptr || node->kind == Node::Kind::empty) {
    return {};
  }
  if (node->kind != Node::Kind::scalar) {
    error(diagnose::Code::submittal_shape, node->span, "found no plain text for " + what, "write one line of text");
    return {};
  }
  return {node->text, node->span};
}

Note Binder::line(const Node* node) {
  return node == nullptr || node->kind != Node::Kind::scalar ? Note{} : Note{node->text, node->span};
}

void Binder::materials(const Node& node) {
  if (!is_list(node, "`materials`")) {
    return;
  }
  for (const Node& item : node.items) {
    if (!is_map(item, "a material")) {
      continue;
    }
    known_keys(item, {"material", "id", "batch", "description", "source", "certificate", "note"}, "a material");
    Material out;
    out.material = note(item.find("material"), "`material`").text;
    out.span = item.span;
    for (const std::string_view key : {"id", "batch", "description", "source", "certificate"}) {
      const Note name = note(item.find(key), "`" + std::string(key) + "`");
      if (name.given()) {
        out.names.push_back(name.text);
        out.entries.emplace_back(key, name);
      }
    }
    if (const Note remark = line(item.find("note")); remark.given()) {
      out.entries.emplace_back("note", remark);
    }
    const Node* certificate = item.find("certificate");
    out.certified = certificate != nullptr && certificate->text.find_first_not_of(' ') != std::string::npos;
    out_.materials.push_back(std::move(out));
  }
}

void Binder::materials_used(const Node& map, Result& out) {
  if (!is_map(map, "`materials` of a result")) {
    return;
  }
  for (const Entry& entry : map.entries) {
    const Note name = note(&entry.value, "`" + entry.key + "`");
    if (name.given()) {
      out.record.materials.push_back({entry.key, name});
    }
  }
}

void Binder::held(const Node& map, check::MeasureId measure_id, Circumstances& out) {
  const check::Measure& measure = rules_.measures[measure_id];
  if (!is_map(map, "`held`")) {
    return;
  }
  for (const Entry& entry : map.entries) {
    const auto at = std::find_if(measure.held.begin(), measure.held.end(),
                                 [&](const check::Held& one) { return one.name == entry.key; });
    if (at == measure.held.end()) {
      if (std::find(others_.held.begin(), others_.held.end(), entry.key) == others_.held.end()) {
        std::vector<std::string_view> known;
        for (const check::Held& one : measure.held) {
          known.emplace_back(one.name);
        }
        unknown_key(entry, known, "nothing that the test of `" + measure.name + "` holds");
      }
      continue;
    }
    check::Type type;
    type.unit = at->unit;
    const auto index = static_cast<std::uint32_t>(at - measure.held.begin());
    out.held.push_back({index, value(entry.value, type, "`" + entry.key + "`")});
  }
}

// "8:10", "14:05:30".
std::optional<std::int32_t> Binder::time_of_day(const Node& node) {
  const std::string_view text = node.text;
  std::vector<std::int32_t> parts;
  for (std::size_t at = 0; at <= text.size() && parts.size() < 4;) {
    const std::size_t end = std::min(text.find(':', at), text.size());
    std::int32_t part = -1;
    const auto read = std::from_chars(text.data() + at, text.data() + end, part);
    const bool whole = read.ec == std::errc() && read.ptr == text.data() + end && end - at <= 2;
    parts.push_back(whole ? part : -1);
    at = end + 1;
  }
  const bool shape = node.kind == Node::Kind::scalar && (parts.size() == 2 || parts.size() == 3);
  const std::int32_t second = parts.size() == 3 ? parts[2] : 0;
  if (!shape || parts[0] < 0 || parts[0] > 23 || parts[1] < 0 || parts[1] > 59 || second < 0 || second > 59) {
    error(diagnose::Code::submittal_value, node.span, "found " + diagnose::quoted(text) + ", no time of the day",
          "write hours and minutes: `8:10`");
    return std::nullopt;
  }
  return parts[0] * 3600 + parts[1] * 60 + second;
}

void Binder::clocks(const Node& map, check::MeasureId measure_id, Circumstances& out) {
  const check::Measure& measure = rules_.measures[measure_id];
  if (!is_map(map, "`clock`")) {
    return;
  }
  constexpr quantity::Dimension time{0, 0, 1, 0};
  for (const Entry& entry : map.entries) {
    const auto lasts = [&](check::ConditionId id) {
      const check::Condition& one = rules_.conditions[id];
      return one.scale == check::Scale::unit && out_.units.at(one.unit).dimension == time;
    };
    const auto at = std::find_if(measure.conditions.begin(), measure.conditions.end(), [&](check::ConditionId id) {
      return rules_.conditions[id].name == entry.key && lasts(id);
    });
    if (at == measure.conditions.end()) {
      const auto& others = others_.conditions;
      if (std::find(others.begin(), others.end(), entry.key) == others.end()) {
        unknown_key(entry, {}, "no condition of `" + measure.name + "` that lasts");
      }
      continue;
    }
    if (entry.value.kind != Node::Kind::list || entry.value.items.size() != 2) {
      error(diagnose::Code::submittal_shape, entry.value.span, "found no two times for `" + entry.key + "`",
            "write begin and end: `[8:10, 9:05]`");
      continue;
    }
    const auto started = time_of_day(entry.value.items[0]);
    const auto ended = time_of_day(entry.value.items[1]);
    if (started && ended) {
      out.clocks.push_back({*at, *started, *ended, entry.value.span});
    }
  }
}

void Binder::circumstances(const Entry& entry, check::MeasureId measure, Circumstances& out) {
  if (entry.key == "held") {
    held(entry.value, measure, out);
  } else {
    clocks(entry.value, measure, out);
  }
}

void Binder::record(const Node& node, Result& out) {
  Record& record = out.record;
  const Node* tested = node.find("tested");
  record.tested = {out.tested, tested == nullptr ? Span{} : tested->span};
  const Node* made = node.find("made");
  record.made = {date(made), made == nullptr ? Span{} : made->span};
  const Node* replicates = node.find("replicates");
  record.replicates = replicates == nullptr ? Span{} : replicates->span;
  record.laboratory = note(node.find("laboratory"), "`laboratory`");
  record.accreditation = note(node.find("accreditation"), "`accreditation`");
  record.note = line(node.find("note"));
  if (const Node* used = node.find("materials")) {
    materials_used(*used, out);
  }
  if (const Node* also = node.find("also")) {
    const check::Measure& measure = rules_.measures[out.measure];
    record.also = value(*also, measure.type, "`also`");
    if (node.find("reported") == nullptr) {
      error(diagnose::Code::submittal_missing_key, also->span, "found `also` without `reported`",
            "`also` says the reported value a second time, in another unit");
    }
  }
  for (const std::string_view key : {"held", "clock"}) {
    const auto at =
        std::find_if(node.entries.begin(), node.entries.end(), [&](const Entry& entry) { return entry.key == key; });
    if (at != node.entries.end()) {
      circumstances(*at, out.measure, record.circumstances);
    }
  }
}

}  // namespace plumbrule::evidence
