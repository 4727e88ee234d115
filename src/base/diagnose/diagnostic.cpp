#include "base/diagnose/diagnostic.hpp"

#include <algorithm>
#include <tuple>

#include "base/diagnose/quote.hpp"

namespace plumbrule::diagnose {

// The user's text inside a message is never longer, whatever a file holds.
static constexpr std::size_t longest_quote = 64;

Diagnostic& Diagnostics::error(Code code, const source::Span& span, const std::string& message,
                               const std::string& help) {
  all_.push_back(
      {code, Severity::error, short_quotes(message, longest_quote), {span, {}}, {}, short_quotes(help, longest_quote)});
  return all_.back();
}

Diagnostic& Diagnostics::warning(Code code, const source::Span& span, const std::string& message,
                                 const std::string& help) {
  all_.push_back({code,
                  Severity::warning,
                  short_quotes(message, longest_quote),
                  {span, {}},
                  {},
                  short_quotes(help, longest_quote)});
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
