// Writes N made records to standard output, one a line.
// Usage: make_records N [--seed S] [--spoil LIST]
// With --spoil about one line in a hundred is spoiled, and LIST gets the number and the kind of each, apart by a tab.
#include <CLI/CLI.hpp>

#include <cstdint>
#include <exception>
#include <fstream>
#include <iostream>
#include <string>

#include "record_maker.hpp"
#include "spoiler.hpp"

namespace {

void write_records(std::uint64_t count, std::uint64_t seed, std::ostream* list) {
  for (std::uint64_t number = 1; number <= count && std::cout; ++number) {
    const std::string line = plumbrule::bench::make_record(seed, number);
    const auto spoiled = list == nullptr ? std::nullopt : plumbrule::bench::spoil(seed, number, line);
    if (spoiled) {
      *list << number << '\t' << spoiled->kind << '\n';
    }
    std::cout << (spoiled ? spoiled->line : line) << '\n';
  }
}

int run(int argc, char** argv) {
  std::ios::sync_with_stdio(false);
  std::uint64_t count = 0;
  std::uint64_t seed = 1;
  std::string list_path;
  CLI::App app("Made records of mix trials (invented data), one JSON object a line");
  app.add_option("N", count, "how many")->required();
  app.add_option("--seed", seed, "another seed gives other records");
  app.add_option("--spoil", list_path, "spoil about 1 % of the lines, and list them in this file");
  CLI11_PARSE(app, argc, argv);

  std::ofstream list;
  if (!list_path.empty()) {
    list.open(list_path, std::ios::binary);
  }
  write_records(count, seed, list_path.empty() ? nullptr : &list);
  std::cout.flush();
  if (!list_path.empty()) {
    list.close();
  }
  if (!std::cout || list.fail()) {
    std::cerr << "make_records: could not write everything\n";
    return 1;
  }
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return run(argc, argv);
  } catch (const std::exception& error) {
    std::cerr << "make_records: " << error.what() << '\n';
    return 1;
  }
}
