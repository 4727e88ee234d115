#pragma once
// Where files come from: the disk, or memory, as in a page of a browser, an editor or another program. Whoever reads
// files for others is handed one of these, and knows neither a disk nor a current folder.

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace plumbrule::source {

/// The bytes of a file, or nothing and a reason fit to print ("no such file").
struct FileText {
  std::optional<std::string> text;
  std::string reason;
};

/// What a path leads to. `other`: a pipe or a device, which would be waited for.
enum class Found : std::uint8_t { nothing, file, folder, other };

/// All files below a folder. `failure`: why some of it could not be read, at `reached`; empty: it is the whole.
struct Below {
  std::vector<std::string> paths;  // sorted
  std::string failure, reached;
};

class Files {
 public:
  Files() = default;
  Files(const Files&) = delete;
  Files& operator=(const Files&) = delete;
  Files(Files&&) = delete;
  Files& operator=(Files&&) = delete;
  virtual ~Files() = default;

  [[nodiscard]] virtual FileText read(const std::string& path) const = 0;
  [[nodiscard]] virtual Found find(const std::string& path) const = 0;
  /// Linked folders are followed, each folder once.
  [[nodiscard]] virtual Below below(const std::string& folder) const = 0;
};

class Disk final : public Files {
 public:
  [[nodiscard]] FileText read(const std::string& path) const override;
  [[nodiscard]] Found find(const std::string& path) const override;
  [[nodiscard]] Below below(const std::string& folder) const override;
};

/// Texts by path, with `/` between folders; a folder is there where a file is below it.
class Memory final : public Files {
 public:
  /// Replaces a text of the same path.
  void put(const std::string& path, std::string text);
  /// False if there was none.
  bool remove(const std::string& path);
  [[nodiscard]] FileText read(const std::string& path) const override;
  [[nodiscard]] Found find(const std::string& path) const override;
  [[nodiscard]] Below below(const std::string& folder) const override;

 private:
  std::map<std::string, std::string> texts_;  // by normal path
};

/// Of the disk.
[[nodiscard]] FileText read_file(const std::string& path);

/// ".yaml" of "a/B.YAML", in small letters: what a file is does not depend on how its ending is spelt.
[[nodiscard]] std::string ending(const std::string& path);

}  // namespace plumbrule::source
