#pragma once
// What a report was made from, so that it can be made again years later: the program, and every file with its digest.

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

namespace plumbrule::report {

/// A file that entered the report.
struct UsedFile {
  std::string path;    // as it was named, or found
  std::string kind;    // "submittal", "specification", "vocabulary", "amendment", or of a sweep archive_kind
  std::string digest;  // SHA-256 of its bytes as they were read, 64 hexadecimal digits
};

inline constexpr const char* archive_kind = "archive";

struct Origin {
  std::string version;  // of the program
  std::vector<UsedFile> files;
};

/// The end of every text report: the caution, then the files.
[[nodiscard]] std::string closing_text(const Origin& origin);
[[nodiscard]] std::string closing_markdown(const Origin& origin);
/// The same as comments of a rule file.
[[nodiscard]] std::string closing_comments(const Origin& origin);
/// Adds `caution`, `program` and `files` to a JSON report.
void close_json(nlohmann::ordered_json& report, const Origin& origin);

}  // namespace plumbrule::report
