#include "apply/contrast/filed.hpp"

#include <algorithm>
#include <utility>

#include "apply/contrast/held.hpp"
#include "judge/evidence/json.hpp"
#include "judge/evidence/records.hpp"
#include "judge/evidence/sheet.hpp"
#include "language/library/folder.hpp"

namespace plumbrule::contrast {
namespace {

std::optional<evidence::Node> record(evidence::JsonReader& reader, std::string_view line, source::FileId file,
                                     std::size_t at, diagnose::Diagnostics& diagnostics) {
  const auto begin = static_cast<std::uint32_t>(at);
  if (line.size() > evidence::largest_submittal) {
    diagnostics.error(diagnose::Code::file_unreadable, {file, begin, begin + 1},
                      "found a line of more than " + std::to_string(evidence::largest_submittal) +
                          " bytes, longer than a submittal may be",
                      "put each record on a line of its own");
    return std::nullopt;
  }
  auto tree = reader.read(line, file, begin, diagnostics);
  return tree && evidence::is_flat(*tree) ? evidence::submittal_of(*tree, diagnostics) : std::move(tree);
}

// A record as it was read, and what to print with it.
struct Read {
  evidence::SubmittalRecord record;
  diagnose::Diagnostics errors;
  bool its_own = true;  // the errors are those of this record, and of no other one of the file
};

// Of NDJSON: a record a line, nested or flat; blank lines are none.
std::vector<Read> lines_of(source::SourceMap& sources, source::FileId file) {
  const std::string path(sources.name(file));
  const std::string_view all = sources.text(file);
  std::vector<Read> out;
  evidence::JsonReader reader;
  std::size_t number = 0;
  for (std::size_t at = all.size() - source::behind_mark(all).size(); at < all.size();) {
    const std::size_t end = std::min(all.find('\n', at), all.size());
    const std::string_view line = all.substr(at, end - at);
    ++number;
    if (line.find_first_not_of(" \t\r") != std::string_view::npos) {
      Read& one = out.emplace_back();
      one.record = {path + ":" + std::to_string(number), "", record(reader, line, file, at, one.errors)};
    }
    at = end + 1;
  }
  return out;
}

std::vector<Read> unread(const std::string& path, const std::string& message, const std::string& help) {
  Read out{{path, "", std::nullopt}, {}, true};
  out.errors.error(diagnose::Code::file_unreadable, {}, message, help);
  return {std::move(out)};
}

std::vector<Read> lines_of(const source::Files& files, source::SourceMap& sources, const std::string& path) {
  source::FileText text = files.read(path);
  if (!text.text) {
    return unread(path, "cannot read `" + path + "`: " + text.reason, "check the path");
  }
  auto out = lines_of(sources, sources.add(path, std::move(*text.text)));
  return !out.empty() ? std::move(out)
                      : unread(path, "found no record in `" + path + "`",
                               "write a submittal a line, or take the file out of the folder");
}

// Of several records that cannot be read it is not known which error is whose.
std::vector<Read> records_of(const source::Files& files, source::SourceMap& sources, const std::string& path) {
  diagnose::Diagnostics diagnostics;
  std::vector<Read> out;
  for (evidence::SubmittalRecord& one : evidence::read_records(files, sources, path, diagnostics)) {
    out.push_back({std::move(one), {}, true});
  }
  if (out.empty()) {
    out.push_back({{path, "", std::nullopt}, {}, true});
  }
  const auto is_unread = [](const Read& one) { return !one.record.tree; };
  const auto first = std::find_if(out.begin(), out.end(), is_unread);
  Read& with = first == out.end() ? out.front() : *first;
  with.errors = std::move(diagnostics);
  with.its_own = std::count_if(out.begin(), out.end(), is_unread) == 1;
  return out;
}

bool is_lines(const std::string& path) { return source::ending(path) == ".ndjson" || source::ending(path) == ".jsonl"; }

std::vector<std::string> errors_of(const diagnose::Diagnostics& diagnostics, const source::SourceMap& sources) {
  std::vector<std::string> out;
  for (const diagnose::Problem& one : diagnose::problems_of(diagnostics, diagnose::Severity::error, sources)) {
    out.push_back(one.place.empty() ? one.message : one.place + ": " + one.message);
  }
  return out;
}

// Past submittals, one after the other.
class Clerk {
 public:
  Clerk(const source::Files& files, source::SourceMap& sources, std::span<const library::RuleSet> sets,
        const Contrast& differences)
      : files_(files),
        sources_(sources),
        sets_(sets),
        clauses_(paired_clauses(differences)),
        asked_(assess::asked_of(sources, sets)) {}

  void file(const std::string& path) {
    for (const Read& read : is_lines(path) ? lines_of(files_, sources_, path) : records_of(files_, sources_, path)) {
      Filed& filed = out_.filed.emplace_back();
      filed.submittal = read.record.name;
      out_.problems.push_back(read.errors);
      if (read.its_own) {
        filed.errors = errors_of(read.errors, sources_);
      }
      if (read.record.tree) {
        judge(*read.record.tree, filed);
      }
    }
  }

  FiledReview take() { return std::move(out_); }

 private:
  const source::Files& files_;
  source::SourceMap& sources_;
  std::span<const library::RuleSet> sets_;
  const Clauses clauses_;
  const assess::Asked asked_;
  FiledReview out_;

  void judge(const evidence::Node& tree, Filed& filed) {
    if (std::find(out_.read.begin(), out_.read.end(), tree.span.file) == out_.read.end()) {
      out_.read.push_back(tree.span.file);
    }
    diagnose::Merged merged;
    const auto before = assess::assess(asked_, tree, sets_.front(), merged);
    const auto after = assess::assess(asked_, tree, sets_.back(), merged);
    out_.problems.push_back(merged.take());
    for (std::string& error : errors_of(out_.problems.back(), sources_)) {
      filed.errors.push_back(std::move(error));
    }
    if (before && after) {
      const Judged then = judged(*before);
      const Judged now = judged(*after);
      filed.before = then.outcome;
      filed.after = now.outcome;
      filed.clauses = judged_otherwise(then, now, clauses_);
    }
  }
};

}  // namespace

std::vector<std::string> filed_in(const source::Files& files, const std::string& folder,
                                  diagnose::Diagnostics& diagnostics) {
  auto out = library::files_below(
      files, folder, [](const std::string& path) { return evidence::is_submittal_file(path) || is_lines(path); },
      diagnostics);
  if (out.empty() && !diagnostics.has_errors()) {
    diagnostics.error(diagnose::Code::file_unreadable, {}, "found no submittal below the folder `" + folder + "`",
                      "name a folder with .yaml, .yml, .json, .csv or .ndjson files");
  }
  return out;
}

FiledReview judge_filed(const source::Files& files, source::SourceMap& sources, std::span<const library::RuleSet> sets,
                        const Contrast& differences, const std::vector<std::string>& paths) {
  Clerk clerk(files, sources, sets, differences);
  for (const std::string& path : paths) {
    clerk.file(path);
  }
  return clerk.take();
}

assess::Upshot upshot(const ContrastReport& report) {
  const auto any = [&](auto test) { return std::any_of(report.filed.begin(), report.filed.end(), test); };
  const bool unread = any([](const Filed& one) { return !one.before || !one.errors.empty(); });
  const bool judged_otherwise = any([](const Filed& one) { return one.before != one.after || !one.clauses.empty(); });
  return differs(report.contrast) || judged_otherwise ? assess::Upshot::fails
         : unread                                     ? assess::Upshot::incomplete
                                                      : assess::Upshot::complies;
}

}  // namespace plumbrule::contrast
