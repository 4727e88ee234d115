// Texts and places in them. Expectations: computed here.
#include "base/source/source.hpp"
#include "base/source/files.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

using namespace plumbrule::source;

namespace {

Span span(FileId file, std::string_view text, std::string_view part) {
  const auto begin = static_cast<std::uint32_t>(text.find(part));
  return {file, begin, begin + static_cast<std::uint32_t>(part.size())};
}

}  // namespace

TEST_CASE("a span covers two, and an unknown one does not count") {
  const Span a{0, 3, 5};
  const Span b{0, 9, 12};
  CHECK(cover(a, b) == Span{0, 3, 12});
  CHECK(cover(b, a) == Span{0, 3, 12});
  CHECK(cover(a, {}) == a);
  CHECK(cover({}, a) == a);
  CHECK_FALSE(cover({}, {}).known());
  CHECK(cover(a, {1, 0, 1}) == a);  // of another file
}

TEST_CASE("lines and columns begin at 1, and columns count characters") {
  const std::string text = "one\n\ntw\xC3\xB6 three\r\nfour";
  SourceMap map;
  const FileId file = map.add("mix.plumb", text);
  CHECK(map.place_text(span(file, text, "one")) == "mix.plumb:1:1");
  CHECK(map.place_text(span(file, text, "three")) == "mix.plumb:3:5");
  CHECK(map.place_text(span(file, text, "four")) == "mix.plumb:4:1");
  CHECK(map.place_text({file, static_cast<std::uint32_t>(text.size()), static_cast<std::uint32_t>(text.size())}) ==
        "mix.plumb:4:5");
  CHECK(map.place_text({}).empty());
  CHECK(map.text(span(file, text, "three")) == "three");
}

TEST_CASE("a line is shown without its end") {
  SourceMap map;
  const FileId file = map.add("a", "one\r\n\ntwo");
  CHECK(map.line_text(file, 1) == "one");
  CHECK(map.line_text(file, 2).empty());
  CHECK(map.line_text(file, 3) == "two");
  const FileId empty = map.add("b", "");
  CHECK(map.line_text(empty, 1).empty());
  CHECK(map.place_text({empty, 0, 0}) == "b:1:1");
  CHECK(map.size() == 2);
}

TEST_CASE("views stay valid while files are added") {
  SourceMap map;
  const FileId first = map.add("first", "short");
  const std::string_view view = map.text(first);
  for (int at = 0; at < 1000; ++at) {
    map.add("more", "more");
  }
  CHECK(view == "short");
  CHECK(map.name(first) == "first");
}

TEST_CASE("files that cannot be read say why") {
  const auto folder = std::filesystem::temp_directory_path() / "plumbrule-unit-source";
  std::filesystem::create_directories(folder);
  CHECK(read_file((folder / "absent").string()).reason == "no such file");
  CHECK(read_file("").reason == "no such file");
  CHECK(read_file(folder.string()).reason == "it is a folder, not a file");
  std::string bytes(200'000, 'x');  // more than one block
  bytes[70'000] = '\0';
  std::ofstream(folder / "bytes", std::ios::binary) << bytes;
  CHECK(read_file((folder / "bytes").string()).text == bytes);
  std::ofstream(folder / "empty", std::ios::binary) << "";
  CHECK(read_file((folder / "empty").string()).text == "");
  std::filesystem::remove_all(folder);
}
