#include "doors/command/archive.hpp"

#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

namespace plumbrule::command {
namespace {

// A file of its own for one test.
class File {
 public:
  explicit File(const std::string& text, Archive::Form form = Archive::Form::ndjson)
      : path_(std::filesystem::temp_directory_path() / ("plumbrule_archive_" + std::to_string(getpid()))), form_(form) {
    std::ofstream(path_, std::ios::binary) << text;
  }
  ~File() { std::filesystem::remove(path_); }
  File(const File&) = delete;
  File& operator=(const File&) = delete;
  File(File&&) = delete;
  File& operator=(File&&) = delete;
  [[nodiscard]] Archive archive() const { return {{{path_.string(), form_}}, false}; }

 private:
  std::filesystem::path path_;
  Archive::Form form_;
};

// All parts, each read into the memory of a text with something in it.
std::vector<sweep::Lines> parts_of(const File& file, std::size_t spare) {
  std::vector<sweep::Lines> out;
  Archive archive = file.archive();
  while (auto part = archive.next(std::string(spare, 'x'))) {
    REQUIRE(std::holds_alternative<sweep::Lines>(*part));
    out.push_back(std::get<sweep::Lines>(std::move(*part)));
  }
  return out;
}

constexpr std::size_t piece = Archive::part_size;

std::string line_of(std::size_t size, char letter) { return std::string(size, letter) + '\n'; }

}  // namespace

TEST_CASE("the parts of an archive are its lines, whatever memory they are read into") {
  std::string whole;
  for (const std::size_t size :
       {0UL, 1UL, piece - 2, piece - 1, piece, piece + 1, 3 * piece + 7, 5UL, 2 * piece - 1, 40UL}) {
    whole += line_of(size, static_cast<char>('a' + whole.size() % 26));
  }
  const std::string end = GENERATE(std::string(), std::string("behind the last line break"));
  const std::size_t spare = GENERATE(0UL, 1UL, 1000UL, piece, 4 * piece);
  const File file(whole + end);
  std::string read;
  for (const sweep::Lines& lines : parts_of(file, spare)) {
    CHECK(lines.first_line == 1 + std::count(read.begin(), read.end(), '\n'));
    read += lines.text;
  }
  CHECK((read == whole + end));
}

TEST_CASE("a line that is too long is cut off beyond what is read, and those behind it keep their numbers") {
  const std::string before = line_of(10, 'a');
  const std::string behind = line_of(20, 'b') + line_of(30, 'c');
  const std::size_t size = GENERATE(2UL, 5UL) * Archive::longest_line + 12345;
  std::string read;
  for (const sweep::Lines& lines : parts_of(File(before + line_of(size, 'z') + behind), 100)) {
    read += lines.text;
  }
  const std::size_t first = read.find('z');
  const std::size_t last = read.rfind('z');
  CHECK((read.substr(0, first) == before));
  CHECK((read.substr(last + 1) == "\n" + behind));
  CHECK(last - first + 1 > evidence::largest_submittal);  // so that it is refused
  CHECK(last - first + 1 < 3 * Archive::longest_line);
}

TEST_CASE("empty lines in front of the headings of a sheet do not count, however many there are") {
  const std::string empty = GENERATE("", "\n", " \t\r\n\n", "\xEF\xBB\xBF\n", "\xEF\xBB\xBF");
  const std::size_t more = GENERATE(0UL, 1UL, 2 * piece + 5);
  const std::string rows = line_of(20, 'b') + line_of(piece, 'c') + "d";
  const auto before = static_cast<std::uint32_t>(std::count(empty.begin(), empty.end(), '\n') + more);
  std::string read;
  for (const sweep::Lines& lines :
       parts_of(File(empty + std::string(more, '\n') + "mix,date\r\n" + rows, Archive::Form::csv), 7)) {
    CHECK(lines.is_sheet);
    CHECK(lines.heading == "mix,date");
    CHECK(lines.heading_line == before + 1);
    CHECK(lines.begins == read.empty());
    CHECK(lines.first_line == before + 2 + std::count(read.begin(), read.end(), '\n'));
    read += lines.text;
  }
  CHECK((read == rows));
}

}  // namespace plumbrule::command
