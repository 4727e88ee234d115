#pragma once
// A submittal's tree as YAML text, to be read again: what a reproduction holds.

#include <string>

#include "judge/evidence/document.hpp"

namespace plumbrule::property {

[[nodiscard]] std::string write_yaml(const evidence::Node& document);

}  // namespace plumbrule::property
