#include "doors/command/tidy.hpp"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <iostream>
#include <iterator>

#include "base/diagnose/encoding.hpp"
#include "base/diagnose/quote.hpp"
#include "language/syntax/tidy.hpp"

namespace plumbrule::command {
namespace {

constexpr std::size_t longest_quote = 110;

struct Outcome {
  Exit exit{};
  std::string report;  // what is printed about the file
};

struct Place {
  std::size_t line = 1;
  std::string_view text;  // of the line
};

Place line_at(std::string_view text, std::size_t at) {
  const std::size_t begin = at == 0 ? 0 : text.rfind('\n', at - 1) + 1;
  const std::size_t end = std::min(text.find('\n', begin), text.size());
  const auto line =
      static_cast<std::size_t>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(begin), '\n'));
  return {line + 1, text.substr(begin, end - begin)};
}

std::string shown(std::string_view line) {
  return line.empty() ? "an empty line" : diagnose::quoted(line, longest_quote);
}

// The first line that differs, as it is and as it would be.
std::string first_difference(const std::string& name, std::string_view is, std::string_view would_be) {
  if (is.starts_with(source::byte_order_mark)) {
    return name + ":1: not tidy: a byte order mark stands in front\n";
  }
  const std::size_t shorter = std::min(is.size(), would_be.size());
  std::size_t at = 0;
  while (at < shorter && is[at] == would_be[at]) {
    ++at;
  }
  const Place here = line_at(is, at);
  const Place there = line_at(would_be, at);
  const std::string head = name + ":" + std::to_string(here.line) + ": not tidy";
  if (here.text == there.text) {
    return head + (is.size() < would_be.size() ? ": the line end is missing\n" : ": blank lines end the file\n");
  }
  return head + "\n  is:   " + shown(here.text) + "\n  tidy: " + shown(there.text) + "\n";
}

// Through a temporary file; a link stays a link, and the rights stay.
bool rewrite(const std::string& path, const std::string& text) {
  std::error_code failure;
  const auto target = std::filesystem::canonical(path, failure);
  const auto rights = std::filesystem::status(target, failure).permissions();
  if (failure || !std::filesystem::is_regular_file(target, failure)) {
    print_error("cannot write `" + path + "`: " + (failure ? failure.message() : "it is not a plain file"));
    return false;
  }
  if (!write_output(text, target.string())) {
    return false;
  }
  std::filesystem::permissions(target, rights, failure);
  return true;
}

source::FileText read(const std::string& path) {
  if (path != "-") {
    return source::read_file(path);
  }
  std::string text{std::istreambuf_iterator<char>(std::cin), {}};
  return text.size() > source::largest_file ? source::FileText{std::nullopt, "it is larger than 256 MiB"}
                                            : source::FileText{std::move(text), {}};
}

Outcome deliver(const TidyOptions& options, const std::string& path, const std::string& name,
                const std::string& old_text, const std::string& new_text) {
  if (options.check) {
    return old_text == new_text ? Outcome{}
                                : Outcome{Exit::fails, first_difference(diagnose::printable(name), old_text, new_text)};
  }
  if (path == "-") {
    return {Exit::complies, new_text};
  }
  if (old_text == new_text) {
    return {};
  }
  return rewrite(path, new_text) ? Outcome{Exit::complies, "tidied " + diagnose::printable(path) + "\n"}
                                 : Outcome{Exit::unusable, {}};
}

Outcome tidy_one(const TidyOptions& options, const std::string& path) {
  const std::string name = path == "-" ? "standard input" : path;
  source::FileText file = read(path);
  if (!file.text) {
    print_error("cannot read `" + name + "`: " + file.reason);
    return {Exit::unusable, {}};
  }
  const std::string_view body = source::behind_mark(*file.text);
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  const source::FileId id = sources.add(name, std::string(body));
  std::optional<std::string> laid;
  if (diagnose::check_encoding(sources, id, diagnostics)) {
    laid = syntax::tidy(sources, id, diagnostics);
  }
  diagnostics.sort_by_place();
  print_diagnostics(diagnostics, sources);
  if (!laid) {
    return {Exit::rules_broken, {}};
  }
  if (!syntax::same_but_for_blanks(body, *laid)) {
    print_error("`" + name + "` is left as it is: more than its blanks would have changed, which is an error of ours");
    return {Exit::unusable, {}};
  }
  return deliver(options, path, name, *file.text, *laid);
}

}  // namespace

Exit tidy(const TidyOptions& options) {
  Exit worst = Exit::complies;
  for (const std::string& path : options.paths) {
    const Outcome one = tidy_one(options, path);
    worst = std::max(worst, one.exit);
    if (!write_output(one.report, {})) {
      return Exit::unusable;
    }
  }
  return worst;
}

}  // namespace plumbrule::command
