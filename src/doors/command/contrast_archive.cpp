#include "doors/command/contrast_archive.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "doors/command/folder.hpp"
#include "doors/command/records.hpp"
#include "doors/command/submission.hpp"
#include "judge/evidence/json.hpp"
#include "judge/evidence/sheet.hpp"
#include "judge/explain/explanation.hpp"

namespace plumbrule::command {
namespace {

using evaluate::Verdict;

struct Judgement {
  Verdict verdict{};
  check::Severity severity{};
  bool optional = false;
};

struct Judged {
  evaluate::Outcome outcome{};
  std::map<std::string, Judgement> clauses;  // by number
};

std::optional<Judged> judged(const evidence::Node& document, const RuleSet& set, const evidence::KnownNames& names,
                             Merged& merged) {
  diagnose::Diagnostics problems;
  const auto evidence = evidence::bind(document, set.rules, names, problems);
  merged.add(problems);
  if (!evidence) {
    return std::nullopt;
  }
  const evaluate::Review review = evaluate::evaluate(set.plan, *evidence);
  Judged out;
  out.outcome = evaluate::outcome(set.plan, review.findings, problems.has_errors());
  for (const evaluate::Finding& finding : review.findings) {
    const check::Requirement& requirement = set.rules.requirements[finding.requirement];
    out.clauses.emplace(requirement.number, Judgement{finding.verdict, requirement.severity, requirement.optional});
  }
  return out;
}

using Clauses = std::set<std::pair<std::string, std::string>>;

Clauses paired_clauses(const contrast::Contrast& differences) {
  Clauses out;
  std::set<std::string> left, right;
  for (const contrast::Change& change : differences.changes) {
    if (change.before != nullptr && change.after != nullptr) {
      out.emplace(change.before->requirement->number, change.after->requirement->number);
      left.insert(change.before->requirement->number);
      right.insert(change.after->requirement->number);
    }
  }
  for (const contrast::Change& change : differences.changes) {
    if (change.after == nullptr && left.count(change.before->requirement->number) == 0) {
      out.emplace(change.before->requirement->number, "");
    }
    if (change.before == nullptr && right.count(change.after->requirement->number) == 0) {
      out.emplace("", change.after->requirement->number);
    }
  }
  return out;
}

// What hangs on a verdict is told where it is not that all of it does.
std::string stated(const std::string& number, const Judged& judged) {
  if (number.empty()) {
    return "";
  }
  const Judgement& one = judged.clauses.at(number);
  std::string weight(one.severity == check::Severity::reject ? "" : explain::severity_text(one.severity));
  weight += one.optional ? (weight.empty() ? "" : ", ") + std::string("optional test") : "";
  return number + " " + std::string(explain::verdict_text(one.verdict)) + (weight.empty() ? "" : " (" + weight + ")");
}

// A clause may be held against several, each for other mixes: only one that is for this mix says something.
class Held {
 public:
  Held(const Judged& before, const Judged& after, const Clauses& clauses)
      : before_(before), after_(after), clauses_(clauses) {
    for (const auto& [left, right] : clauses) {
      if (!left.empty() && !right.empty() && applies(before, left) && applies(after, right)) {
        left_.insert(left);
        right_.insert(right);
      }
    }
  }

  [[nodiscard]] std::vector<report::Filed::Clause> changed() const {
    std::vector<report::Filed::Clause> out;
    for (const auto& [left, right] : clauses_) {
      if (differs(left, right)) {
        out.push_back({stated(left, before_), stated(right, after_)});
      }
    }
    return out;
  }

 private:
  const Judged& before_;
  const Judged& after_;
  const Clauses& clauses_;
  std::set<std::string> left_, right_;  // those that apply, as does one that they are held against

