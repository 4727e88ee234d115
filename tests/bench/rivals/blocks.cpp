#include "blocks.hpp"

#include <algorithm>
#include <stdexcept>

namespace plumbrule::bench {
namespace {

constexpr std::size_t block_size = 1U << 20U;  // fits the second cache, large enough to make calls few

}  // namespace

Blocks::Blocks(const std::string& path)
    : file_(std::fopen(path.c_str(), "rb")), bytes_(block_size + simdjson::SIMDJSON_PADDING) {
  if (!file_) {
    throw std::runtime_error("cannot read " + path);
  }
  std::setvbuf(file_.get(), nullptr, _IONBF, 0);
}

simdjson::padded_string_view Blocks::next() {
  std::copy(bytes_.begin() + static_cast<std::ptrdiff_t>(given_), bytes_.begin() + static_cast<std::ptrdiff_t>(filled_),
            bytes_.begin());
  filled_ -= given_;
  const std::size_t read = std::fread(bytes_.data() + filled_, 1, block_size - filled_, file_.get());
  filled_ += read;
  given_ = filled_;
  if (read != 0) {
    while (given_ > 0 && bytes_[given_ - 1] != '\n') {
      --given_;
    }
    if (given_ == 0) {
      throw std::runtime_error("a line is longer than a block");
    }
  }
  return simdjson::padded_string_view(bytes_.data(), given_, bytes_.size());
}

}  // namespace plumbrule::bench
