#pragma once
// What results and their parts are called. Internal to this folder.

#include <string>

#include "apply/followup/followup.hpp"

namespace plumbrule::followup {

using evidence::Result;

/// Case, blanks, hyphens and underscores do not tell names apart.
[[nodiscard]] std::string plain(const std::string& text);

/// A value as written, without quotes.
[[nodiscard]] std::string written(const explain::Context& context, const Span& span);
/// Conditions, design values and lot: "soak 6 d, at residual binder 7.0 %, lot 3".
[[nodiscard]] std::string placing(const explain::Context& context, const Result& result);
/// "wet-track abrasion loss, soak 6 d".
[[nodiscard]] std::string subject(const explain::Context& context, const Result& result);
/// Of what all rows of a series share: "percent passing, all rows". Of another result, its subject.
[[nodiscard]] std::string shared_subject(const explain::Context& context, const Result& result);

}  // namespace plumbrule::followup
