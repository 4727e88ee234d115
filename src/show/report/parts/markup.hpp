#pragma once
// HTML from templates with named holes. A template is a plain file of src/show/report/templates, embedded by CMake as a
// constant; a hole is written [[name]]. A text that fills a hole is escaped by its type: only Markup goes in as it is,
// and Markup comes from a filled template, from an escaped text or from a drawing. Which holes a template has, that
// each is filled once, and that none stands where an escaped text could do harm is checked by the compiler.

#include <array>
#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

namespace plumbrule::report {

/// The text of a file of src/show/report/templates. Constants of this type stand in <report_templates.hpp>, written by
/// CMake.
struct Template {
  std::string_view text;
};

/// HTML that is safe to put into a page.
class Markup {
 public:
  Markup() = default;
  /// What the picture stage drew: it escapes the texts of its drawings. For nothing else (tests/layout holds that).
  [[nodiscard]] static Markup of_drawing(std::string svg) { return Markup(std::move(svg)); }

  [[nodiscard]] const std::string& html() const { return html_; }
  [[nodiscard]] bool empty() const { return html_.empty(); }
  Markup& operator+=(const Markup& other) {
    html_ += other.html_;
    return *this;
  }

 private:
  explicit Markup(std::string html) : html_(std::move(html)) {}
  std::string html_;
  friend Markup escaped(std::string_view text);
  friend Markup breakable(const Markup& markup);
  friend Markup pour(std::string_view text, std::initializer_list<std::pair<std::string_view, const Markup*>> holes);
};

/// A text as HTML, for element content and quoted attributes. Line ends and tabs become blanks; other control
/// characters, marks that turn the direction of writing and bytes that are not UTF-8 become a replacement mark.
[[nodiscard]] Markup escaped(std::string_view text);

/// The same text, which may break over lines where a reader would break it: long words behind one of / _ -, parts that
/// are long still behind . and :, and only without those every few letters; and never between a number and its %.
/// Drawings and digests stay as they are.
[[nodiscard]] Markup breakable(const Markup& markup);
/// The same, behind a page that is being written.
void append_breakable(std::string& page, const Markup& markup);

/// The name of a hole, as an argument of a template.
template <std::size_t Size>
struct HoleName {
  std::array<char, Size> text{};
  consteval HoleName(const char (&from)[Size]) {  // NOLINT: a literal is meant to be taken for a name
    for (std::size_t at = 0; at < Size; ++at) {
      text.at(at) = from[at];
    }
  }
  [[nodiscard]] constexpr std::string_view view() const { return {text.data(), Size - 1}; }
};

/// What goes into the hole of that name.
template <HoleName name>
struct Hole {
  static constexpr std::string_view key = name.view();
  Markup value;
};
template <HoleName name>
[[nodiscard]] Hole<name> hole(std::string_view text) {
  return {escaped(text)};
}
template <HoleName name>
[[nodiscard]] Hole<name> hole(Markup markup) {
  return {std::move(markup)};
}

/// Whether each hole of the text is among the keys and each key among the holes, once.
[[nodiscard]] constexpr bool complete(std::string_view text, std::initializer_list<std::string_view> keys) {
  for (std::size_t at = text.find("[["); at != std::string_view::npos; at = text.find("[[", at + 2)) {
    const std::string_view key = text.substr(at + 2, text.find("]]", at) - at - 2);
    std::size_t count = 0;
    for (const std::string_view one : keys) {
      count += one == key ? 1U : 0U;
    }
    if (count != 1) {
      return false;
    }
  }
  for (const std::string_view one : keys) {
    bool found = false;
    for (std::size_t at = text.find("[["); at != std::string_view::npos; at = text.find("[[", at + 2)) {
      found = found || text.substr(at + 2, text.find("]]", at) - at - 2) == one;
    }
    if (!found) {
      return false;
    }
  }
  return true;
}

/// Whether a text may stand as the value of the attribute: it is no link, no style and no script. `begun`: what of the
/// value stands before the hole.
[[nodiscard]] constexpr bool harmless_attribute(std::string_view name, std::string_view begun) {
  constexpr std::array<std::string_view, 6> known{"class",      "id",         "aria-labelledby",
                                                  "aria-label", "data-label", "colspan"};
  for (const std::string_view one : known) {
    if (name == one) {
      return true;
    }
  }
  return name == "href" && !begun.empty() && begun.front() == '#';
}

/// Whether every hole stands in the content of an element or in a harmless attribute in double quotes.
[[nodiscard]] constexpr bool sound(std::string_view text) {
  const bool has_holes = text.find("[[") != std::string_view::npos;
  bool in_tag = false;
  std::size_t value = std::string_view::npos;  // where the attribute's value begins, inside its quotes
  std::string_view name;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool in_value = value != std::string_view::npos;
    const std::string_view rest = text.substr(at);
    if (rest.starts_with("[[") &&
        (in_tag && (!in_value || !harmless_attribute(name, text.substr(value, at - value))))) {
      return false;
    }
    if (has_holes && !in_tag &&
        (rest.starts_with("<style") || rest.starts_with("<script") || rest.starts_with("<!--"))) {
      return false;
    }
    if (in_value) {
      value = text[at] == '"' ? std::string_view::npos : value;
    } else if (in_tag && text[at] == '"') {
      const std::size_t end = at - 1;  // the sign of equality
      const std::size_t begin = text.substr(0, end).find_last_of(" \n") + 1;
      name = text.substr(begin, end - begin);
      value = at + 1;
    } else if (in_tag) {
      in_tag = text[at] != '>';
    } else {
      in_tag = text[at] == '<';
    }
  }
  return !in_tag;
}

/// The text with its holes filled. Use `fill`, which checks that it can be.
[[nodiscard]] Markup pour(std::string_view text,
                          std::initializer_list<std::pair<std::string_view, const Markup*>> holes);

/// The template with its holes filled. Does not compile if a hole is missing, unknown or given twice.
template <const Template& page, typename... Holes>
[[nodiscard]] Markup fill(const Holes&... holes) {
  static_assert(complete(page.text, {Holes::key...}), "the holes given are not those of the template");
  static_assert(sound(page.text), "a hole stands where an escaped text could do harm");
  return pour(page.text, {{Holes::key, &holes.value}...});
}

/// A template in two pieces, about a hole that is filled later and bit by bit, so that what goes in is not held twice.
struct Frame {
  Markup before, after;
};
[[nodiscard]] Frame pour_around(std::string_view text, std::string_view gap,
                                std::initializer_list<std::pair<std::string_view, const Markup*>> holes);

/// The same checks as of `fill`; the gap stands in the template once.
template <const Template& page, HoleName gap, typename... Holes>
[[nodiscard]] Frame frame(const Holes&... holes) {
  static_assert(complete(page.text, {gap.view(), Holes::key...}), "the holes given are not those of the template");
  static_assert(sound(page.text), "a hole stands where an escaped text could do harm");
  return pour_around(page.text, gap.view(), {{Holes::key, &holes.value}...});
}

}  // namespace plumbrule::report
