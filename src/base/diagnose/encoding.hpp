#pragma once
// Texts are UTF-8 without NUL bytes.

#include <optional>
#include <string_view>

#include "base/diagnose/diagnostic.hpp"

namespace plumbrule::diagnose {

/// The offset of the first byte that is not part of valid UTF-8 (overlong forms and surrogates included), or is NUL.
[[nodiscard]] std::optional<std::size_t> first_bad_byte(std::string_view text);

/// Reports a file that is not such a text; true if it is.
bool check_encoding(const source::SourceMap& sources, source::FileId file, Diagnostics& diagnostics);

}  // namespace plumbrule::diagnose
