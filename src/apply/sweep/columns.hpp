#pragma once
// The columns of an archive of flat records: the headings of a CSV sheet, or the names in JSON records as they come up.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace plumbrule::sweep {

class Columns {
 public:
  /// More columns than this are not learned; records that need them are read in full each time.
  static constexpr std::size_t most = 512;

  [[nodiscard]] std::size_t size() const { return names_.size(); }
  [[nodiscard]] const std::string& name(std::size_t column) const { return names_[column]; }
  [[nodiscard]] std::optional<std::uint32_t> find(std::string_view name) const;
  /// Precondition: not there yet, and size() < most.
  void add(std::string_view name);

 private:
  std::vector<std::string> names_;
  std::unordered_map<std::string, std::uint32_t> by_name_;
};

}  // namespace plumbrule::sweep
