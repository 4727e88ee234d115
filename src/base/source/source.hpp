#pragma once
// Texts that the user wrote, and places in them.
//
// Every node of the syntax, every value of a submittal and every diagnostic points into a SourceMap through a
// Span (file number, half-open byte range). Lines and columns are worked out only when something is printed.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumbrule::source {

using FileId = std::uint32_t;
inline constexpr FileId no_file = 0xFFFFFFFFU;

/// A half-open range of bytes [begin, end) of one file. Default: nowhere.
struct Span {
  FileId file = no_file;
  std::uint32_t begin = 0;
  std::uint32_t end = 0;

  [[nodiscard]] bool known() const { return file != no_file; }
  friend bool operator==(const Span&, const Span&) = default;
};

/// The smallest span that covers both; an unknown one does not count.
[[nodiscard]] Span cover(const Span& a, const Span& b);

/// A place as people name it. Line and column start at 1; a column counts characters (code points), not bytes.
struct Place {
  std::string_view file;
  std::uint32_t line = 0;
  std::uint32_t column = 0;
};

/// The largest file that is read, in bytes. Larger ones are refused: spans are 32 bits wide.
inline constexpr std::size_t largest_file = std::size_t{256} * 1024U * 1024U;

/// What some programs put in front of UTF-8. It is no character of the text.
inline constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
[[nodiscard]] constexpr std::string_view behind_mark(std::string_view text) {
  return text.starts_with(byte_order_mark) ? text.substr(byte_order_mark.size()) : text;
}

/// Whether the byte begins a character of UTF-8.
[[nodiscard]] constexpr bool starts_character(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }

/// Owns the texts. Views into it stay valid while the map or a copy of it lives. A copy shares the texts, so that a
/// review adds its submittal to a map of its own, beside those of other threads.
class SourceMap {
 public:
  /// `first_line`: the number of the first line, for a text that was taken out of a longer one.
  FileId add(std::string name, std::string text, std::uint32_t first_line = 1);
  [[nodiscard]] std::string_view name(FileId file) const { return files_.at(file)->name; }
  [[nodiscard]] std::string_view text(FileId file) const { return files_.at(file)->text; }
  [[nodiscard]] std::string_view text(const Span& span) const;
  /// The place of the first byte of the span; precondition: span.known().
  [[nodiscard]] Place place(const Span& span) const;
  /// The text of a line, as place() counts them, without its line end.
  [[nodiscard]] std::string_view line_text(FileId file, std::uint32_t line) const;
  /// "file:line:column", or the empty text for an unknown span.
  [[nodiscard]] std::string place_text(const Span& span) const;
  [[nodiscard]] std::size_t size() const { return files_.size(); }

 private:
  struct File {
    std::string name;
    std::string text;
    std::uint32_t first_line = 1;
    std::vector<std::uint32_t> line_starts;
  };
  std::vector<std::shared_ptr<const File>> files_;
};

}  // namespace plumbrule::source
