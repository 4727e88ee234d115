#include "show/report/parts/text_parts.hpp"

#include "base/diagnose/quote.hpp"

namespace plumbrule::report {

std::string heading(const std::string& name, const std::string& value) {
  return value.empty()
             ? ""
             : name + std::string(name.size() < 14 ? 14 - name.size() : 1, ' ') + diagnose::printable(value) + "\n";
}

std::string detail(const std::string& name, const std::string& value) {
  return value.empty() ? "" : "      " + name + ": " + diagnose::printable(value) + "\n";
}

}  // namespace plumbrule::report
