#include "doors/command/archive.hpp"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <utility>

#include "base/source/files.hpp"
#include "base/source/source.hpp"

namespace plumbrule::command {
namespace {

std::uint32_t lines_in(std::string_view text) {
  std::uint32_t out = 0;
  for (std::size_t at = text.find('\n'); at != std::string_view::npos; at = text.find('\n', at + 1)) {
    ++out;
  }
  return out;
}

}  // namespace

Archive::Archive(std::vector<Input> inputs, bool digests) : inputs_(std::move(inputs)), digests_(digests) {}

std::optional<Part> Archive::next(std::string spare) {
  while (waiting_ || file_ != nullptr || at_ < inputs_.size()) {
    if (waiting_) {
      return std::exchange(waiting_, std::nullopt);
    }
    auto part = file_ != nullptr ? lines(std::exchange(spare, {})) : open();
    if (part) {
      return part;
    }
  }
  return std::nullopt;
}

// A file of lines is opened and gives nothing yet.
std::optional<Part> Archive::open() {
  const Input& input = inputs_[at_++];
  if (input.form == Form::document) {
    source::FileText file = source::read_file(input.name);
    if (!file.text) {
      return Unread{input.name, file.reason};
    }
    if (digests_) {
      digested_.push_back({input.name, source::sha256(*file.text)});
    }
    return sweep::Document{input.name, std::move(*file.text), source::ending(input.name) == ".json"};
  }
  file_.reset(input.name == "-" ? stdin : std::fopen(input.name.c_str(), "rb"));
  if (file_ == nullptr) {
    return Unread{input.name, std::strerror(errno)};
  }
  if (digests_) {
    digest_.emplace();
  }
  name_ = input.name == "-" ? "standard input" : input.name;
  is_sheet_ = input.form == Form::csv;
  heading_.reset();
  rest_.clear();
  any_ = false;
  line_ = 1;
  return std::nullopt;
}

// Reads on until there is a whole line, or nothing more, into the memory of `text`. False: the file ended.
bool Archive::fill(std::string& text) {
  std::size_t filled = rest_.size();
  text.replace(0, std::min(filled, text.size()), rest_);
  rest_.clear();
  std::size_t whole = std::string::npos;
  while (whole == std::string::npos) {
    text.resize(filled + part_size);  // from one part to the next of nearly the same length: nothing to clear
    const std::size_t read = std::fread(text.data() + filled, 1, part_size, file_.get());
    if (digest_) {
      digest_->add(std::string_view(text).substr(filled, read));
    }
    filled += read;
    whole = std::string_view(text).substr(0, filled).rfind('\n');
    if (read == 0 || std::ferror(file_.get()) != 0 || (read < part_size && std::feof(file_.get()) != 0)) {
      text.resize(filled);
      return false;
    }
    if (whole == std::string::npos && filled > 2 * longest_line) {
      text.resize(filled);
      text.erase(longest_line + 1, filled - 2 * longest_line);  // still too long, and its end is still to come
      filled = text.size();
    }
  }
  rest_.assign(text, whole + 1, filled - whole - 1);
  text.resize(whole + 1);
  return true;
}

// Empty lines in front of the headings do not count (language.md 17.1). False: there is nothing else in this text.
bool Archive::take_heading(std::string& text) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first == std::string::npos) {
    line_ += lines_in(text);
    text.clear();
    return false;
  }
  const std::size_t line_break = text.rfind('\n', first);
  const std::size_t begin = line_break == std::string::npos ? 0 : line_break + 1;
  const std::size_t end = std::min(text.find('\n', first), text.size());
  heading_ = text.substr(begin, end - begin);
  if (heading_->ends_with('\r')) {
    heading_->pop_back();
  }
  heading_line_ = line_ + lines_in(std::string_view(text).substr(0, begin));
  line_ = heading_line_ + 1;
  text.erase(0, std::min(end + 1, text.size()));
  return true;
}

std::optional<Part> Archive::lines(std::string text) {
  const bool more = fill(text);
  const bool failed = std::ferror(file_.get()) != 0;
  if (line_ == 1) {
    text.erase(0, text.size() - source::behind_mark(text).size());
  }
  const bool begins = is_sheet_ && !heading_ && take_heading(text);
  any_ = any_ || text.find_first_not_of(" \t\r\n") != std::string::npos;
  std::optional<Part> out;
  if (failed) {
    out = Unread{name_ + ", from line " + std::to_string(line_) + " on",
                 "reading stopped: " + std::string(std::strerror(errno))};
  } else if (!text.empty() || begins) {  // headings without rows may be wrong too
    const std::uint32_t first = line_;
    line_ += lines_in(text);
    out = sweep::Lines{name_, is_sheet_, heading_.value_or(""), heading_line_, begins, first, std::move(text)};
  }
  if (!more) {
    file_.reset();
    if (!any_ && !failed) {
      // What was cut off before its first record must not pass for whole.
      waiting_ = Unread{name_, "it holds no record"};
    }
    if (digest_ && !failed) {
      digested_.push_back({name_, digest_->text()});
    }
    digest_.reset();
  }
  return out;
}

}  // namespace plumbrule::command
