#pragma once
// Rule files, each read and parsed once, however many specifications use it.

#include <map>
#include <optional>
#include <string>

#include "base/source/files.hpp"
#include "language/syntax/tree.hpp"

namespace plumbrule::check {

class Shelf {
 public:
  /// Both must outlive it. Texts go into `sources`.
  Shelf(source::SourceMap& sources, const source::Files& files) : sources_(sources), files_(files) {}

  /// The tree of a file, and what is wrong with it, each time. Nothing if it cannot be read (file_unreadable, said of
  /// `wanted`) or is not UTF-8. The pointer stays valid until the file is forgotten.
  [[nodiscard]] const syntax::RuleFile* read(const std::string& path, const source::Span& wanted,
                                             diagnose::Diagnostics& diagnostics);
  /// The file is read again when it is next asked for.
  void forget(const std::string& path) { volumes_.erase(path); }
  [[nodiscard]] source::SourceMap& sources() const { return sources_; }
  [[nodiscard]] const source::Files& files() const { return files_; }

 private:
  struct Volume {
    std::optional<syntax::RuleFile> tree;
    std::string unreadable;  // why, if it is
    diagnose::Diagnostics faults;
  };
  source::SourceMap& sources_;
  const source::Files& files_;
  std::map<std::string, Volume, std::less<>> volumes_;

  [[nodiscard]] Volume open(const std::string& path);
};

}  // namespace plumbrule::check
