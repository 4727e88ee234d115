#include "spoiler.hpp"

#include <array>

#include "record_maker.hpp"

namespace plumbrule::bench {
namespace {

// The record with a further member at its end.
std::string with_member(const std::string& line, std::string_view member, Draws& /*draws*/) {
  return line.substr(0, line.size() - 1).append(1, ',').append(member).append(1, '}');
}

std::string inside_mix(const std::string& line, std::string_view bytes, Draws& /*draws*/) {
  return std::string(line).insert(std::string_view(R"({"mix":"M-)").size(), bytes);
}

std::string cut_short(const std::string& line, std::string_view /*text*/, Draws& draws) {
  return line.substr(0, 1 + draws.below(line.size() - 1));
}

std::string in_place(const std::string& /*line*/, std::string_view text, Draws& /*draws*/) { return std::string(text); }

std::string twice(const std::string& line, std::string_view /*text*/, Draws& /*draws*/) { return line + line; }

struct Way {
  std::string_view kind;
  std::string (*make)(const std::string& line, std::string_view text, Draws& draws);
  std::string_view text;  // what is put into the line, or in its place
};

// clang-format off
constexpr std::array<Way, 10> ways{{
    {"truncated",     cut_short,   ""},
    {"utf8",          inside_mix,  "\xFF\xFE"},
    {"control",       inside_mix,  std::string_view("\0", 1)},
    {"word",          with_member, R"("classes; course":"topmost")"},
    {"number",        with_member, "\"consistency (cm)\":\"2.l5\""},
    {"not-a-number",  with_member, "\"consistency (cm)\":2.5.1"},
    {"no-json",       in_place,    "see the sheet of Tuesday"},
    {"duplicate",     with_member, R"("mix":"M-X")"},
    {"heading",       with_member, "\"abrasion_los; soak 1 h (g/m2)\":412.5"},
    {"two-on-a-line", twice,       ""},
}};
// clang-format on

}  // namespace

std::optional<Spoiled> spoil(std::uint64_t seed, std::uint64_t number, const std::string& line) {
  Draws draws = draws_for(~seed, number);
  if (draws.below(100) != 0) {
    return std::nullopt;
  }
  const Way& way = ways.at(draws.below(ways.size()));
  return Spoiled{way.kind, way.make(line, way.text, draws)};
}

}  // namespace plumbrule::bench
