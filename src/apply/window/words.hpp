#pragma once
// Parts of a window's sentences. Internal to this folder.

#include "apply/window/report.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::window {

/// Draws on one window.
class Words {
 public:
  Words(const explain::Context& context, const Window& window) : context_(context), window_(window) {}

  /// A value of the variable.
  [[nodiscard]] Number number(const Decimal& value) const;
  /// A difference of two values of it.
  [[nodiscard]] Number difference(const Decimal& value) const;
  /// A compared value of a check, with its unit.
  [[nodiscard]] std::string value(std::uint32_t check, const Decimal& value) const;
  [[nodiscard]] const check::Requirement& requirement(const Clause& clause) const;
  /// "512.3.1 Abrasion loss".
  [[nodiscard]] std::string name(const Clause& clause) const;
  [[nodiscard]] std::string names(const std::vector<std::size_t>& clauses) const;
  [[nodiscard]] const check::Assertion& assertion(const Clause& clause, std::uint32_t check) const;
  /// "at most 538.5 g/m2": the limit with its rounding folded in.
  [[nodiscard]] std::string threshold(std::uint32_t check, const quantity::Threshold& threshold, bool high) const;
  [[nodiscard]] std::string thresholds(const Series& series) const;
  [[nodiscard]] LimitEnd limit_end(const check::Assertion& demanded, std::uint32_t check,
                                   const quantity::Threshold& threshold, bool high) const;
  /// The unit in which a check compares.
  [[nodiscard]] std::string unit(std::uint32_t check) const;
  /// Whether the threshold says more than the limit as written.
  [[nodiscard]] static bool folded(const check::Limit& limit);
  /// "from 7.3 to 9", "at 7 alone", "above 6 to 9".
  [[nodiscard]] std::string stretch(const Stretch& stretch) const;
  [[nodiscard]] std::string stretches(const Profile& profile) const;
  /// The compared values of a reading; empty if they are not exact.
  [[nodiscard]] std::string compared(std::uint32_t check, const Reading& reading) const;
  [[nodiscard]] ReadingReport reading(std::uint32_t check, const Reading& reading) const;

  /// The two tested points, the limit and the formula behind a value at which a clause meets its limit.
  [[nodiscard]] std::vector<Line> derivation(const Clause& clause, const Decimal& at) const;

  [[nodiscard]] const explain::Context& context() const { return context_; }
  [[nodiscard]] const Window& window() const { return window_; }

 private:
  const explain::Context& context_;
  const Window& window_;
};

[[nodiscard]] std::vector<std::string> cautions(const Words& words);
[[nodiscard]] std::vector<ChangeReport> changes(const Words& words);
[[nodiscard]] std::vector<CurveReport> curves(const Words& words);

/// With a decimal point and without zeros behind.
[[nodiscard]] std::string plain(const Decimal& value);

}  // namespace plumbrule::window
