#pragma once
// The one place that knows in which forms a submittal comes: by the ending of its file, .json, .csv, or else YAML.

#include <optional>
#include <string>
#include <vector>

#include "base/diagnose/diagnostic.hpp"
#include "judge/evidence/document.hpp"

namespace plumbrule::command {

/// Whether files of this name are taken for submittals where a folder of them is read.
[[nodiscard]] bool is_submittal_file(const std::string& path);

/// One submittal of a file; no tree: it cannot be read, and a diagnostic says why.
struct SubmittalRecord {
  std::string name;  // the path; of a sheet of several records with "record 2" and the mix behind it
  std::string mix;
  std::optional<evidence::Node> tree;
};

/// All submittals of a file: the records of a sheet, or the one that other files hold. Without any if the file as a
/// whole cannot be read.
[[nodiscard]] std::vector<SubmittalRecord> read_records(source::SourceMap& sources, const std::string& path,
                                                        diagnose::Diagnostics& diagnostics);

/// The one submittal of a file, with a tree. `record`: its number from 1 up or its mix, where a sheet holds several,
/// and nothing if both may be meant (`number=1`, `mix=1` say which); or empty. `option` says it.
[[nodiscard]] std::optional<SubmittalRecord> read_record(source::SourceMap& sources, const std::string& path,
                                                         const std::string& record, diagnose::Diagnostics& diagnostics,
                                                         const std::string& option = "--record");

}  // namespace plumbrule::command
