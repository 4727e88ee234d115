#include "masks.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

#include "show/report/review/report.hpp"

namespace plumbrule::cases {
namespace {

/// What a mask takes: so many bytes of the text, and what stands for them. No bytes: nothing.
struct Masked {
  std::size_t length = 0;
  std::string shown;
};

Masked digest_of(std::string_view text) {
  constexpr std::size_t length = 64;
  constexpr std::string_view break_mark = "<wbr>";  // where HTML may break it
  constexpr std::array<std::string_view, 3> marks{"sha256:", R"("sha256": ")", R"("sha-256": ")"};
  const auto* const mark =
      std::find_if(marks.begin(), marks.end(), [&](std::string_view one) { return text.starts_with(one); });
  if (mark == marks.end()) {
    return {};
  }
  std::string digest(text.substr(mark->size(), length));
  const std::size_t joint = digest.find(break_mark);
  const std::size_t marked = joint == std::string::npos ? 0 : break_mark.size();
  if (marked > 0) {
    digest = std::string(text.substr(mark->size(), length + marked)).erase(joint, marked);
  }
  const bool whole = digest.size() == length && digest.find_first_not_of("0123456789abcdef") == std::string::npos;
  return whole ? Masked{mark->size() + length + marked, std::string(*mark) + "<digest>"} : Masked{};
}

/// The length of a number of three parts, as "0.1.0", that starts the text; 0 when there is none.
std::size_t version_length(std::string_view text) {
  std::size_t at = 0;
  for (int part = 0; part < 3; ++part) {
    if (part > 0 && (at >= text.size() || text[at++] != '.')) {
      return 0;
    }
    const std::size_t end = std::min(text.find_first_not_of("0123456789", at), text.size());
    if (end == at) {
      return 0;
    }
    at = end;
  }
  return at;
}

Masked version_of(std::string_view text) {
  constexpr std::string_view name = "plumbrule ";
  constexpr std::string_view driver = "\"name\": \"plumbrule\",";  // of SARIF, whose next line has the version
  constexpr std::string_view label = "\"version\": \"";
  std::size_t begin = 0;
  if (text.starts_with(name)) {
    begin = name.size();
  } else if (text.starts_with(driver)) {
    begin = std::min(text.find_first_not_of(" \n", driver.size()), text.size());
    begin = text.substr(begin).starts_with(label) ? begin + label.size() : 0;
  }
  const std::size_t length = begin == 0 ? 0 : version_length(text.substr(begin));
  return length == 0 ? Masked{} : Masked{begin + length, std::string(text.substr(0, begin)) + "<version>"};
}

Masked caution_of(std::string_view text) {
  std::size_t at = 0;
  for (const char wanted : report::caution) {
    if (at >= text.size() || (text[at] != wanted && !(wanted == ' ' && text[at] == '\n'))) {
      return {};
    }
    ++at;
  }
  return {at, "<caution>"};
}

}  // namespace

std::string masked(std::string_view text) {
  const std::string starts = std::string("s\"p") + report::caution.front();  // what a masked text can start with
  std::string result;
  while (!text.empty()) {
    Masked found = digest_of(text);
    for (const auto mask : {version_of, caution_of}) {
      found = found.length == 0 ? mask(text) : found;
    }
    result += found.shown;
    text.remove_prefix(found.length);
    if (found.length == 0) {
      const std::size_t plain = std::min(text.find_first_of(starts, 1), text.size());
      result += text.substr(0, plain);
      text.remove_prefix(plain);
    }
  }
  return result;
}

}  // namespace plumbrule::cases
