#pragma once
// The end of every report: what it was made from, and the caution.

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "language/library/origin.hpp"

namespace plumbrule::report {

using library::aside_text;
using library::leaves_open;
using library::not_reviewed;
using library::Origin;
using library::SetAside;
using library::UsedFile;

/// Over what was set aside: "Not in force on 2026-01-01, and set aside".
[[nodiscard]] std::string aside_heading(const Origin& origin);

/// The end of every text report: the caution, then the files.
[[nodiscard]] std::string closing_text(const Origin& origin);
[[nodiscard]] std::string closing_markdown(const Origin& origin);
/// The same as comments of a rule file.
[[nodiscard]] std::string closing_comments(const Origin& origin);
/// Adds `caution`, `program`, `files`, and `set_aside` if there is any, to a JSON report.
void close_json(nlohmann::ordered_json& report, const Origin& origin);

}  // namespace plumbrule::report
