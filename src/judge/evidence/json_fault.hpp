#pragma once
// Why a text is no JSON, in words for the people who write submittals. The library says only that it is none.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace plumbrule::evidence {

/// `begin` and `end` are bytes of the text.
struct JsonFault {
  std::size_t begin = 0, end = 0;
  std::string message;
  std::string help;
};

/// The first fault of a text by RFC 8259, of any depth; nothing if it is one JSON document. Bytes that are not UTF-8
/// inside quotes are not its business.
[[nodiscard]] std::optional<JsonFault> json_fault(std::string_view text);

}  // namespace plumbrule::evidence
