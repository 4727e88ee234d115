#include "record.hpp"

#include <charconv>

#include "value_reader.hpp"

namespace plumbrule::oracle {
namespace {

using evidence::Node;

class RecordReader {
 public:
  RecordReader(const Rulebook& book, Units& units) : book_(book), units_(units), values_(book, units) {}

  Record run(const Node& document) {
    const Node* const version = document.kind == Node::Kind::map ? document.find("submittal") : nullptr;
    if (version == nullptr || version->text != "1") {
      return out_;
    }
    out_.readable = true;
    out_.date = date(document.find("date"));
    for (const evidence::Entry& entry : entries(document.find("classes"))) {
      const syntax::Category* const category = book_.category(entry.key);
      const std::string word = category == nullptr ? "" : meant_word(*category, entry.value);
      if (!word.empty()) {
        out_.classes.emplace(entry.key, word);
      }
    }
    for (const evidence::Entry& entry : entries(document.find("job_mix"))) {
      declared(entry);
    }
    if (const Node* list = document.find("results")) {
      for (const Node& item : list->items) {
        result(item);
      }
    }
    return std::move(out_);
  }

 private:
  const Rulebook& book_;
  Units& units_;
  ValueReader values_;
  Record out_;
  std::map<std::string, Stated> job_mix_;
  std::size_t series_ = 0;

  static const std::vector<evidence::Entry>& entries(const Node* node) {
    static const std::vector<evidence::Entry> none;
    return node == nullptr ? none : node->entries;
  }

  static std::optional<std::int32_t> date(const Node* node) {
    return node == nullptr ? std::nullopt : evidence::read_date(node->text);
  }

  static bool among(const std::vector<syntax::Text>& names, const std::string& name) {
    for (const syntax::Text& one : names) {
      if (one.value == name) {
        return true;
      }
    }
    return false;
  }

  void declare(const syntax::Measure& measure, Conditions conditions, const Stated& value) {
    Trial trial;
    trial.measure = measure.name.value;
    trial.conditions = std::move(conditions);
    trial.reported = value;
    trial.replicates = 1;
    trial.declared = true;
    trial.tested = out_.date;
    out_.trials.push_back(std::move(trial));
  }

  void declared(const evidence::Entry& entry) {
    const syntax::Measure* const measure = book_.measure(entry.key);
    if (measure == nullptr) {
      return;
    }
    if (entry.value.kind == Node::Kind::map && measure->conditions.size() == 1) {
      const std::string& condition = measure->conditions.front().value;
      for (const evidence::Entry& row : entry.value.entries) {
        Node key;
        key.kind = Node::Kind::scalar;
        key.text = row.key;
        declare(*measure, {{condition, values_.condition(key, condition)}}, values_.value(row.value, wanted(*measure)));
      }
      return;
    }
    const Stated value = values_.value(entry.value, wanted(*measure));
    job_mix_.emplace(entry.key, value);
    declare(*measure, {}, value);
  }

  // One design variable of `at` that differs settles it; one that cannot be told leaves it open.
  Standing standing(const Node& at) {
    if (at.kind != Node::Kind::map) {
      return Standing::unknown;
    }
    Standing out = Standing::at_job_mix;
    for (const evidence::Entry& entry : at.entries) {
      const syntax::Measure* const measure = book_.measure(entry.key);
      const Stated here = measure == nullptr ? Stated{} : values_.value(entry.value, wanted(*measure));
      const auto target = job_mix_.find(entry.key);
      const bool comparable = here.kind == Stated::Kind::quantity && here.amount.exact() && target != job_mix_.end() &&
                              target->second.kind == Stated::Kind::quantity && target->second.amount.exact();
      if (!comparable) {
        out = out == Standing::elsewhere ? out : Standing::unknown;
      } else if (!(units_.convert(here.amount.value(), here.unit, target->second.unit) ==
                   target->second.amount.value())) {
        out = Standing::elsewhere;
      }
    }
    return out;
  }

  void readings(const Node& map, const syntax::Measure& measure, Sample& out) {
    for (const evidence::Entry& entry : map.entries) {
      bool read = false;
      for (const syntax::Reading& reading : measure.readings) {
        if (reading.name.value == entry.key) {
          out.readings[entry.key] = values_.value(entry.value, wanted(reading));
          read = true;
        }
      }
      if (!read && entry.key == "value") {
        out.direct = values_.value(entry.value, wanted(measure));
      }
    }
  }

