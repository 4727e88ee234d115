#include "read_mix.hpp"

#include <array>
#include <stdexcept>
#include <string_view>

#include "../records/record_maker.hpp"
#include "blocks.hpp"

namespace plumbrule::bench {
namespace {

namespace od = simdjson::ondemand;

Traffic traffic_of(std::string_view word) {
  if (word == "light") {
    return Traffic::light;
  }
  if (word == "medium") {
    return Traffic::medium;
  }
  return word == "heavy" ? Traffic::heavy : Traffic::missing;
}

// Records state their values in the order of the slots, some left out: the search starts where the last one ended.
std::size_t slot_of(const od::raw_json_string& key, std::size_t from) {
  for (std::size_t slot = from; slot < slot_count; ++slot) {
    if (key.unsafe_is_equal(values.at(slot).heading)) {
      return slot;
    }
  }
  throw std::runtime_error("a heading that made records do not have");
}

Mix mix_of(od::object record) {
  Mix mix;
  mix.values.fill(std::numeric_limits<double>::quiet_NaN());
  std::size_t next = 0;
  for (auto field : record) {
    const od::raw_json_string key = field.key();
    od::value value = field.value();
    if (next == 0 && key.unsafe_is_equal("mix")) {
      continue;
    }
    if (next == 0 && key.unsafe_is_equal("classes; traffic")) {
      mix.traffic = traffic_of(value.get_string());
      continue;
    }
    next = slot_of(key, next);
    if (!value.is_null()) {
      mix.values.at(next) = value.get_double();
    }
    ++next;
  }
  return mix;
}

template <typename Use>
void each_record(const std::string& path, const Use& use) {
  Blocks blocks(path);
  od::parser parser;
#ifdef SIMDJSON_THREADS_ENABLED
  parser.threaded = false;  // what is measured is one thread
#endif
  for (auto block = blocks.next(); !block.empty(); block = blocks.next()) {
    od::document_stream stream = parser.iterate_many(block.data(), block.size(), block.size());
    for (auto record : stream) {
      use(record.get_object());
    }
  }
}

void touch(od::value value, Touched& touched) {
  switch (value.type()) {
    case od::json_type::number:
      touched.sum += double(value.get_double());
      break;
    case od::json_type::string:
      touched.texts += std::string_view(value.get_string()).size();
      break;
    default:
      touched.texts += value.is_null() ? 0 : 1;
  }
}

void touch(simdjson::dom::element value, Touched& touched) {
  if (value.is_string()) {
    touched.texts += std::string_view(value).size();
  } else if (!value.is_null()) {
    touched.sum += double(value);
  }
}

}  // namespace

Touched touch_on_demand(const std::string& path) {
  Touched touched;
  each_record(path, [&](od::object record) {
    for (auto field : record) {
      touched.texts += field.key().value().raw()[0] == '"' ? 0 : 1;
      touch(field.value(), touched);
    }
    ++touched.records;
  });
  return touched;
}

Touched touch_dom(const std::string& path) {
  Touched touched;
  Blocks blocks(path);
  simdjson::dom::parser parser;
#ifdef SIMDJSON_THREADS_ENABLED
  parser.threaded = false;
#endif
  for (auto block = blocks.next(); !block.empty(); block = blocks.next()) {
    simdjson::dom::document_stream stream = parser.parse_many(block.data(), block.size(), block.size());
    for (const simdjson::dom::element record : stream) {
      for (const auto field : simdjson::dom::object(record)) {
        touched.texts += field.key.size();
        touch(field.value, touched);
      }
      ++touched.records;
    }
  }
  return touched;
}

void read_mixes(const std::string& path, const std::function<void(const Mix&)>& use) {
  each_record(path, [&](const od::object& record) { use(mix_of(record)); });
}

Counts judge_all(const std::string& path) {
  Counts counts;
  each_record(path, [&](const od::object& record) { judge(mix_of(record), counts); });
  return counts;
}

}  // namespace plumbrule::bench
