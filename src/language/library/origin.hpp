#pragma once
// What a report was made from, so that it can be made again years later: the program, and every file with its digest.

#include <span>
#include <string>
#include <vector>

#include "base/source/source.hpp"

namespace plumbrule::library {

struct RuleSet;

/// A file that entered the report.
struct UsedFile {
  std::string path;    // as it was named, or found
  std::string kind;    // "submittal", "specification", "vocabulary", "amendment", or of a sweep archive_kind
  std::string digest;  // SHA-256 of its bytes as they were read, 64 hexadecimal digits
};

inline constexpr const char* archive_kind = "archive";

/// Rules that were named and took no part, as they were not in force on the day of the review.
struct SetAside {
  std::string what;   // "specification cls, edition 2026 (cls.plumb)"
  std::string why;    // "effective 2026-05-01"
  bool open = false;  // asked for by its own name, and no edition of it was reviewed: the review is not the whole
};

struct Origin {
  std::string version;  // of the program
  std::vector<UsedFile> files;
  std::string on;  // the day that decided what was in force; empty: all was
  std::vector<SetAside> aside;
};

/// Whether something that was asked for was not reviewed at all.
[[nodiscard]] bool leaves_open(const Origin& origin);
/// What leaves it open, for the head of a report: "specification cls, edition 2026 (cls.plumb)"; empty if nothing does.
[[nodiscard]] std::string not_reviewed(const Origin& origin);
/// "specification cls, edition 2026 (cls.plumb): effective 2026-05-01; nothing of it was reviewed".
[[nodiscard]] std::string aside_text(const SetAside& one);

/// The submittals as they were named, then the files of each set: the specification, what it uses, its amendments. A
/// file that several sets share stands once.
[[nodiscard]] Origin origin_of(const source::SourceMap& sources, std::span<const RuleSet> sets,
                               const std::vector<source::FileId>& submittals = {});

}  // namespace plumbrule::library
