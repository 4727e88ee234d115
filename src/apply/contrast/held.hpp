#pragma once
// One past submittal under two specifications: which of its clauses are judged otherwise. Internal to this folder.

#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "apply/contrast/filed.hpp"

namespace plumbrule::contrast {

struct Judgement {
  evaluate::Verdict verdict{};
  check::Severity severity{};
  bool optional = false;
};

struct Judged {
  evaluate::Outcome outcome{};
  std::map<std::string, Judgement> clauses;  // by number
};

[[nodiscard]] Judged judged(const assess::Assessment& assessment);

/// The numbers of clauses that are held against each other; one is empty where a clause stands on one side only.
using Clauses = std::set<std::pair<std::string, std::string>>;
[[nodiscard]] Clauses paired_clauses(const Contrast& differences);

/// Those of the clauses whose verdict differs, or what hangs on it.
[[nodiscard]] std::vector<Filed::Clause> judged_otherwise(const Judged& before, const Judged& after,
                                                          const Clauses& clauses);

}  // namespace plumbrule::contrast
