#include "base/diagnose/problem.hpp"

#include <utility>

namespace plumbrule::diagnose {

std::vector<Problem> problems_of(const Diagnostics& problems, Severity severity, const source::SourceMap& sources) {
  std::vector<Problem> out;
  for (const Diagnostic& problem : problems.all()) {
    if (problem.severity == severity) {
      out.push_back({std::string(text(problem.code)), sources.place_text(problem.primary.span), problem.message,
                     problem.help, problem.primary.span});
    }
  }
  return out;
}

void Merged::add(const Diagnostics& from) {
  for (const Diagnostic& problem : from.all()) {
    const source::Span& span = problem.primary.span;
    if (seen_.emplace(problem.code, span.file, span.begin, span.end).second) {
      all_.add(problem);
    }
  }
}

Diagnostics Merged::take() {
  all_.sort_by_place();
  return std::move(all_);
}

}  // namespace plumbrule::diagnose
