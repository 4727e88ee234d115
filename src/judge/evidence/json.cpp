// The only translation unit that sees simdjson. It reads On Demand: a value is checked when it is asked for, so all
// are.

#include "judge/evidence/json.hpp"

#include <simdjson.h>

#include <algorithm>
#include <vector>

#include "base/diagnose/encoding.hpp"
#include "judge/evidence/json_fault.hpp"
#include "judge/evidence/text_of_file.hpp"
#include "judge/evidence/tree_maker.hpp"

namespace plumbrule::evidence {
namespace {

using diagnose::Code;
namespace ondemand = simdjson::ondemand;

std::string_view without_blanks(std::string_view token) {
  return token.substr(0, token.find_last_not_of(" \t\r\n") + 1);
}

// Hands the library's values on. Recursion is as deep as the tree, and the maker refuses what is too deep.
class Walk {
 public:
  Walk(const char* begin, TreeMaker& maker) : begin_(begin), maker_(maker) {}

  void value(ondemand::value one) {
    const std::string_view token = without_blanks(one.raw_json_token());
    const auto at = static_cast<std::size_t>(token.data() - begin_);
    switch (one.type().value()) {
      case ondemand::json_type::object:
        return map(one.get_object(), at);
      case ondemand::json_type::array:
        return list(one.get_array(), at);
      case ondemand::json_type::string:
        return maker_.add_scalar(at, std::string(one.get_string().value()));
      case ondemand::json_type::number:
        return number(token, at);
      case ondemand::json_type::boolean:
        return maker_.add_scalar(at, one.get_bool().value() ? "true" : "false");
      case ondemand::json_type::null:
        return nothing(one, at);
    }
  }

 private:
  const char* begin_;
  TreeMaker& maker_;

  void map(ondemand::object entries, std::size_t at) {
    maker_.open(Node::Kind::map, at);
    for (simdjson::simdjson_result<ondemand::field> entry : entries) {
      const auto key = static_cast<std::size_t>(entry.key().value().raw() - begin_) - 1;  // the quote before it
      maker_.add_scalar(key, std::string(entry.unescaped_key().value()));
      value(entry.value());
    }
    maker_.close();
  }

  void list(ondemand::array items, std::size_t at) {
    maker_.open(Node::Kind::list, at);
    for (simdjson::simdjson_result<ondemand::value> item : items) {
      value(item.value());
    }
    maker_.close();
  }

  // Not taken as a number from the library, which would round it; it passes over what is not taken.
  void number(std::string_view token, std::size_t at) {
    if (json_fault(token)) {
      throw simdjson::simdjson_error(simdjson::NUMBER_ERROR);
    }
    maker_.add_scalar(at, std::string(token));
  }

  void nothing(ondemand::value& one, std::size_t at) {
    if (!one.is_null()) {
      throw simdjson::simdjson_error(simdjson::N_ATOM_ERROR);
    }
    maker_.add_empty(at);
  }
};

bool encoded(const TextOfFile& text, source::FileId file, diagnose::Diagnostics& diagnostics) {
  const auto bad = diagnose::first_bad_byte(text.text);
  if (bad) {
    const auto at = static_cast<std::uint32_t>(text.offset + *bad);
    diagnostics.error(Code::file_encoding, {file, at, at + 1}, "found a byte that is not UTF-8, or NUL",
                      "save the file as UTF-8");
  }
  return !bad;
}

void report(const TextOfFile& text, source::FileId file, diagnose::Diagnostics& diagnostics) {
  const auto fault = json_fault(text.text);
  const auto place = [&](std::size_t at) { return static_cast<std::uint32_t>(text.offset + at); };
  if (fault) {
    diagnostics.error(Code::submittal_json, {file, place(fault->begin), place(fault->end)}, fault->message,
                      fault->help);
  } else {
    diagnostics.error(Code::submittal_json, {file, place(0), place(0)}, "found text that is not JSON",
                      "write the submittal as YAML, or check it with another program that reads JSON");
  }
}

bool begins(const TextOfFile& text, source::FileId file, diagnose::Diagnostics& diagnostics) {
  const std::size_t first = text.text.find_first_not_of(" \t\r\n");
  const auto at = static_cast<std::uint32_t>(text.offset + std::min(first, text.text.size()));
  if (first == std::string_view::npos) {
    diagnostics.error(Code::submittal_shape, {file, at, at}, "found an empty file", "begin with `{\"submittal\": 1`");
  } else if (text.text[first] != '{' && text.text[first] != '[') {
    const auto fault = json_fault(text.text);
    if (fault) {
      report(text, file, diagnostics);
    } else {
      diagnostics.error(Code::submittal_shape, {file, at, at + 1}, "found a single value, no submittal",
                        "begin with `{\"submittal\": 1`");
    }
  } else {
    return true;
  }
  return false;
}

}  // namespace

struct JsonReader::State {
  ondemand::parser parser;
  std::vector<char> padded;  // the library reads beyond the end

  bool read(std::string_view text, TreeMaker& maker);
};

bool JsonReader::State::read(std::string_view text, TreeMaker& maker) {
  padded.resize(std::max(padded.size(), text.size() + simdjson::SIMDJSON_PADDING));
  std::copy(text.begin(), text.end(), padded.begin());
  std::fill_n(padded.begin() + static_cast<std::ptrdiff_t>(text.size()), simdjson::SIMDJSON_PADDING, ' ');
  ondemand::document document = parser.iterate(padded.data(), text.size(), padded.size());
  Walk(padded.data(), maker).value(document.get_value());
  if (document.current_location().error() != simdjson::OUT_OF_BOUNDS) {  // something stands behind the end
    throw simdjson::simdjson_error(simdjson::TAPE_ERROR);
  }
  return !maker.has_duplicates();
}

JsonReader::JsonReader() : state_(std::make_unique<State>()) {}
JsonReader::~JsonReader() = default;
JsonReader::JsonReader(JsonReader&&) noexcept = default;
JsonReader& JsonReader::operator=(JsonReader&&) noexcept = default;

std::optional<Node> JsonReader::read(std::string_view record, source::FileId file, std::uint32_t offset,
                                     diagnose::Diagnostics& diagnostics) {
  const TextOfFile text{record, offset};
  if (!encoded(text, file, diagnostics) || !without_control_characters(text, file, Code::submittal_json, diagnostics) ||
      !begins(text, file, diagnostics)) {
    return std::nullopt;
  }
  TreeMaker maker(record, file, offset, diagnostics);
  try {
    return state_->read(record, maker) ? std::optional(maker.take()) : std::nullopt;
  } catch (const Refused&) {
    return std::nullopt;
  } catch (const simdjson::simdjson_error&) {
    report(text, file, diagnostics);
    return std::nullopt;
  }
}

std::optional<Node> read_json(const source::SourceMap& sources, source::FileId file,
                              diagnose::Diagnostics& diagnostics) {
  const auto text = text_of_file(sources, file, Code::submittal_json, diagnostics);
  return text ? JsonReader().read(text->text, file, static_cast<std::uint32_t>(text->offset), diagnostics)
              : std::nullopt;
}

}  // namespace plumbrule::evidence
