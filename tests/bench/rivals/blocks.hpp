// A text file in blocks of whole lines, each with the padding behind it that simdjson reads into.
#pragma once

#include <cstdio>
#include <memory>
#include <string>
#include <vector>

#include <simdjson.h>

namespace plumbrule::bench {

/// Throws std::runtime_error when the file cannot be read or a line is longer than a block.
class Blocks {
 public:
  explicit Blocks(const std::string& path);

  /// The next block, valid until the next call; empty at the end of the file. The bytes behind it may be read.
  simdjson::padded_string_view next();

 private:
  struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
  };

  std::unique_ptr<std::FILE, Close> file_;
  std::vector<char> bytes_;
  std::size_t filled_ = 0;  // bytes read
  std::size_t given_ = 0;   // of these given out; what is left is the beginning of a line
};

}  // namespace plumbrule::bench