  static bool applies(const Judged& judged, const std::string& number) {
    return judged.clauses.at(number).verdict != Verdict::does_not_apply;
  }
  // Of a clause that stands on one side only: a failure, or that something is missing; that it complies, only where the
  // outcome is another one, which may hang on it.
  [[nodiscard]] bool decides(const Judgement& one) const {
    return one.verdict == Verdict::fails || one.verdict == Verdict::not_shown ||
           (one.verdict == Verdict::complies && one.severity != check::Severity::advise &&
            before_.outcome != after_.outcome);
  }
  // The same verdict, of which something else follows (language.md, 7.7).
  [[nodiscard]] bool weighs_otherwise(const Judgement& left, const Judgement& right) const {
    switch (left.verdict) {
      case Verdict::does_not_apply:
        return false;
      case Verdict::fails:
        return left.severity != right.severity;
      case Verdict::not_shown:
        return left.severity != right.severity || left.optional != right.optional;
      default:
        return left.severity != right.severity && before_.outcome != after_.outcome;
    }
  }
  [[nodiscard]] bool differs(const std::string& left, const std::string& right) const {
    if (left.empty() || right.empty()) {
      return decides(left.empty() ? after_.clauses.at(right) : before_.clauses.at(left));
    }
    const bool held_elsewhere =
        (!applies(after_, right) && left_.count(left) > 0) || (!applies(before_, left) && right_.count(right) > 0);
    const Judgement& then = before_.clauses.at(left);
    const Judgement& now = after_.clauses.at(right);
    return !held_elsewhere && (then.verdict != now.verdict || weighs_otherwise(then, now));
  }
};

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
  SubmittalRecord record;
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

std::vector<Read> lines_of(source::SourceMap& sources, const std::string& path) {
  source::FileText text = source::read_file(path);
  if (!text.text) {
    return unread(path, "cannot read `" + path + "`: " + text.reason, "check the path");
  }
  auto out = lines_of(sources, sources.add(path, std::move(*text.text)));
  return !out.empty() ? std::move(out)
                      : unread(path, "found no record in `" + path + "`",
                               "write a submittal a line, or take the file out of the folder");
}

// Of several records that cannot be read it is not known which error is whose.
std::vector<Read> records_of(source::SourceMap& sources, const std::string& path) {
  diagnose::Diagnostics diagnostics;
  std::vector<Read> out;
  for (SubmittalRecord& one : read_records(sources, path, diagnostics)) {
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

bool is_lines(const std::string& path) { return ending(path) == ".ndjson" || ending(path) == ".jsonl"; }

std::vector<std::string> errors_of(const diagnose::Diagnostics& diagnostics, const source::SourceMap& sources) {
  std::vector<std::string> out;
  for (const report::Problem& one : problems_of(diagnostics, diagnose::Severity::error, sources)) {
    out.push_back(one.place.empty() ? one.message : one.place + ": " + one.message);
  }
  return out;
}

// Past submittals, one after the other.
class Clerk {
 public:
  Clerk(source::SourceMap& sources, const std::vector<RuleSet>& sets, const contrast::Contrast& differences,
        std::vector<source::FileId>& read)
      : sources_(sources), sets_(sets), clauses_(paired_clauses(differences)), names_(names_of(sets)), read_(read) {}

  void file(const std::string& path) {
    for (const Read& read : is_lines(path) ? lines_of(sources_, path) : records_of(sources_, path)) {
      report::Filed& filed = out_.emplace_back();
      filed.submittal = read.record.name;
      print_diagnostics(read.errors, sources_);
      if (read.its_own) {
        filed.errors = errors_of(read.errors, sources_);
      }
      if (read.record.tree) {
        judge(*read.record.tree, filed);
      }
    }
  }

  std::vector<report::Filed> take() { return std::move(out_); }

 private:
  source::SourceMap& sources_;
  const std::vector<RuleSet>& sets_;
  const Clauses clauses_;
  const evidence::KnownNames names_;
  std::vector<source::FileId>& read_;
  std::vector<report::Filed> out_;

  void judge(const evidence::Node& tree, report::Filed& filed) {
    if (std::find(read_.begin(), read_.end(), tree.span.file) == read_.end()) {
      read_.push_back(tree.span.file);
    }
    Merged merged;
    const auto before = judged(tree, sets_.front(), names_, merged);
    const auto after = judged(tree, sets_.back(), names_, merged);
    const diagnose::Diagnostics problems = merged.take();
    print_diagnostics(problems, sources_);
    for (std::string& error : errors_of(problems, sources_)) {
      filed.errors.push_back(std::move(error));
    }
    if (before && after) {
      filed.before = before->outcome;
      filed.after = after->outcome;
      filed.clauses = Held(*before, *after, clauses_).changed();
    }
  }
};

}  // namespace

std::optional<std::vector<std::string>> filed_in(const std::string& folder) {
  if (folder.empty()) {
    return std::vector<std::string>();
  }
  diagnose::Diagnostics diagnostics;
  auto out = files_below(
      folder, [](const std::string& path) { return is_submittal_file(path) || is_lines(path); }, diagnostics);
  if (out.empty() && !diagnostics.has_errors()) {
    diagnostics.error(diagnose::Code::file_unreadable, {}, "found no submittal below the folder `" + folder + "`",
                      "name a folder with .yaml, .yml, .json, .csv or .ndjson files");
  }
  print_diagnostics(diagnostics, source::SourceMap());
  return diagnostics.has_errors() ? std::nullopt : std::optional(std::move(out));
}

std::vector<report::Filed> judge_filed(source::SourceMap& sources, const std::vector<RuleSet>& sets,
                                       const contrast::Contrast& differences, const std::vector<std::string>& paths,
                                       std::vector<source::FileId>& read) {
  Clerk clerk(sources, sets, differences, read);
  for (const std::string& path : paths) {
    clerk.file(path);
  }
  return clerk.take();
}

}  // namespace plumbrule::command
