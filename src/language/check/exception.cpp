#include "language/check/checker.hpp"

namespace plumbrule::check {
namespace {

// The classes that a list of tests leaves, category by category; a category that is not named: all words.
std::map<CategoryId, std::uint64_t> classes(const std::vector<Test>& tests) {
  std::map<CategoryId, std::uint64_t> out;
  for (const Test& test : tests) {
    const auto [at, fresh] = out.try_emplace(test.category, test.words);
    at->second &= fresh ? ~std::uint64_t{0} : test.words;
  }
  return out;
}

// Whether some submittal may belong to both.
bool overlap(const std::vector<Test>& left, const std::vector<Test>& right) {
  const auto a = classes(left);
  for (const auto& [category, words] : classes(right)) {
    const auto at = a.find(category);
    if (at != a.end() && (at->second & words) == 0) {
      return false;
    }
  }
  return true;
}

// Whether every submittal of the first belongs to the second.
bool inside(const std::vector<Test>& narrow, const std::vector<Test>& wide) {
  const auto a = classes(narrow);
  for (const auto& [category, words] : classes(wide)) {
    const auto at = a.find(category);
    if (at == a.end() || (at->second & ~words) != 0) {
      return false;
    }
  }
  return true;
}

}  // namespace

// Narrower cases come first, so that the first one that matches is the right one. Two that overlap without one being
// inside the other would leave the limit open: an error.
void Checker::order_cases(const syntax::Requirement& tree, Requirement& out) {
  std::vector<Case>& cases = out.cases;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    for (std::size_t j = i + 1; j < cases.size(); ++j) {
      const bool first = inside(cases[i].where, cases[j].where);
      const bool second = inside(cases[j].where, cases[i].where);
      if (overlap(cases[i].where, cases[j].where) && first == second) {
        auto& report = diagnostics_.error(
            diagnose::Code::case_ambiguous, cases[j].span,
            "found two exceptions of requirement `" + tree.number.value + "` that a mix may belong to at once",
            "make one of them narrower, or their classes apart");
        report.secondary.push_back({cases[i].span, "the other one"});
      }
    }
  }
  std::stable_sort(cases.begin(), cases.end(), [](const Case& left, const Case& right) {
    const auto count = [](const Case& one) {
      std::size_t words = 0;
      for (const auto& [category, mask] : classes(one.where)) {
        words += 64 - static_cast<std::size_t>(__builtin_popcountll(mask));
      }
      return words;
    };
    return count(left) > count(right);
  });
}

void Checker::exceptions(const syntax::Requirement& tree, Requirement& out) {
  if (tree.exceptions.empty()) {
    return;
  }
  const bool single =
      tree.alternatives.size() == 1 && tree.alternatives.front().limit.kind != syntax::LimitKind::grading;
  std::vector<Case> narrower;
  for (const syntax::Exception& exception : tree.exceptions) {
    Case one;
    one.span = exception.span;
    one.cite = exception.cite.given() ? exception.cite.value : tree.cite.value;
    for (const syntax::Test& test : exception.where) {
      one.where.push_back(resolve(test));
    }
    if (!overlap(one.where, out.where)) {
      error(diagnose::Code::case_unreachable, exception.span,
            "found an exception for classes that requirement `" + tree.number.value + "` does not apply to",
            "leave it out, or widen the `where` of the requirement");
    }
    if (exception.limit && !single) {
      error(diagnose::Code::clause_conflict, exception.span,
            "found another limit for a requirement with alternatives or a grading",
            "give the classes a requirement of their own");
    } else if (exception.limit) {
      syntax::Assertion assertion = tree.alternatives.front();
      assertion.limit = *exception.limit;
      one.alternatives.push_back(alternative(assertion, tree));
    }
    narrower.push_back(std::move(one));
  }
  out.cases.insert(out.cases.begin(), std::make_move_iterator(narrower.begin()),
                   std::make_move_iterator(narrower.end()));
  // The general case has no tests: every other is inside it.
  Case general = std::move(out.cases.back());
  out.cases.pop_back();
  order_cases(tree, out);
  out.cases.push_back(std::move(general));
}

}  // namespace plumbrule::check
