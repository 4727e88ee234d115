#pragma once
// Short forms for a terminal: one line a clause with a bar, and what must be done next. Everything else stands in the
// whole text, which a program or a file gets.

#include <string>

#include "show/report/review/report.hpp"
#include "show/report/window/window.hpp"

namespace plumbrule::report {

/// `width`: of the terminal, in characters; below 72 a clause takes two lines and has no bar.
[[nodiscard]] std::string glance(const Report& report, std::size_t width, bool colour);
[[nodiscard]] std::string glance(const Windows& report, std::size_t width, bool colour);

}  // namespace plumbrule::report
