#pragma once
// The rules as written, found by name: nothing is resolved, compiled or numbered. The trees must outlive it.

#include <map>
#include <string>
#include <vector>

#include "base/quantity/unit.hpp"
#include "language/syntax/tree.hpp"

namespace plumbrule::oracle {

/// A measure and the file in which its formulas stand.
struct MeasureOf {
  const syntax::Measure* tree = nullptr;
  const syntax::RuleFile* file = nullptr;
};

class Rulebook {
 public:
  /// The specification first, then its vocabularies; amendments are already applied.
  Rulebook(const source::SourceMap& sources, const std::vector<syntax::RuleFile>& files);

  [[nodiscard]] const syntax::Specification& specification() const { return *specification_; }
  [[nodiscard]] const std::vector<const syntax::Requirement*>& requirements() const { return requirements_; }
  [[nodiscard]] const syntax::Measure* measure(const std::string& name) const;
  [[nodiscard]] const syntax::RuleFile& file_of(const std::string& measure) const {
    return *measures_.at(measure).file;
  }
  [[nodiscard]] const syntax::Condition& condition(const std::string& name) const { return *conditions_.at(name); }
  [[nodiscard]] const syntax::Category* category(const std::string& name) const;
  [[nodiscard]] const syntax::Table* table(const std::string& name) const;
  [[nodiscard]] const syntax::Grading& grading(const std::string& name) const { return *gradings_.at(name); }
  [[nodiscard]] const syntax::Term* term(const std::string& name) const;
  /// As written in the file: "9.5 mm", "No. 4".
  [[nodiscard]] std::string_view written(const source::Span& span) const { return sources_.text(span); }

 private:
  const source::SourceMap& sources_;
  const syntax::Specification* specification_ = nullptr;
  std::vector<const syntax::Requirement*> requirements_;
  std::map<std::string, MeasureOf> measures_;
  std::map<std::string, const syntax::Condition*> conditions_;
  std::map<std::string, const syntax::Category*> categories_;
  std::map<std::string, const syntax::Table*> tables_;
  std::map<std::string, const syntax::Grading*> gradings_;
  std::map<std::string, const syntax::Term*> terms_;
};

/// Units by their written text; conversion by way of the quantity stage.
class Units {
 public:
  [[nodiscard]] quantity::UnitId of(const syntax::WrittenUnit& written) {
    return !written.span.known() || written.text == "number" ? quantity::UnitTable::number : *table_.find(written.text);
  }
  [[nodiscard]] quantity::Decimal convert(const quantity::Decimal& value, quantity::UnitId from,
                                          quantity::UnitId to) const {
    return quantity::convert(value, table_.at(from), table_.at(to));
  }
  [[nodiscard]] quantity::UnitTable& table() { return table_; }

 private:
  quantity::UnitTable table_;
};

}  // namespace plumbrule::oracle
