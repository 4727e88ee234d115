#pragma once
// Recipes for hostile inputs, so that the repository need not store them. Parts joined by ` + `:
//
//   empty                     nothing
//   text "key: 1\n"           the text; \n \t \r \" \\ are understood
//   repeat 100000 "["         the text that many times
//   line 10000000 "a"         the text that many times, then a line end
//   series 500 "- item #\n"   the text that many times, each # replaced by 1, 2, 3 ...
//   bytes 00 ff fe            bytes in hexadecimal

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace plumbrule::cases {

/// The largest file a recipe may make, in bytes.
inline constexpr std::size_t largest_generated = std::size_t{300} * 1024U * 1024U;

/// The bytes, or the reason why the recipe cannot be followed.
struct Generated {
  std::optional<std::string> bytes;
  std::string reason;
};
[[nodiscard]] Generated generate(std::string_view recipe);

}  // namespace plumbrule::cases
