#pragma once
// Texts inside Markdown, for reports that are pasted into a letter or an issue.

#include <string>
#include <string_view>

namespace plumbrule::report {

/// A text on one line in which no sign has a meaning for Markdown or HTML, no name calls anybody (`@`), and no address
/// becomes a link. Control characters and marks that turn the direction of writing become a replacement mark.
[[nodiscard]] std::string markdown_text(std::string_view text);

}  // namespace plumbrule::report