  Sample sample(const Node& node, const Node* shared, const syntax::Measure& measure) {
    Sample out;
    if (node.kind != Node::Kind::map) {
      out.direct = values_.value(node, wanted(measure));
      return out;
    }
    if (shared != nullptr) {
      readings(*shared, measure, out);
    }
    readings(node, measure, out);
    return out;
  }

  void head(const Node& node, const syntax::Measure& measure, Trial& out) {
    out.measure = measure.name.value;
    for (const evidence::Entry& entry : entries(node.find("under"))) {
      if (among(measure.conditions, entry.key)) {
        out.conditions.emplace(entry.key, values_.condition(entry.value, entry.key));
      }
    }
    if (const Node* at = node.find("at")) {
      out.standing = standing(*at);
    }
    out.tested = date(node.find("tested"));
    if (const Node* lot = node.find("lot"); lot != nullptr && !blank(lot->text)) {
      out.lot = lot->text;
    }
    if (const Node* count = node.find("replicates")) {
      const char* const end = count->text.data() + count->text.size();
      const auto read = std::from_chars(count->text.data(), end, out.replicates);
      out.replicates = read.ec == std::errc() && read.ptr == end ? out.replicates : 0;
    }
  }

  // A further measure in a row of a series is a result of its own, under those of the row's conditions that it has.
  void companion(const evidence::Entry& entry, const syntax::Measure& measure, const Trial& row) {
    Trial out;
    out.measure = measure.name.value;
    for (const auto& [name, value] : row.conditions) {
      if (among(measure.conditions, name)) {
        out.conditions.emplace(name, value);
      }
    }
    out.standing = row.standing;
    out.tested = row.tested;
    out.lot = row.lot;
    out.reported = values_.value(entry.value, wanted(measure));
    out.replicates = 1;
    out_.trials.push_back(std::move(out));
  }

  void row(const Node& node, const Node* shared, const syntax::Measure& measure, Trial base) {
    Node rest;
    rest.kind = Node::Kind::map;
    std::vector<const evidence::Entry*> companions;
    for (const evidence::Entry& entry : node.entries) {
      bool reading = false;
      for (const syntax::Reading& one : measure.readings) {
        reading = reading || one.name.value == entry.key;
      }
      if (among(measure.conditions, entry.key)) {
        base.conditions.emplace(entry.key, values_.condition(entry.value, entry.key));
        // A series runs along its sieves, else along the first condition that is measured, never along words.
        const auto scale = book_.condition(entry.key).scale;
        const bool measured = scale == syntax::Condition::Scale::unit && base.series_condition.empty();
        if (scale == syntax::Condition::Scale::sieve || measured) {
          base.series_condition = entry.key;
        }
      } else if (!reading && book_.measure(entry.key) != nullptr && entry.key != base.measure) {
        companions.push_back(&entry);
      } else {
        rest.entries.push_back(entry);
      }
    }
    if (!rest.entries.empty()) {
      base.samples = {sample(rest, shared, measure)};
      out_.trials.push_back(base);
    }
    for (const evidence::Entry* entry : companions) {
      companion(*entry, *book_.measure(entry->key), base);
    }
  }

  void result(const Node& node) {
    const Node* const name = node.find("measure");
    const syntax::Measure* const measure = name == nullptr ? nullptr : book_.measure(name->text);
    if (node.kind != Node::Kind::map || measure == nullptr) {
      return;
    }
    Trial out;
    head(node, *measure, out);
    const Node* const shared = node.find("shared");
    if (const Node* list = node.find("series")) {
      out.series = series_++;
      for (const Node& item : list->items) {
        if (item.kind == Node::Kind::map) {
          row(item, shared, *measure, out);
        }
      }
      return;
    }
    if (const Node* list = node.find("specimens")) {
      out.samples_unusable = list->kind != Node::Kind::list || list->items.empty();
      for (const Node& item : list->items) {
        out.samples.push_back(sample(item, shared, *measure));
      }
    }
    if (const Node* reported = node.find("reported")) {
      out.reported = values_.value(*reported, wanted(*measure));
    }
    out_.trials.push_back(std::move(out));
  }
};

}  // namespace

Record read_record(const Rulebook& book, Units& units, const Node& document) {
  return RecordReader(book, units).run(document);
}

}  // namespace plumbrule::oracle
