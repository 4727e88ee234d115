#include "plumbrule/files.hpp"

#include <mutex>
#include <utility>

#include "base/source/files.hpp"

namespace plumbrule {

FileProvider::~FileProvider() = default;

namespace {

FileProvider::Kind kind_of(source::Found found) {
  switch (found) {
    case source::Found::file:
      return FileProvider::Kind::file;
    case source::Found::folder:
      return FileProvider::Kind::folder;
    case source::Found::other:
      return FileProvider::Kind::other;
    case source::Found::nothing:
      break;
  }
  return FileProvider::Kind::nothing;
}

std::optional<std::string> read_from(const source::Files& files, const std::string& path, std::string& reason) {
  source::FileText text = files.read(path);
  reason = text.reason;
  return std::move(text.text);
}

std::vector<std::string> all_below(const source::Files& files, const std::string& folder, std::string& failure) {
  source::Below below = files.below(folder);
  failure = below.failure.empty() ? "" : below.failure + ", at `" + below.reached + "`";
  return std::move(below.paths);
}

class DiskProvider final : public FileProvider {
 public:
  [[nodiscard]] std::optional<std::string> read(const std::string& path, std::string& reason) const override {
    return read_from(files_, path, reason);
  }
  [[nodiscard]] Kind kind(const std::string& path) const override { return kind_of(files_.find(path)); }
  [[nodiscard]] std::vector<std::string> below(const std::string& folder, std::string& failure) const override {
    return all_below(files_, folder, failure);
  }

 private:
  source::Disk files_;
};

}  // namespace

std::shared_ptr<const FileProvider> disk() { return std::make_shared<const DiskProvider>(); }

struct MemoryFiles::Texts {
  mutable std::mutex mutex;
  source::Memory files;
};

MemoryFiles::MemoryFiles() : texts_(std::make_unique<Texts>()) {}
MemoryFiles::~MemoryFiles() = default;

void MemoryFiles::put(const std::string& path, const std::string& text) {
  const std::lock_guard lock(texts_->mutex);
  texts_->files.put(path, text);
}

bool MemoryFiles::remove(const std::string& path) {
  const std::lock_guard lock(texts_->mutex);
  return texts_->files.remove(path);
}

std::optional<std::string> MemoryFiles::read(const std::string& path, std::string& reason) const {
  const std::lock_guard lock(texts_->mutex);
  return read_from(texts_->files, path, reason);
}

FileProvider::Kind MemoryFiles::kind(const std::string& path) const {
  const std::lock_guard lock(texts_->mutex);
  return kind_of(texts_->files.find(path));
}

std::vector<std::string> MemoryFiles::below(const std::string& folder, std::string& failure) const {
  const std::lock_guard lock(texts_->mutex);
  return all_below(texts_->files, folder, failure);
}

}  // namespace plumbrule
