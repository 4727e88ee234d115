#include "doors/command/crew.hpp"

#include <unistd.h>

#include <atomic>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <stdexcept>

namespace plumbrule::command {
namespace {

constexpr std::size_t count = 200;

// Files that are no submittals, of very unlike length: each gives an error that names it.
class Folder {
 public:
  Folder() : path_(std::filesystem::temp_directory_path() / ("plumbrule_crew_" + std::to_string(getpid()))) {
    std::filesystem::create_directories(path_);
    for (std::size_t at = 0; at < count; ++at) {
      const std::string name = (path_ / (std::to_string(at) + ".json")).string();
      std::ofstream(name) << std::string(at % 7 == 0 ? 200'000 : 1, '[');
      inputs_.push_back({name, Archive::Form::document});
    }
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  Folder(Folder&&) = delete;
  Folder& operator=(Folder&&) = delete;
  [[nodiscard]] const std::vector<Archive::Input>& inputs() const { return inputs_; }

 private:
  std::filesystem::path path_;
  std::vector<Archive::Input> inputs_;
};

struct Sweep {
  Folder folder;
  Archive archive{folder.inputs(), false};
  std::vector<sweep::Against> against;
  evidence::KnownNames names;
  std::deque<sweep::Worker> workers;

  explicit Sweep(std::size_t threads) {
    for (std::size_t at = 0; at < threads; ++at) {
      workers.emplace_back(against, names, sweep::VerdictForm::none, std::nullopt, false);
    }
  }
};

}  // namespace

TEST_CASE("a crew hands on what parts give in their order, one at a time, whatever the number of threads") {
  Sweep sweep(GENERATE(1UL, 2UL, 5UL));
  std::atomic<int> inside = 0;
  std::vector<std::string> taken;
  Crew crew(sweep.archive, sweep.workers, [&](const sweep::Written& written) {
    CHECK(++inside == 1);
    taken.push_back(written.errors);
    --inside;
    return true;
  });
  CHECK(crew.run());
  REQUIRE(taken.size() == count);
  for (std::size_t at = 0; at < count; ++at) {
    CHECK(taken[at].find("/" + std::to_string(at) + ".json") != std::string::npos);
  }
}

TEST_CASE("a crew stops when what it gives is not wanted any more") {
  Sweep sweep(GENERATE(1UL, 2UL, 5UL));
  std::size_t taken = 0;
  Crew crew(sweep.archive, sweep.workers, [&](const sweep::Written&) { return ++taken < 10; });
  CHECK_FALSE(crew.run());
  CHECK(taken == 10);
}

TEST_CASE("a crew ends, and throws on, when one of its threads throws") {
  Sweep sweep(GENERATE(1UL, 2UL, 5UL));
  std::size_t taken = 0;
  Crew crew(sweep.archive, sweep.workers, [&](const sweep::Written&) -> bool {
    if (++taken == 10) {
      throw std::runtime_error("no memory");
    }
    return true;
  });
  CHECK_THROWS_WITH(crew.run(), "no memory");
  CHECK(taken == 10);
}

}  // namespace plumbrule::command
