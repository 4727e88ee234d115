// differential --runs N [--seed S] [--jobs J] [--folder WHERE] [--most M]
//
// Random well-typed rules and random evidence, judged by the engine and by the independent judge. One run is one
// submittal against one set of rules. The same seed gives the same runs whatever the number of jobs. Up to M (3)
// disagreements are made small and written to WHERE, each with all that is needed to see it again. Exit status: 0 no
// disagreement, 1 some, 2 unusable.

#include <array>
#include <atomic>
#include <chrono>
#include <cstdlib>
#include <iostream>
#include <mutex>
#include <thread>

#include "shrink.hpp"
#include "submittal_maker.hpp"

namespace {

using namespace plumbrule;

constexpr std::size_t submittals_of_a_set = 100;
constexpr std::size_t clauses_of_a_set = 10;

struct Options {
  std::size_t runs = 0, jobs = 2, most = 3;
  std::uint64_t seed = 1;
  std::string folder = "disagreements";
};

struct Tally {
  std::size_t sets = 0, ill_typed = 0, runs = 0, clauses = 0, disagreements = 0;
  std::array<std::size_t, 4> verdicts{};
  std::array<std::size_t, oracle::losses> left_open{};
  std::string first_errors;

  void add(const Tally& other) {
    sets += other.sets;
    ill_typed += other.ill_typed;
    runs += other.runs;
    clauses += other.clauses;
    disagreements += other.disagreements;
    for (std::size_t at = 0; at < verdicts.size(); ++at) {
      verdicts.at(at) += other.verdicts.at(at);
    }
    for (std::size_t at = 0; at < left_open.size(); ++at) {
      left_open.at(at) += other.left_open.at(at);
    }
    first_errors = first_errors.empty() ? other.first_errors : first_errors;
  }
};

class Driver {
 public:
  explicit Driver(Options options) : options_(std::move(options)) {}

  Tally run() {
    std::vector<std::thread> threads;
    for (std::size_t job = 0; job < options_.jobs; ++job) {
      threads.emplace_back([this] { work(); });
    }
    for (std::thread& thread : threads) {
      thread.join();
    }
    return total_;
  }

 private:
  Options options_;
  std::atomic<std::size_t> next_{0};
  std::mutex mutex_;
  Tally total_;
  std::size_t written_ = 0;

  void work() {
    const std::size_t sets = (options_.runs + submittals_of_a_set - 1) / submittals_of_a_set;
    for (std::size_t at = next_++; at < sets; at = next_++) {
      const Tally one = judge_set(options_.seed * 1'000'003 + at);
      const std::lock_guard lock(mutex_);
      total_.add(one);
    }
  }

  Tally judge_set(std::uint64_t seed) {
    Tally out;
    const auto made = property::make_rules(seed, clauses_of_a_set);
    out.sets = 1;
    if (made->rules == nullptr) {
      out.ill_typed = 1;
      out.first_errors = property::errors_of(*made);
      return out;
    }
    property::Random random(seed ^ 0x5bd1e995ULL);
    const property::SubmittalMaker maker(made->texts.catalog, {});
    for (std::size_t at = 0; at < submittals_of_a_set; ++at) {
      const evidence::Node submittal = maker.make(random);
      const oracle::Comparison compared = oracle::compare(*made->rules, submittal, {}, std::nullopt);
      ++out.runs;
      out.clauses += compared.clauses;
      for (std::size_t verdict = 0; verdict < out.verdicts.size(); ++verdict) {
        out.verdicts.at(verdict) += compared.verdicts.at(verdict);
      }
      for (std::size_t loss = 0; loss < out.left_open.size(); ++loss) {
        out.left_open.at(loss) += compared.left_open.at(loss);
      }
      if (!compared.differences.empty()) {
        ++out.disagreements;
        report(made->texts, submittal);
      }
    }
    return out;
  }

  void report(const property::RuleTexts& rules, const evidence::Node& submittal) {
    std::size_t number = 0;
    {
      const std::lock_guard lock(mutex_);
      if (written_ == options_.most) {
        return;
      }
      number = ++written_;
    }
    const property::Disagreement small = property::shrink(rules, submittal);
    const std::filesystem::path folder = std::filesystem::path(options_.folder) / std::to_string(number);
    property::write_reproduction(small, folder);
    const std::lock_guard lock(mutex_);
    for (const oracle::Difference& one : small.differences) {
      std::cout << folder.string() << ": clause " << one.clause << ": engine " << one.engine << ", oracle " << one.judge
                << "\n";
    }
  }
};

void print(const Tally& tally, double seconds) {
  std::cout << tally.runs << " evaluations of " << tally.sets << " sets of rules, " << tally.clauses << " clauses, in "
            << seconds << " s: " << tally.disagreements << " disagreements\n";
  for (std::size_t at = 0; at < tally.verdicts.size(); ++at) {
    std::cout << "  " << oracle::text(static_cast<oracle::Verdict>(at)) << ": " << tally.verdicts.at(at) << "\n";
  }
  for (std::size_t at = 0; at < tally.left_open.size(); ++at) {
    std::cout << "  not shown, and the table of bounds gives up: " << oracle::loss_text(static_cast<oracle::Loss>(at))
              << ": " << tally.left_open.at(at) << "\n";
  }
  if (tally.ill_typed > 0) {
    std::cout << "  sets that the checks refuse: " << tally.ill_typed << "; the first:\n" << tally.first_errors;
  }
}

std::optional<Options> read(const std::vector<std::string>& words) {
  Options out;
  for (std::size_t at = 0; at + 1 < words.size(); at += 2) {
    const std::string& value = words[at + 1];
    if (words[at] == "--folder") {
      out.folder = value;
      continue;
    }
    const std::uint64_t number = std::strtoull(value.c_str(), nullptr, 10);
    if (words[at] == "--runs") {
      out.runs = number;
    } else if (words[at] == "--seed") {
      out.seed = number;
    } else if (words[at] == "--jobs" && number > 0) {
      out.jobs = number;
    } else if (words[at] == "--most") {
      out.most = number;
    } else {
      return std::nullopt;
    }
  }
  return out.runs > 0 && words.size() % 2 == 0 ? std::optional(out) : std::nullopt;
}

}  // namespace

int main(int count, char** arguments) {
  const auto options = read({arguments + 1, arguments + count});
  if (!options) {
    std::cerr << "usage: differential --runs N [--seed S] [--jobs J] [--folder WHERE] [--most M]\n";
    return 2;
  }
  const auto start = std::chrono::steady_clock::now();
  const Tally tally = Driver(*options).run();
  const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - start;
  print(tally, spent.count());
  return tally.disagreements == 0 && tally.ill_typed == 0 && tally.runs > 0 ? 0 : 1;
}
