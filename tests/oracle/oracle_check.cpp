// oracle_check RULES SUBMITTAL [AMENDMENT ...]      one submittal against one rule file
// oracle_check --cases FOLDER [--root REPOSITORY]   every `review` run of the case files below FOLDER
//
// Compares the engine's verdicts with those of the independent judge. Exit status: 0 the same, 1 not, 2 unusable.

#include <iostream>

#include "check_cases.hpp"
#include "check_files.hpp"

namespace {

using namespace plumbrule::oracle;

int check_one(const std::vector<std::string>& words) {
  ReviewFiles files;
  files.against = {words[0]};
  files.submittal = words[1];
  files.amendments.assign(words.begin() + 2, words.end());
  const Checked checked = check_files(files);
  if (!checked.trouble.empty()) {
    std::cerr << "oracle_check: " << checked.trouble << "\n";
    return 2;
  }
  std::cout << report(checked) << checked.clauses << " clauses, " << checked.differences.size() << " differences\n";
  return checked.differences.empty() ? 0 : 1;
}

int run(const std::vector<std::string>& words) {
  if (words.size() >= 2 && words[0] == "--cases") {
    const bool root = words.size() == 4 && words[2] == "--root";
    return check_cases(words[1], root ? words[3] : ".", std::cout) ? 0 : 1;
  }
  if (words.size() >= 2) {
    return check_one(words);
  }
  std::cerr
      << "usage: oracle_check RULES SUBMITTAL [AMENDMENT ...] | oracle_check --cases FOLDER [--root REPOSITORY]\n";
  return 2;
}

}  // namespace

int main(int count, char** arguments) {
  try {
    return run({arguments + 1, arguments + count});
  } catch (const std::exception& error) {
    std::cerr << "oracle_check: " << error.what() << "\n";
    return 2;
  }
}
