#pragma once
// Which branches of a specification its examples reach, read from the traces.

#include <set>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "judge/evaluate/evaluate.hpp"
#include "language/library/rule_set.hpp"

namespace plumbrule::proof {

/// The branches of a requirement: it complies and it fails; each exception is taken; each alternative complies, if
/// there are several; it does not apply, if it has a `where` or an exception that frees a class.
class Coverage {
 public:
  explicit Coverage(const library::RuleSet& set);
  void add(const evaluate::Review& review);
  [[nodiscard]] std::size_t branches() const { return all_.size(); }
  /// In words, in the order of the clauses: "512.3.4 fails".
  [[nodiscard]] std::vector<std::string> missed() const;

 private:
  enum class Kind : std::uint8_t { complies, fails, does_not_apply, exception, alternative };
  struct Branch {
    std::uint32_t requirement = 0;
    Kind kind{};
    std::uint32_t index = 0;  // of the case or group in the plan
    friend bool operator<(const Branch& left, const Branch& right) {
      return std::tie(left.requirement, left.kind, left.index) < std::tie(right.requirement, right.kind, right.index);
    }
  };
  const library::RuleSet& set_;
  std::vector<Branch> all_;
  std::set<Branch> reached_;

  void requirement(std::uint32_t index);
  [[nodiscard]] std::string text(const Branch& branch) const;
};

}  // namespace plumbrule::proof
