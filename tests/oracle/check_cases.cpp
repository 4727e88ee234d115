#include "check_cases.hpp"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <sstream>

#include "cases/case_file.hpp"
#include "cases/recipe.hpp"
#include "check_files.hpp"

namespace plumbrule::oracle {
namespace {

namespace fs = std::filesystem;

struct Count {
  std::size_t compared = 0, clauses = 0, left_open = 0, not_differential = 0, differences = 0;
};

// A fresh folder with the files of a case, gone with this object.
class Place {
 public:
  Place() {
    std::string pattern = fs::canonical(fs::temp_directory_path()) / "plumbrule-oracle-XXXXXX";
    if (mkdtemp(pattern.data()) == nullptr) {
      throw fs::filesystem_error("no temporary folder", std::make_error_code(std::errc::io_error));
    }
    path_ = pattern;
  }
  ~Place() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  Place(const Place&) = delete;
  Place& operator=(const Place&) = delete;
  [[nodiscard]] const fs::path& path() const { return path_; }
  void write(const std::string& name, const std::string& bytes) const {
    fs::create_directories((path_ / name).parent_path());
    std::ofstream(path_ / name, std::ios::binary) << bytes;
  }

 private:
  fs::path path_;
};

std::string with_folders(std::string word, const fs::path& root) {
  for (const char* name : {"specs", "examples"}) {
    for (const std::string& mark : {"$" + std::string(name), "\"$" + std::string(name) + "\""}) {
      if (word.starts_with(mark)) {
        word.replace(0, mark.size(), (root / name).string());
      }
    }
  }
  return word;
}

// The words of a plain `plumbrule review` command; nothing for any other, or one with shell work in it.
std::optional<ReviewFiles> review_of(const std::string& command, const fs::path& here, const fs::path& root) {
  std::istringstream stream(command);
  std::vector<std::string> words{std::istream_iterator<std::string>(stream), {}};
  const bool plain = command.find_first_of(";|&<>()") == std::string::npos;
  if (!plain || words.size() < 4 || words[0] != "plumbrule" || words[1] != "review") {
    return std::nullopt;
  }
  ReviewFiles out;
  const auto path = [&](const std::string& word) { return (here / with_folders(word, root)).string(); };
  for (std::size_t at = 2; at < words.size(); ++at) {
    const std::string& word = words[at];
    if (!word.starts_with("--")) {
      out.submittal = path(word);
      continue;
    }
    if (word == "--log") {
      continue;
    }
    if (at + 1 == words.size()) {
      return std::nullopt;
    }
    const std::string& value = words[++at];
    if (word == "--against") {
      out.against.push_back(path(value));
    } else if (word == "--with") {
      out.amendments.push_back(path(value));
    } else if (word == "--library") {
      out.libraries.push_back(path(value));
    } else if (word == "--on") {
      out.on = value;
    }
  }
  out.libraries.push_back((root / "specs").string());
  return out;
}

void check_case(const fs::path& file, const fs::path& root, Count& count, std::ostream& out) {
  std::ifstream stream(file, std::ios::binary);
  const std::string text(std::istreambuf_iterator<char>(stream), {});
  const auto parsed = cases::parse_case(text);
  const auto* const script = std::get_if<cases::Case>(&parsed);
  if (script == nullptr) {
    return;  // the case runner reports it
  }
  const Place place;
  for (const cases::Section& section : script->sections) {
    if (section.kind == cases::Kind::file) {
      place.write(section.name, section.text);
    } else if (section.kind == cases::Kind::generate) {
      place.write(section.name, cases::generate(section.argument).bytes.value_or(""));
    }
    const auto files = section.kind == cases::Kind::run && section.expected.status < 3
                           ? review_of(section.argument, place.path(), root)
                           : std::nullopt;
    if (!files) {
      count.not_differential += section.kind == cases::Kind::run ? 1 : 0;
      continue;
    }
    const Checked checked = check_files(*files);
    if (!checked.trouble.empty()) {
      ++count.not_differential;
      continue;
    }
    ++count.compared;
    count.clauses += checked.clauses;
    count.left_open += checked.left_open;
    count.differences += checked.differences.size();
    if (!checked.differences.empty()) {
      out << file.string() << ":" << section.line << "\n" << report(checked);
    }
  }
}

}  // namespace

bool check_cases(const fs::path& folder, const fs::path& root, std::ostream& out) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (entry.path().extension() == ".case") {
      files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  Count count;
  for (const fs::path& file : files) {
    check_case(file, fs::absolute(root), count, out);
  }
  out << files.size() << " cases: " << count.compared << " reviews compared (" << count.clauses << " clauses), "
      << count.differences << " differences, " << count.left_open << " left open by a bound; " << count.not_differential
      << " other runs\n";
  return count.differences == 0 && count.compared > 0;
}

}  // namespace plumbrule::oracle
