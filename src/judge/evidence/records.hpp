#pragma once
// The one place that knows in which forms a submittal comes: by the ending of its file, .json, .csv, or else YAML.

#include <optional>
#include <string>
#include <vector>

#include "base/diagnose/diagnostic.hpp"
#include "base/source/files.hpp"
#include "judge/evidence/document.hpp"

namespace plumbrule::evidence {

/// Whether files of this name are taken for submittals where a folder of them is read.
[[nodiscard]] bool is_submittal_file(const std::string& path);

/// One submittal of a file; no tree: it cannot be read, and a diagnostic says why.
struct SubmittalRecord {
  std::string name;  // the path; of a sheet of several records with "record 2" and the mix behind it
  std::string mix;
  std::optional<Node> tree;
};

/// All submittals of a text that stands in `sources`: the records of a sheet, or the one that other files hold. Without
/// any if the text as a whole cannot be read. What its name ends in says which form it has.
[[nodiscard]] std::vector<SubmittalRecord> read_records(const source::SourceMap& sources, source::FileId file,
                                                        diagnose::Diagnostics& diagnostics);

/// The same of a file, which is added to `sources`.
[[nodiscard]] std::vector<SubmittalRecord> read_records(const source::Files& files, source::SourceMap& sources,
                                                        const std::string& path, diagnose::Diagnostics& diagnostics);

/// Which of several submittals is wanted: its number from 1 up or its mix, and nothing if both may be meant
/// (`number=1`, `mix=1` say which); or empty. `option`: what the one who asked calls the choice.
struct RecordChoice {
  std::string record, option = "--record";
};

/// The one submittal that is wanted, with a tree.
[[nodiscard]] std::optional<SubmittalRecord> read_record(const source::SourceMap& sources, source::FileId file,
                                                         const RecordChoice& choice,
                                                         diagnose::Diagnostics& diagnostics);
[[nodiscard]] std::optional<SubmittalRecord> read_record(const source::Files& files, source::SourceMap& sources,
                                                         const std::string& path, const RecordChoice& choice,
                                                         diagnose::Diagnostics& diagnostics);

}  // namespace plumbrule::evidence
