#pragma once
// The programs of one worker: for each set of words that flat records have in common, one for each specification.
// Which columns may hold any number is found out by binding a record with and without them.

#include <memory>
#include <string>
#include <unordered_map>

#include "apply/sweep/columns.hpp"
#include "apply/sweep/program.hpp"
#include "judge/evidence/sheet.hpp"

namespace plumbrule::sweep {

class Programs {
 public:
  /// A set of words is made ready when it comes up a second time, if not so many are yet, and remembered until then if
  /// not so many are; records with others are judged in full.
  static constexpr std::size_t most = 256;
  static constexpr std::size_t most_remembered = 4096;

  Programs(const std::vector<Against>& against, const evidence::KnownNames& names);

  /// Learns what the columns of a record are for, which was read in full without any remark; its cells are those of
  /// `columns`.
  void learn(const Columns& columns, std::span<const Cell> cells, std::vector<SpecificationTally>& tallies);

  /// Adds the margins that the programs have only counted the numbers of; as often as one likes.
  void settle(std::vector<SpecificationTally>& tallies);

  /// The programs for a record of this kind, one for each specification; nullptr if it must be judged in full.
  [[nodiscard]] std::vector<Program>* find(const Columns& columns, std::span<const Cell> cells);

 private:
  enum class Role : std::uint8_t {
    unknown,   // no record with it was seen yet
    value,     // the reported value of a result that is nothing without it
    present,   // the reported value of a result of which more is stated: whether it is there is part of the kind
    identity,  // says whose mix it is; no verdict depends on it
    day,       // a date that no clause asks for
    literal,   // anything else: its text is part of the kind
  };
  struct RecordKind {
    std::vector<Program> programs;
    std::vector<std::uint32_t> needed;  // columns whose results are not nothing without their values in this kind
    bool made = false, usable = false;
  };

  const std::vector<Against>* against_;
  const evidence::KnownNames* names_;
  bool days_matter_ = false;
  std::vector<Role> roles_;
  std::optional<evidence::Headings> headings_;
  std::unordered_map<std::string, RecordKind> kinds_;
  std::size_t made_ = 0;
  std::vector<Program::Deferred> deferred_;  // by specification
  std::string key_;

  [[nodiscard]] std::vector<std::optional<evidence::Evidence>> bound(std::span<const Cell> cells) const;
  [[nodiscard]] Role role(const std::string& heading, std::uint32_t column, std::span<const Cell> cells,
                          const std::vector<std::optional<evidence::Evidence>>& whole) const;
  [[nodiscard]] bool stands_alone(std::uint32_t column, std::span<const Cell> cells,
                                  const std::vector<std::optional<evidence::Evidence>>& whole) const;
  void forget(std::vector<SpecificationTally>& tallies);
  void make(std::span<const Cell> cells, RecordKind& out);
  /// Some number where a value is absent.
  [[nodiscard]] std::vector<Cell> with_all_values(std::span<const Cell> cells) const;
  [[nodiscard]] std::vector<Slot> slots_of(const evidence::Evidence& evidence, std::span<const Cell> cells) const;
  [[nodiscard]] bool write_key(std::span<const Cell> cells);
};

}  // namespace plumbrule::sweep
