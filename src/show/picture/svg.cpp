#include "show/picture/svg.hpp"

#include <array>
#include <cmath>
#include <cstdlib>

namespace plumbrule::picture {
namespace {

// The fallbacks have a contrast of at least 3 to 1 on white and on near-black ground, and differ in lightness for
// readers who do not tell red from green; computed here.
std::string_view colour(Ink ink) {
  constexpr std::array<std::string_view, 8> colours{
      "currentColor",
      "var(--picture-quiet,#808080)",
      "var(--picture-complies,#2b7bba)",
      "var(--picture-fails,#cf4a1f)",
      "var(--picture-not-shown,#8b7a2b)",
      "var(--picture-window,#2b9a80)",
      "var(--picture-tolerance,#9a6fb8)",
      "var(--picture-series,#5a7390)",
  };
  return colours.at(static_cast<std::size_t>(ink));
}

std::string attribute(std::string_view name, std::string_view value) {
  return " " + std::string(name) + "=\"" + std::string(value) + "\"";
}

std::string attribute(std::string_view name, double value) { return attribute(name, number(value)); }

std::string stroke(const Pen& pen) {
  return attribute("stroke", colour(pen.ink)) + attribute("stroke-width", pen.width) +
         (pen.dashes.empty() ? "" : attribute("stroke-dasharray", pen.dashes));
}

std::string joined(const std::vector<Point>& points) {
  std::string out;
  for (const Point& one : points) {
    out += (out.empty() ? "" : " ") + number(one.x) + "," + number(one.y);
  }
  return out;
}

constexpr std::string_view replacement = "\xEF\xBF\xBD";

/// Of a character: how many bytes it has, and what it is. No bytes: not UTF-8.
struct Character {
  std::size_t bytes = 0;
  std::uint32_t code = 0;
};

Character character(std::string_view text) {
  const auto first = static_cast<unsigned char>(text[0]);
  const std::size_t bytes = first < 0x80   ? 1
                            : first < 0xC2 ? 0
                            : first < 0xE0 ? 2
                            : first < 0xF0 ? 3
                            : first < 0xF5 ? 4
                                           : 0;
  if (bytes == 0 || bytes > text.size()) {
    return {};
  }
  std::uint32_t code = bytes == 1 ? first : first & (0x7FU >> bytes);
  for (std::size_t at = 1; at < bytes; ++at) {
    const auto next = static_cast<unsigned char>(text[at]);
    if ((next & 0xC0U) != 0x80U) {
      return {};
    }
    code = (code << 6U) | (next & 0x3FU);
  }
  constexpr std::array<std::uint32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
  return code < least.at(bytes) ? Character{} : Character{bytes, code};
}

bool harmful(std::uint32_t code) {
  const bool control = code < 0x20 || (code >= 0x7F && code < 0xA0);
  const bool turns = code == 0x061C || code == 0x200E || code == 0x200F || (code >= 0x202A && code <= 0x202E) ||
                     (code >= 0x2066 && code <= 0x2069);
  const bool none = (code >= 0xD800 && code < 0xE000) || (code & 0xFFFEU) == 0xFFFEU || code > 0x10FFFF;
  return control || turns || none;
}

std::string_view entity(std::uint32_t code) {
  switch (code) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    case '\n':
    case '\r':
    case '\t':
      return " ";
    default:
      return harmful(code) ? replacement : "";
  }
}

}  // namespace

std::string number(double value) {
  constexpr double beyond = 1e15;  // no drawing is that large
  const double hundredths = std::round(value * 100);
  if (!(std::abs(hundredths) < beyond) || hundredths == 0) {
    return "0";
  }
  std::string out = std::to_string(std::llabs(static_cast<long long>(hundredths)));
  out.insert(0, out.size() < 3 ? 3 - out.size() : 0, '0');
  out.insert(out.size() - 2, ".");
  out.erase(out.find_last_not_of('0') + 1);
  if (out.back() == '.') {
    out.pop_back();
  }
  return (hundredths < 0 ? "-" : "") + out;
}

std::string escaped(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const Character one = character(text);
    if (one.bytes == 0) {
      out += replacement;
      text.remove_prefix(1);
      continue;
    }
    const std::string_view instead = entity(one.code);
    out += instead.empty() ? text.substr(0, one.bytes) : instead;
    text.remove_prefix(one.bytes);
  }
  return out;
}

Box text_box(const Point& at, std::string_view words, double size, Anchor anchor) {
  const double width = text_width(words, size);
  const double left = anchor == Anchor::start ? at.x : anchor == Anchor::end ? at.x - width : at.x - width / 2;
  return {left, at.y - size * 0.8, left + width, at.y + size * 0.25};
}

void Drawing::line(const Point& from, const Point& to, const Pen& pen) {
  body_ += "<line" + attribute("x1", from.x) + attribute("y1", from.y) + attribute("x2", to.x) + attribute("y2", to.y) +
           stroke(pen) + "/>\n";
}

void Drawing::path(const std::vector<Point>& points, const Pen& pen) {
  body_ += "<polyline" + attribute("points", joined(points)) + attribute("fill", "none") + stroke(pen) +
           attribute("stroke-linejoin", "round") + "/>\n";
}

