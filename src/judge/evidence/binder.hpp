#pragma once
// The state of one binding. Internal to this folder.

#include <initializer_list>
#include <map>
#include <string_view>

#include "judge/evidence/evidence.hpp"
#include "judge/evidence/written.hpp"

namespace plumbrule::evidence {

class Binder {
 public:
  Binder(const check::Rules& rules, const KnownNames& others, diagnose::Diagnostics& diagnostics)
      : rules_(rules), others_(others), diagnostics_(diagnostics) {
    out_.units = rules.units;
    out_.classes.resize(rules.categories.size());
  }
  std::optional<Evidence> run(const Node& document);

 private:
  const check::Rules& rules_;
  const KnownNames& others_;
  diagnose::Diagnostics& diagnostics_;
  Evidence out_;
  std::vector<std::pair<check::MeasureId, Value>> job_mix_;
  std::vector<std::string> lots_;
  std::map<std::string, Span> rows_;  // of the series that is being read
  bool rows_repeated_ = false;

  // bind.cpp
  bool version(const Node& document);
  void identity(const Node& document);
  void classes(const Node& node);
  void unknown_class(const Entry& entry);
  void job_mix(const Node& node);
  std::int32_t date(const Node* node);
  void declared(const Entry& entry, check::MeasureId measure);
  void declared_row(const Entry& entry, check::MeasureId measure);
  void add_declared(check::MeasureId measure, std::vector<ConditionStated> conditions, const Value& value);

  // bind_record.cpp
  void materials(const Node& node);
  void record(const Node& node, Result& out);
  void circumstances(const Entry& entry, check::MeasureId measure, Circumstances& out);
  void held(const Node& map, check::MeasureId measure, Circumstances& out);
  void clocks(const Node& map, check::MeasureId measure, Circumstances& out);
  std::optional<std::int32_t> time_of_day(const Node& node);
  Note note(const Node* node, const std::string& what);
  [[nodiscard]] static Note line(const Node* node);  // what is no line of text is passed over
  void materials_used(const Node& map, Result& out);

  // bind_value.cpp
  Value value(const Node& node, const check::Type& type, const std::string& what);
  Value quantity(const Node& node, const check::Type& type, const std::string& what);
  bool basis(const Node& node, const Written& written, const check::Type& type, const std::string& what);
  Value word(const Node& node, check::CategoryId category, const std::string& what);
  ConditionStated condition(const Node& node, check::ConditionId id);
  Value sieve(const Node& node);
  [[nodiscard]] std::string type_text(const check::Type& type) const;
  [[nodiscard]] static Value unusable(const Span& span) { return {Value::Kind::unusable, {}, none, span}; }
  diagnose::Diagnostic& error(diagnose::Code code, const Span& span, const std::string& message,
                              const std::string& help = {}) {
    return diagnostics_.error(code, span, message, help);
  }
  bool is_map(const Node& node, const std::string& what);
  bool is_list(const Node& node, const std::string& what);
  bool known_keys(const Node& map, std::initializer_list<std::string_view> known, const std::string& where);
  void unknown_key(const Entry& entry, const std::vector<std::string_view>& known, const std::string& what);

  // bind_result.cpp
  void results(const Node& node);
  void result(const Node& node);
  std::optional<check::MeasureId> measure(const Node& entry);
  void conditions(const Node& under, check::MeasureId measure, Result& out);
  void design(const Node& at, Result& out);
  void common(const Node& node, Result& out);
  void specimens(const Node& list, const Node* shared, Result& out);
  Specimen specimen(const Node& node, const Node* shared, check::MeasureId measure);
  void readings(const Node& map, check::MeasureId measure, Specimen& out);
  void series(const Node& list, const Node* shared, const Result& base);
  void row(const Node& node, const Node* shared, const Result& base);
  void repeated_row(const Result& row);
  void companion(const Entry& entry, check::MeasureId measure, const Result& row);
  void missing_conditions(const Result& result);
  void add(Result result);
  [[nodiscard]] check::MeasureId find_measure(std::string_view name) const;
};

/// Words of a submittal may be written with blanks, hyphens or underscores: "solid spin" is solid_spin.
[[nodiscard]] bool same_word(std::string_view written, std::string_view name);

}  // namespace plumbrule::evidence
