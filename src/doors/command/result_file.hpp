#pragma once
// A file that is written piece by piece and is there whole or not at all, or a stream.

#include <string>
#include <string_view>

namespace plumbrule::command {

class ResultFile {
 public:
  /// "-" is standard output; "" is nowhere. A file that is there stays as it is until commit. While it is written it
  /// has no name, so that a stopped program leaves nothing behind; on file systems that cannot do that it is called
  /// PATH.part-PID.
  explicit ResultFile(std::string path);
  ~ResultFile();
  ResultFile(const ResultFile&) = delete;
  ResultFile& operator=(const ResultFile&) = delete;
  ResultFile(ResultFile&&) = delete;
  ResultFile& operator=(ResultFile&&) = delete;

  /// False, with the reason printed once: nothing more is written.
  bool write(std::string_view text);
  bool commit();
  [[nodiscard]] bool good() const { return !failed_; }

 private:
  std::string path_, temporary_;
  int descriptor_ = -1;
  bool failed_ = false, nameless_ = false, through_ = false;

  void open();
  bool fail();
};

}  // namespace plumbrule::command