void Drawing::area(const std::vector<Point>& points, Ink ink, double share) {
  body_ += "<polygon" + attribute("points", joined(points)) + attribute("fill", colour(ink)) +
           attribute("fill-opacity", share) + "/>\n";
}

void Drawing::rectangle(const Box& box, Ink ink, double share) {
  body_ += "<rect" + attribute("x", box.left) + attribute("y", box.top) + attribute("width", box.right - box.left) +
           attribute("height", box.bottom - box.top) + attribute("fill", colour(ink)) +
           attribute("fill-opacity", share) + "/>\n";
}

void Drawing::outline(const Box& box, const Pen& pen) {
  body_ += "<rect" + attribute("x", box.left) + attribute("y", box.top) + attribute("width", box.right - box.left) +
           attribute("height", box.bottom - box.top) + attribute("fill", "none") + stroke(pen) + "/>\n";
}

void Drawing::text(const Point& at, std::string_view words, double size, Anchor anchor, Ink ink, bool bold) {
  constexpr std::array<std::string_view, 3> anchors{"start", "middle", "end"};
  if (words.empty()) {
    return;
  }
  body_ += "<text" + attribute("x", at.x) + attribute("y", at.y) + attribute("font-size", size) +
           (anchor == Anchor::start ? "" : attribute("text-anchor", anchors.at(static_cast<std::size_t>(anchor)))) +
           (bold ? attribute("font-weight", "bold") : "") + attribute("fill", colour(ink)) + ">" + escaped(words) +
           "</text>\n";
}

void Drawing::label(const Point& at, std::string_view words, double size) {
  body_ += "<text" + attribute("x", at.x) + attribute("y", at.y) + attribute("font-size", size) +
           attribute("fill", colour(Ink::text)) + attribute("stroke", "var(--paper,none)") +
           attribute("stroke-width", 3) + attribute("paint-order", "stroke") + attribute("stroke-linejoin", "round") +
           ">" + escaped(words) + "</text>\n";
}

void Drawing::mark(const Point& at, Verdict verdict) {
  constexpr double arm = 4;
  switch (verdict) {
    case Verdict::complies:
      dot(at, Ink::complies);
      break;
    case Verdict::fails:
      line({at.x - arm, at.y - arm}, {at.x + arm, at.y + arm}, {Ink::fails, 2.5, {}});
      line({at.x - arm, at.y + arm}, {at.x + arm, at.y - arm}, {Ink::fails, 2.5, {}});
      break;
    case Verdict::not_shown:
      body_ += "<circle" + attribute("cx", at.x) + attribute("cy", at.y) + attribute("r", arm - 0.5) +
               attribute("fill", "none") + stroke({Ink::not_shown, 1.5, {}}) + "/>\n";
      break;
    default:
      line({at.x - arm, at.y}, {at.x + arm, at.y}, {Ink::quiet, 1.5, {}});
  }
}

void Drawing::dot(const Point& at, Ink ink) {
  body_ += "<circle" + attribute("cx", at.x) + attribute("cy", at.y) + attribute("r", 4) +
           attribute("fill", colour(ink)) + "/>\n";
}

void Drawing::diamond(const Point& at, Ink ink) {
  constexpr double arm = 5;
  area({{at.x, at.y - arm}, {at.x + arm, at.y}, {at.x, at.y + arm}, {at.x - arm, at.y}}, ink, 1);
}

void Drawing::beyond(const Point& at, bool right, Ink ink) {
  const double tip = right ? at.x + 5 : at.x - 5;
  area({{at.x, at.y - 5}, {tip, at.y}, {at.x, at.y + 5}}, ink, 1);
}

std::string Drawing::finish(double height, std::string_view title, std::string_view description) const {
  return R"(<svg xmlns="http://www.w3.org/2000/svg" class="picture" role="img")" +
         attribute("viewBox", "0 0 " + number(page_width) + " " + number(height)) + attribute("width", "100%") +
         attribute("font-family", "sans-serif") + attribute("fill", "currentColor") + ">\n<title>" + escaped(title) +
         "</title>\n<desc>" + escaped(description) + "</desc>\n" + body_ + "</svg>\n";
}

std::string_view verdict_text(Verdict verdict) {
  constexpr std::array<std::string_view, 4> words{"complies", "fails", "not shown", "does not apply"};
  return words.at(static_cast<std::size_t>(verdict));
}

std::string_view style_sheet() {
  return R"(.picture { display: block; width: 100%; max-width: 34rem; height: auto; break-inside: avoid; }
:root { --picture-quiet: #6b6b6b; --picture-complies: #1f6aa5; --picture-fails: #b83a12; --picture-not-shown: #756516;
  --picture-window: #1d8068; --picture-tolerance: #8257a3; --picture-series: #46607d; }
@media screen and (prefers-color-scheme: dark) {
  :root { --picture-quiet: #9a9a9a; --picture-complies: #6db3ea; --picture-fails: #ff8a5c; --picture-not-shown: #d6c15a;
    --picture-window: #4fc3a6; --picture-tolerance: #c9a2e4; --picture-series: #a9bfd6; }
}
)";
}

}  // namespace plumbrule::picture
