#pragma once
// Parts that several HTML pages share beside those of html.hpp. Internal to this folder.

#include "show/picture/picture.hpp"
#include "show/report/parts/html.hpp"
#include "show/report/review/pictures.hpp"

namespace plumbrule::report {

/// Edition, agency, status, source, amendments and file of a specification.
[[nodiscard]] std::vector<Fact> head_facts(const explain::SpecificationHead& one);
/// The drawing alone.
[[nodiscard]] Markup drawn(const picture::Picture& picture);
/// A drawing with its caption, and the table of the same facts on demand.
[[nodiscard]] Markup figure(const picture::Picture& picture);
/// The pictures of one specification side by side under a heading; nothing without any.
[[nodiscard]] Markup gallery(const std::string& specification, const std::vector<Placed>& drawings);
/// Errors of a submittal; nothing without any.
[[nodiscard]] Markup problem_table(const std::string& caption, const std::vector<Problem>& problems,
                                   const std::string& grade = "Error");
/// A derivation, indented, on demand; nothing without steps.
[[nodiscard]] Markup derivation(std::string_view summary, const std::vector<explain::Line>& lines);
/// A text with the place where it is written behind it.
[[nodiscard]] Markup with_place(std::string_view text, const std::string& place);
/// Texts one below the other, one alone as it is; nothing without any.
[[nodiscard]] Markup text_list(const std::vector<std::string>& texts);

}  // namespace plumbrule::report
