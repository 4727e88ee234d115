#include "show/picture/labels.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <numeric>

namespace plumbrule::picture {
namespace {

// From the blank to the tilde, in thousandths of the size: the wider of two plain fonts that are usual on Linux, DejaVu
// Sans and Liberation Sans. Computed here, with the text measuring of a browser.
// clang-format off
constexpr std::array<std::int16_t, 95> widths{
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337,
    636, 636, 636, 636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 556,
    1015, 684, 686, 722, 770, 667, 611, 778, 752, 295, 500, 667, 557, 863, 748, 787,
    667, 787, 722, 667, 611, 732, 684, 989, 685, 667, 685, 390, 337, 390, 838, 556,
    500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612,
    635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838};
// clang-format on
constexpr double wide = 1.0;
constexpr std::size_t most_kept_together = 24;  // bytes

bool continues(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U; }

double width_at(std::string_view utf8, std::size_t at) {
  const auto byte = static_cast<unsigned char>(utf8[at]);
  if (continues(utf8[at]) && at > 0) {
    return 0;  // a part of the character before
  }
  return byte >= ' ' && byte <= '~' ? widths.at(byte - ' ') / 1000.0 : wide;
}

// As many bytes as fit, whole characters only.
std::size_t fitting(std::string_view utf8, double size, double width) {
  double used = 0;
  for (std::size_t at = 0; at < utf8.size(); ++at) {
    used += width_at(utf8, at) * size;
    if (used > width) {
      return at;
    }
  }
  return utf8.size();
}

bool is_number(std::string_view word) {
  return !word.empty() && word.find_first_not_of("0123456789./") == std::string_view::npos;
}

// A number stays with the word before it and with its unit: "No. 4", "soak 1 h".
std::vector<std::string> words_of(std::string_view utf8) {
  std::vector<std::string> out;
  bool number_before = false;
  while (!utf8.empty()) {
    const std::size_t blank = std::min(utf8.find(' '), utf8.size());
    const std::string_view word = utf8.substr(0, blank);
    utf8.remove_prefix(std::min(blank + 1, utf8.size()));
    if (word.empty()) {
      continue;
    }
    const bool number = is_number(word);
    if (!out.empty() && (number || number_before) && out.back().size() + word.size() < most_kept_together) {
      out.back() += " " + std::string(word);
    } else {
      out.emplace_back(word);
    }
    number_before = number;
  }
  return out;
}

}  // namespace

double text_width(std::string_view utf8, double size) {
  double out = 0;
  for (std::size_t at = 0; at < utf8.size(); ++at) {
    out += width_at(utf8, at) * size;
  }
  return out;
}

std::string fitted(std::string_view utf8, double size, double width) {
  if (text_width(utf8, size) <= width) {
    return std::string(utf8);
  }
  std::size_t length = fitting(utf8, size, width - wide * size);
  while (length > 0 && (continues(utf8[length]) || utf8[length - 1] == ' ')) {
    --length;
  }
  return std::string(utf8.substr(0, length)) + "…";
}

std::vector<std::string> folded(std::string_view utf8, double size, double width) {
  std::vector<std::string> out(1);
  for (const std::string& word : words_of(utf8)) {
    std::string& line = out.back();
    std::string longer = line;
    longer += line.empty() ? "" : " ";
    longer += word;
    if (text_width(longer, size) <= width) {
      line = longer;
    } else if (line.empty()) {
      line = fitted(word, size, width);
    } else {
      out.push_back(fitted(word, size, width));
    }
  }
  return out;
}

bool Box::overlaps(const Box& other) const {
  return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
}

std::optional<Box> Places::take(const std::vector<Box>& choices) {
  for (const Box& box : choices) {
    const bool inside = box.left >= inside_.left && box.right <= inside_.right && box.top >= inside_.top &&
                        box.bottom <= inside_.bottom;
    if (inside && std::none_of(taken_.begin(), taken_.end(), [&box](const Box& one) { return one.overlaps(box); })) {
      taken_.push_back(box);
      return box;
    }
  }
  return std::nullopt;
}

// Labels that touch form a block, which stands where its labels wish on the average; blocks that run into each other
// are joined.
std::vector<double> spread(const std::vector<double>& wished, double height, double low, double high) {
  struct Block {
    double sum = 0;  // of what the labels wish for the first of the block
    std::size_t count = 0;
    double first = 0;
  };
  std::vector<std::size_t> order(wished.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return wished[a] < wished[b]; });
  std::vector<Block> blocks;
  const auto settle = [&](Block& block) {
    const double length = height * static_cast<double>(block.count - 1);
    const double last_place = std::max(low + height / 2, high - height / 2 - length);
    block.first = std::clamp(block.sum / static_cast<double>(block.count), low + height / 2, last_place);
  };
  for (const std::size_t at : order) {
    blocks.push_back({wished[at], 1, 0});
    settle(blocks.back());
    while (blocks.size() > 1) {
      Block& before = blocks[blocks.size() - 2];
      const double length = height * static_cast<double>(before.count);
      if (before.first + length <= blocks.back().first) {
        break;
      }
      before.sum += blocks.back().sum - length * static_cast<double>(blocks.back().count);
      before.count += blocks.back().count;
      blocks.pop_back();
      settle(blocks.back());
    }
  }
  std::vector<double> out(wished.size());
  std::size_t next = 0;
  for (const Block& block : blocks) {
    for (std::size_t at = 0; at < block.count; ++at) {
      out[order[next++]] = block.first + height * static_cast<double>(at);
    }
  }
  return out;
}

}  // namespace plumbrule::picture
