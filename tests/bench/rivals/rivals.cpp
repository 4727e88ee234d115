// The rivals of `sweep` that are written in C++, on made records.
// Usage: rivals parse | parse-dom | compare | compare-only   RECORDS
//   parse         simdjson, on demand: every key, number and text is read, nothing is decided
//   parse-dom     the same by the library's tree
//   compare       simdjson into doubles, forty comparisons
//   compare-only  records are read into an array first; the comparisons alone are timed, on standard error
// compare and compare-only print the counts: `records N`, `complying N`, then clause, failed, not shown; tabs between.
#include <chrono>
#include <exception>
#include <iostream>
#include <limits>
#include <string>
#include <vector>

#include "by_hand.hpp"
#include "read_mix.hpp"

namespace {

using namespace plumbrule::bench;

void print(const Touched& touched) {
  std::cout << "records\t" << touched.records << "\ntexts\t" << touched.texts << "\nsum\t" << touched.sum << '\n';
}

void print(const Counts& counts) {
  std::cout << "records\t" << counts.records << "\ncomplying\t" << counts.complying << '\n';
  for (std::size_t clause = 0; clause < counts.failed.size(); ++clause) {
    std::cout << clause + 1 << '\t' << counts.failed.at(clause) << '\t' << counts.not_shown.at(clause) << '\n';
  }
}

// The quickest of five passes: the array is in memory, and anything slower is the machine's doing.
Counts compare_only(const std::string& path) {
  std::vector<Mix> mixes;
  read_mixes(path, [&](const Mix& mix) { mixes.push_back(mix); });
  double quickest = std::numeric_limits<double>::infinity();
  Counts counts;
  for (int pass = 0; pass < 5; ++pass) {
    counts = Counts();
    const auto start = std::chrono::steady_clock::now();
    for (const Mix& mix : mixes) {
      judge(mix, counts);
    }
    quickest = std::min(quickest, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
  }
  std::cerr << quickest << '\n';
  return counts;
}

int run(const std::string& rival, const std::string& path) {
  if (rival == "parse") {
    print(touch_on_demand(path));
  } else if (rival == "parse-dom") {
    print(touch_dom(path));
  } else if (rival == "compare") {
    print(judge_all(path));
  } else if (rival == "compare-only") {
    print(compare_only(path));
  } else {
    std::cerr << "rivals: parse, parse-dom, compare or compare-only, then a file of records\n";
    return 2;
  }
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return run(argc == 3 ? argv[1] : "", argc == 3 ? argv[2] : "");
  } catch (const std::exception& error) {
    std::cerr << "rivals: " << error.what() << '\n';
    return 1;
  }
}
