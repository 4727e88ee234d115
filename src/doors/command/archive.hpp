#pragma once
// Reads an archive part by part, so that none has to fit into memory.

#include <cstdint>
#include <cstdio>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "apply/sweep/worker.hpp"
#include "base/source/digest.hpp"

namespace plumbrule::command {

/// A file that cannot be read.
struct Unread {
  std::string file, reason;
};

/// What a worker is given at once.
using Part = std::variant<sweep::Lines, sweep::Document, Unread>;

class Archive {
 public:
  enum class Form : std::uint8_t { document, ndjson, csv };
  /// About how many bytes of lines make a part, and the longest line that is read; longer ones are cut off there and
  /// are no records, so that they are reported and the rest is read on.
  static constexpr std::size_t part_size = std::size_t{256} * 1024U;
  static constexpr std::size_t longest_line = evidence::largest_submittal + 1;

  struct Input {
    std::string name;  // "-" is standard input
    Form form{};
  };
  /// `digests`: also those of the files, in `digested`.
  Archive(std::vector<Input> inputs, bool digests);

  /// The next part, or nothing at the end. `spare`: a text that is done with, whose memory is used again.
  [[nodiscard]] std::optional<Part> next(std::string spare = {});
  struct Digested {
    std::string file, digest;  // SHA-256
  };
  /// Of the files that were read to their end.
  [[nodiscard]] const std::vector<Digested>& digested() const { return digested_; }

 private:
  struct Close {
    void operator()(std::FILE* file) const {
      if (file != stdin) {
        std::fclose(file);
      }
    }
  };
  std::vector<Input> inputs_;
  std::size_t at_ = 0;
  std::unique_ptr<std::FILE, Close> file_;
  std::string name_, rest_;  // of the file that is being read; what was read behind the last whole line
  bool is_sheet_ = false;
  std::optional<std::string> heading_;  // once it was read
  std::uint32_t heading_line_ = 0;
  bool any_ = false;  // a line that is not blank, behind the headings
  std::optional<Part> waiting_;
  std::uint32_t line_ = 1;
  bool digests_ = false;
  std::optional<source::Sha256> digest_;  // of the file of lines that is being read
  std::vector<Digested> digested_;

  [[nodiscard]] std::optional<Part> open();
  [[nodiscard]] std::optional<Part> lines(std::string text);
  bool fill(std::string& text);
  bool take_heading(std::string& text);
};

}  // namespace plumbrule::command
