#include "diagnose/diagnostic.hpp"

#include <algorithm>
#include <tuple>

namespace plumbrule::diagnose {

Diagnostic& Diagnostics::error(Code code, const source::Span& span, std::string message, std::string help) {
  all_.push_back({code, Severity::error, std::move(message), {span, {}}, {}, std::move(help)});
  return all_.back();
}

Diagnostic& Diagnostics::warning(Code code, const source::Span& span, std::string message, std::string help) {
  all_.push_back({code, Severity::warning, std::move(message), {span, {}}, {}, std::move(help)});
  return all_.back();
}

bool Diagnostics::has_errors() const {
  return std::any_of(all_.begin(), all_.end(), [](const Diagnostic& one) { return one.severity == Severity::error; });
}

void Diagnostics::append(const Diagnostics& other) {
  const std::size_t count = other.all_.size();  // `other` may be this one, so neither iterators nor a growing end
  for (std::size_t at = 0; at < count; ++at) {
    all_.push_back(other.all_[at]);
  }
}

void Diagnostics::sort_by_place() {
  std::stable_sort(all_.begin(), all_.end(), [](const Diagnostic& left, const Diagnostic& right) {
    const source::Span& a = left.primary.span;
    const source::Span& b = right.primary.span;
    return std::tie(a.file, a.begin) < std::tie(b.file, b.begin);
  });
}

}  // namespace plumbrule::diagnose
