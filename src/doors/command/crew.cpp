#include "doors/command/crew.hpp"

#include <algorithm>
#include <thread>
#include <utility>
#include <vector>

namespace plumbrule::command {
namespace {

sweep::Written judge(sweep::Worker& worker, const Part& part) {
  if (const auto* const unread = std::get_if<Unread>(&part)) {
    return worker.unreadable(unread->file, unread->reason);
  }
  const auto* const lines = std::get_if<sweep::Lines>(&part);
  return lines != nullptr ? worker.run(*lines) : worker.run(std::get<sweep::Document>(part));
}

// The memory of a part that is done with.
std::string text_of(Part part) {
  auto* const lines = std::get_if<sweep::Lines>(&part);
  return lines != nullptr ? std::move(lines->text) : std::string();
}

}  // namespace

Crew::Crew(Archive& archive, std::deque<sweep::Worker>& workers, Take take)
    : archive_(archive), workers_(workers), take_(std::move(take)), most_(4 * workers.size()) {}

bool Crew::run() {
  {
    std::vector<std::jthread> others;
    for (std::size_t at = 1; at < workers_.size(); ++at) {
      others.emplace_back([this, at] { work(workers_[at]); });
    }
    work(workers_.front());
  }
  if (failure_) {
    std::rethrow_exception(failure_);
  }
  return !stopped_;
}

void Crew::work(sweep::Worker& worker) noexcept {
  try {
    std::string spare;
    while (auto given = fetch(std::move(spare))) {
      sweep::Written written = judge(worker, given->part);
      spare = text_of(std::move(given->part));
      hand_in(given->number, std::move(written));
    }
  } catch (...) {
    const std::lock_guard lock(mutex_);
    failure_ = std::current_exception();
    stopped_ = true;
    room_.notify_all();
  }
}

// Nothing at the end of the archive, and when the sweep stops.
std::optional<Crew::Given> Crew::fetch(std::string spare) {
  const std::lock_guard reading(reading_);
  {
    std::unique_lock lock(mutex_);
    room_.wait(lock, [&] { return stopped_ || given_ < first_ + most_; });
    if (stopped_) {
      return std::nullopt;
    }
  }
  auto part = archive_.next(std::move(spare));
  return part ? std::optional(Given{given_++, std::move(*part)}) : std::nullopt;
}

// Whoever hands in while no other thread is at it passes on all that is ready.
void Crew::hand_in(std::uint64_t number, sweep::Written written) {
  std::unique_lock lock(mutex_);
  const std::size_t at = number - first_;
  ready_.resize(std::max(ready_.size(), at + 1));
  ready_[at] = std::move(written);
  if (taking_) {
    return;
  }
  taking_ = true;
  while (!stopped_ && !ready_.empty() && ready_.front()) {
    const sweep::Written one = std::move(*ready_.front());
    ready_.pop_front();
    ++first_;
    lock.unlock();
    const bool goes_on = take_(one);
    lock.lock();
    stopped_ = stopped_ || !goes_on;
    room_.notify_one();  // only the thread that holds `reading_` waits
  }
  taking_ = false;
}

}  // namespace plumbrule::command
