#pragma once
// One demand against the trials of a submittal. Internal to this folder.

#include "judge.hpp"

namespace plumbrule::oracle {

/// Of demands that must all hold: one that fails decides, else one that is not shown.
void also(Judged& whole, const Judged& part);

/// A value as it was compared, and the sample of aggregate that it belongs to.
struct Compared {
  std::string sample;
  Interval amount;
};

class TrialJudge {
 public:
  TrialJudge(const Rulebook& book, Units& units, const Record& record, Lost& lost)
      : units_(units), record_(record), values_(book, units, record, lost), lost_(lost) {}

  [[nodiscard]] Judged demand(const Demand& demand, const std::optional<syntax::Validity>& validity);
  /// What the last demand compared.
  [[nodiscard]] const std::vector<Compared>& compared() const { return compared_; }
  /// Whether one thing only can be the reason for the answer to the last demand.
  [[nodiscard]] bool single() const { return single_; }

 private:
  Units& units_;
  const Record& record_;
  Valuer values_;
  Lost& lost_;
  std::vector<Compared> compared_;
  std::string sample_;
  bool single_ = true;

  /// How a trial stands to a demand: the reason why it is not about it; none: it is.
  [[nodiscard]] Why apart(const Demand& demand, const Trial& trial, const std::optional<syntax::Validity>& validity);
  [[nodiscard]] Why age(const Trial& trial, const std::optional<syntax::Validity>& validity) const;
  [[nodiscard]] static Why conditions(const Demand& demand, const Conditions& stated);

  [[nodiscard]] Judged trial(const Demand& demand, const Trial& trial);
  [[nodiscard]] Judged trials(const Demand& demand, const std::vector<const Trial*>& all);
  [[nodiscard]] Judged lots(const Demand& demand, const std::vector<const Trial*>& all);
  [[nodiscard]] Judged words(const Demand& demand, const Trial& trial);
  [[nodiscard]] Judged reported(const Demand& demand, const Trial& trial);
  [[nodiscard]] Value own_value(const Demand& demand, const Trial& trial);
  [[nodiscard]] Why samples(const Demand& demand, const Trial& trial, std::vector<Interval>& out);
  [[nodiscard]] Interval converted(const Demand& demand, const Value& value);
  [[nodiscard]] Judged each(const Demand& demand, const std::vector<Interval>& values, Why missing);
  [[nodiscard]] Judged statistic(const Demand& demand, const std::vector<Interval>& values, Why missing);
  [[nodiscard]] Judged compare(const Demand& demand, const Interval& value);
  [[nodiscard]] Judged tolerance(const Demand& demand, const Interval& value);
};

}  // namespace plumbrule::oracle
