#pragma once
// Judges the records of one part of an archive after another, and counts. One worker a thread: workers share the rules
// only. What a worker writes about a record does not depend on the records that it saw before.

#include <string>
#include <vector>

#include "apply/sweep/line_reader.hpp"
#include "apply/sweep/programs.hpp"
#include "apply/sweep/tally.hpp"
#include "apply/sweep/verdict_line.hpp"
#include "judge/evidence/json.hpp"

namespace plumbrule::sweep {

/// Lines of one file that belong together.
struct Lines {
  std::string file;                // its name
  bool is_sheet = false;           // CSV; or else NDJSON
  std::string heading;             // of a sheet, without the end of the line
  std::uint32_t heading_line = 0;  // where it stands
  bool begins = false;             // a sheet: faults of its headings are reported with this part
  std::uint32_t first_line = 1;
  std::string text;  // whole lines
};

/// What a part of an archive gives: lines of verdicts, and errors with their places, both in the order of the records.
struct Written {
  std::string verdicts, errors;
  std::uint64_t records = 0, bytes = 0;
};

/// Of a record that is a file of its own.
struct Document {
  std::string file, text;
  bool is_json = false;  // or else YAML
};

class Worker {
 public:
  /// All must outlive it. `on`: the day of the review, if one is given. `in_full`: without programs, for comparison.
  Worker(const std::vector<Against>& against, const evidence::KnownNames& names, VerdictForm form,
         std::optional<std::int32_t> on, bool in_full);

  [[nodiscard]] Written run(const Lines& lines);
  [[nodiscard]] Written run(const Document& document);
  /// A file that could not be read counts as a record.
  [[nodiscard]] Written unreadable(const std::string& file, const std::string& reason);

  [[nodiscard]] const Tally& tally() {
    objects_.programs.settle(tally_.specifications);
    rows_.programs.settle(tally_.specifications);
    return tally_;
  }

 private:
  struct Sheet {
    std::string heading;
    std::optional<evidence::Headings> headings;
  };
  // Columns, and what is known of records that have them. A row has all columns of its sheet and no other, an object
  // those that it names: what one form teaches must not count for the other.
  struct Shape {
    Columns columns;
    Programs programs;
  };
  const std::vector<Against>& against_;
  const evidence::KnownNames& names_;
  std::optional<std::int32_t> on_;
  bool in_full_;
  VerdictForm form_;
  std::vector<VerdictWriter> writers_;
  Tally tally_;
  Shape objects_, rows_;
  Shape* now_ = &objects_;  // of the lines at hand
  LineReader reader_;
  evidence::JsonReader json_;
  Sheet sheet_;
  std::vector<Cell> cells_;
  Judgement judgement_;

  void line(const Lines& lines, std::string_view text, std::uint32_t number, Written& out);
  [[nodiscard]] bool quickly(const Lines& lines, std::string_view text, std::uint32_t number, Written& out);
  [[nodiscard]] bool read_cells(std::string_view text, bool is_row);
  bool learn(std::string_view text, bool is_row);
  void use_sheet(const Lines& lines, Written& out);
  [[nodiscard]] std::optional<evidence::Node> read(const Lines& lines, std::string_view text, std::uint32_t number,
                                                   source::SourceMap& sources, diagnose::Diagnostics& diagnostics);
  bool judge_all(const evidence::Node& document, const std::string& record, const source::SourceMap& sources,
                 Written& out);
  void refuse(const std::string& record, Written& out);
  [[nodiscard]] std::string_view mix() const;
};

}  // namespace plumbrule::sweep
