#pragma once
// The state of one inspection, and the kinds of finding. Internal to this folder.

#include <optional>

#include "judge/audit/audit.hpp"

namespace plumbrule::audit {

using evidence::Result;
using evidence::Specimen;
using evidence::Value;
using quantity::Decimal;
using source::Span;

/// The values of the specimens of a result in the measure's unit; empty unless every one of them is known exactly.
struct Replicates {
  std::vector<Decimal> values;
  Decimal mean;
};

class Inspector {
 public:
  Inspector(const explain::Context& context, Inspection& out)
      : context_(context), rules_(context.rules), plan_(context.plan), evidence_(context.evidence), out_(out) {}
  void run();

 private:
  const explain::Context& context_;
  const check::Rules& rules_;
  const plan::Plan& plan_;
  const evidence::Evidence& evidence_;
  Inspection& out_;

  struct Demand {
    const plan::Check* check = nullptr;
    const plan::Requirement* requirement = nullptr;
    bool tested = false;  // some result at the job mix stands under all of its conditions
  };
  std::vector<Demand> demands_;  // of the requirements that apply, those that were judged

  Finding& add(diagnose::Code code, const Span& place, const std::string& found, const std::string& expected,
               const std::string& look = {}) {
    out_.findings.push_back({code, place, found, expected, look, {}});
    return out_.findings.back();
  }
  [[nodiscard]] const check::Measure& measure(const Result& result) const { return rules_.measures[result.measure]; }
  [[nodiscard]] std::string name(const Result& result) const;
  /// A value in the unit of the measure, in words.
  [[nodiscard]] std::string shown(const Result& result, const Decimal& value, quantity::UnitId unit) const;
  [[nodiscard]] std::string shown(const Result& result, const Decimal& value) const;
  [[nodiscard]] Decimal in_unit(const quantity::Amount& amount, quantity::UnitId unit) const;
  [[nodiscard]] static bool exact(const Value& value);

  // inspector.cpp
  void find_demands();
  [[nodiscard]] bool stands_as_asked(const plan::Check& check, const Result& result) const;
  [[nodiscard]] std::optional<Replicates> replicates(const Result& result) const;

  // reported.cpp
  void reported(const Result& result, const Replicates& replicates);
  void pair(const Result& result);
  void declared(const Result& result);

  // specimens.cpp
  void refused(const Result& result);
  bool swapped(const Result& result, std::uint32_t specimen, const std::string& because);
  void too_few(const Result& result);
  void miscounted(const Result& result);
  void fewer_than_others();
  void spread(const Result& result, const Replicates& replicates);
  void outlier(const Result& result, const Replicates& replicates);
  void duplicates();

  // circumstances.cpp
  void circumstances(const Result& result);
  void held(const Result& result, const evidence::Circumstances& all);
  void clock(const Result& result, const evidence::Circumstances& all);
  void near_miss(const Result& result);
  void dates(const Result& result);
  void too_old(const Result& result);

  // sources.cpp
  void materials(const Result& result);
  void certificates();
  void gradings();
};

}  // namespace plumbrule::audit
