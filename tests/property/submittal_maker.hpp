#pragma once
// Random submittals for a set of rules, built as trees at once: no text is written or read.

#include <span>

#include "catalog.hpp"
#include "judge/evidence/document.hpp"
#include "value_maker.hpp"

namespace plumbrule::property {

using evidence::Node;

[[nodiscard]] Node scalar(std::string text);
[[nodiscard]] Node list();
[[nodiscard]] Node map();
void put(Node& map, std::string key, Node value);

class SubmittalMaker {
 public:
  SubmittalMaker(const Catalog& catalog, const Faults& faults) : catalog_(catalog), faults_(faults) {}

  /// Everything but the results.
  [[nodiscard]] Node head(Random& random) const;
  /// One entry of `results`.
  [[nodiscard]] Node result(Random& random) const;
  /// A whole submittal: a head and a few results.
  [[nodiscard]] Node make(Random& random) const;
  /// The same, each part from its own seed, so that a failing one can be shrunk result by result.
  [[nodiscard]] Node make(std::uint64_t head_seed, std::span<const std::uint64_t> result_seeds) const;

 private:
  const Catalog& catalog_;
  Faults faults_;

  void job_mix(Random& random, ValueMaker& values, Node& out) const;
  void common(Random& random, ValueMaker& values, const Measure& measure, Node& out) const;
  void conditions(Random& random, ValueMaker& values, const Measure& measure, const Use& use, std::string_view except,
                  bool kind_in_rows, Node& out) const;
  [[nodiscard]] Node specimen(Random& random, ValueMaker& values, const Measure& measure,
                              const std::string& near) const;
  void series(Random& random, ValueMaker& values, const Measure& measure, const Use& use, const std::string& along,
              bool kind_in_rows, Node& out) const;
  void specimens(Random& random, ValueMaker& values, const Measure& measure, const Use& use, Node& out) const;
  [[nodiscard]] Use use(Random& random) const;
};

}  // namespace plumbrule::property
