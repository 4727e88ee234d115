#pragma once
// Where the library reads files: the disk, memory, or whatever a program has.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "plumbrule/export.hpp"

namespace plumbrule {

/// Asked by one or several threads at once; it must stand that. Paths are texts with `/` between folders.
class PLUMBRULE_EXPORT FileProvider {
 public:
  enum class Kind : std::uint8_t { nothing, file, folder, other };

  FileProvider() = default;
  FileProvider(const FileProvider&) = delete;
  FileProvider& operator=(const FileProvider&) = delete;
  FileProvider(FileProvider&&) = delete;
  FileProvider& operator=(FileProvider&&) = delete;
  virtual ~FileProvider();

  /// The bytes of a file; nothing, and the `reason` fit to print, if it cannot be read.
  [[nodiscard]] virtual std::optional<std::string> read(const std::string& path, std::string& reason) const = 0;
  /// What is there. `other`: neither file nor folder, such as a pipe.
  [[nodiscard]] virtual Kind kind(const std::string& path) const = 0;
  /// All files below a folder. `failure`: why some of it could not be read; left empty otherwise.
  [[nodiscard]] virtual std::vector<std::string> below(const std::string& folder, std::string& failure) const = 0;
};

/// The files of this computer; paths that do not begin with `/` from its current folder.
[[nodiscard]] PLUMBRULE_EXPORT std::shared_ptr<const FileProvider> disk();

/// Texts by path. A folder is there where a file is below it.
class PLUMBRULE_EXPORT MemoryFiles final : public FileProvider {
 public:
  MemoryFiles();
  ~MemoryFiles() override;
  MemoryFiles(const MemoryFiles&) = delete;
  MemoryFiles& operator=(const MemoryFiles&) = delete;
  MemoryFiles(MemoryFiles&&) = delete;
  MemoryFiles& operator=(MemoryFiles&&) = delete;

  /// Replaces a text of the same path; a session that has read it must be told by Session::changed.
  void put(const std::string& path, const std::string& text);
  /// False if there was none.
  bool remove(const std::string& path);

  [[nodiscard]] std::optional<std::string> read(const std::string& path, std::string& reason) const override;
  [[nodiscard]] Kind kind(const std::string& path) const override;
  [[nodiscard]] std::vector<std::string> below(const std::string& folder, std::string& failure) const override;

 private:
  struct Texts;
  std::unique_ptr<Texts> texts_;
};

}  // namespace plumbrule
