#pragma once
// What identifies the bytes of a file, so that a filed report can be held against the files that it was made from.

#include <memory>
#include <string>
#include <string_view>

namespace plumbrule::source {

/// SHA-256 (FIPS 180-4), part by part.
class Sha256 {
 public:
  Sha256();
  void add(std::string_view bytes);
  /// 64 lower-case hexadecimal digits. Once.
  [[nodiscard]] std::string text();

 private:
  struct State;  // the library's
  struct Free {
    void operator()(State* state) const;
  };
  std::unique_ptr<State, Free> state_;
};

[[nodiscard]] std::string sha256(std::string_view bytes);

}  // namespace plumbrule::source
