#pragma once
// Threads that sweep an archive together, one for each worker, of which the calling thread is one. Each fetches a part,
// judges it, and hands in what it gives; a part is read by the thread that judges it, which then finds it in its cache.

#include <condition_variable>
#include <cstddef>
#include <cstdint>
#include <deque>
#include <exception>
#include <functional>
#include <mutex>
#include <optional>
#include <string>

#include "apply/sweep/worker.hpp"
#include "doors/command/archive.hpp"

namespace plumbrule::command {

class Crew {
 public:
  /// Called with what one part after another gives, in the order of the archive, by any of the threads but never by two
  /// at once. False: the sweep stops.
  using Take = std::function<bool(const sweep::Written&)>;

  /// All must outlive it.
  Crew(Archive& archive, std::deque<sweep::Worker>& workers, Take take);

  /// Sweeps to the end of the archive, once. False: it was stopped before. Throws what a thread threw.
  [[nodiscard]] bool run();

 private:
  struct Given {
    std::uint64_t number = 0;
    Part part;
  };
  Archive& archive_;
  std::deque<sweep::Worker>& workers_;
  Take take_;
  std::size_t most_;  // parts that may be on their way, so that a slow one does not make the others pile up

  std::mutex reading_;       // around the archive and the number of parts given
  std::uint64_t given_ = 0;  // also the number of the next

  std::mutex mutex_;  // around the rest; a thread that holds `reading_` may wait for it, never the other way round
  std::condition_variable room_;
  std::uint64_t first_ = 0;                          // the first part that was not taken yet
  std::deque<std::optional<sweep::Written>> ready_;  // from the first on
  bool taking_ = false, stopped_ = false;
  std::exception_ptr failure_;

  void work(sweep::Worker& worker) noexcept;
  [[nodiscard]] std::optional<Given> fetch(std::string spare);
  void hand_in(std::uint64_t number, sweep::Written written);
};

}  // namespace plumbrule::command
