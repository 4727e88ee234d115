#include "command/contrast.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "command/folder.hpp"
#include "command/origin.hpp"
#include "command/records.hpp"
#include "command/submission.hpp"
#include "explain/explanation.hpp"
#include "report/contrast.hpp"

namespace plumbrule::command {
namespace {

constexpr std::size_t page_width = 120;

std::optional<RuleSet> specification(source::SourceMap& sources, const std::string& path,
                                     const std::vector<std::string>& amendments, const ContrastOptions& options) {
  diagnose::Diagnostics diagnostics;
  auto set = prepare_specification(sources, {path, amendments, library_folders(options.libraries)}, "", diagnostics);
  if (set) {
    diagnostics.append(set->mismatches);
  }
  print_diagnostics(diagnostics, sources);
  return diagnostics.has_errors() ? std::nullopt : std::move(set);
}

struct Judged {
  evaluate::Outcome outcome{};
  std::map<std::string, evaluate::Verdict> verdicts;  // by clause
};

std::optional<Judged> judged(const evidence::Node& document, const RuleSet& set, const evidence::KnownNames& names) {
  diagnose::Diagnostics problems;
  const auto evidence = evidence::bind(document, set.rules, names, problems);
  if (!evidence) {
    return std::nullopt;
  }
  const evaluate::Review review = evaluate::evaluate(set.plan, *evidence);
  Judged out;
  out.outcome = evaluate::outcome(set.plan, review.findings, problems.has_errors());
  for (const evaluate::Finding& finding : review.findings) {
    out.verdicts.emplace(set.rules.requirements[finding.requirement].number, finding.verdict);
  }
  return out;
}

std::set<std::pair<std::string, std::string>> paired_clauses(const contrast::Contrast& differences) {
  std::set<std::pair<std::string, std::string>> out;
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

std::string stated(const std::string& number, const std::map<std::string, evaluate::Verdict>& verdicts) {
  return number.empty() ? "" : number + " " + std::string(explain::verdict_text(verdicts.at(number)));
}

// Of a clause that stands on one side only, what it decides: a failure, or that something is missing.
bool decides(evaluate::Verdict verdict) {
  return verdict == evaluate::Verdict::fails || verdict == evaluate::Verdict::not_shown;
}

// A clause may be held against several, each for other mixes: only one that is for this mix says something.
class Held {
 public:
  Held(const Judged& before, const Judged& after, const std::set<std::pair<std::string, std::string>>& clauses)
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
        out.push_back({stated(left, before_.verdicts), stated(right, after_.verdicts)});
      }
    }
    return out;
  }

 private:
  const Judged& before_;
  const Judged& after_;
  const std::set<std::pair<std::string, std::string>>& clauses_;
  std::set<std::string> left_, right_;  // those that apply, as does one that they are held against

  static bool applies(const Judged& judged, const std::string& number) {
    return judged.verdicts.at(number) != evaluate::Verdict::does_not_apply;
  }
  [[nodiscard]] bool differs(const std::string& left, const std::string& right) const {
    if (left.empty() || right.empty()) {
      return left.empty() ? decides(after_.verdicts.at(right)) : decides(before_.verdicts.at(left));
    }
    const bool held_elsewhere =
        (!applies(after_, right) && left_.count(left) > 0) || (!applies(before_, left) && right_.count(right) > 0);
    return !held_elsewhere && before_.verdicts.at(left) != after_.verdicts.at(right);
  }
};

std::vector<report::Filed> archive(source::SourceMap& sources, const std::vector<RuleSet>& sets,
                                   const contrast::Contrast& differences, const std::vector<std::string>& paths,
                                   std::vector<source::FileId>& read) {
  const auto clauses = paired_clauses(differences);
  const evidence::KnownNames names = names_of(sets);
  std::vector<report::Filed> out;
  for (const std::string& path : paths) {
    diagnose::Diagnostics diagnostics;
    std::vector<SubmittalRecord> records = read_records(sources, path, diagnostics);
    print_diagnostics(diagnostics, sources);
    if (records.empty()) {
      records.push_back({path, "", std::nullopt});
    }
    for (const SubmittalRecord& record : records) {
      report::Filed& filed = out.emplace_back();
      filed.submittal = record.name;
      if (record.tree) {
        read.push_back(record.tree->span.file);
      }
      const auto before = record.tree ? judged(*record.tree, sets.front(), names) : std::nullopt;
      const auto after = record.tree ? judged(*record.tree, sets.back(), names) : std::nullopt;
      if (before && after) {
        filed.before = before->outcome;
        filed.after = after->outcome;
        filed.clauses = Held(*before, *after, clauses).changed();
      }
    }
  }
  return out;
}

// Nothing if the folder holds no submittal, or cannot be read whole, which was said.
std::optional<std::vector<std::string>> filed_in(const std::string& folder) {
  if (folder.empty()) {
    return std::vector<std::string>();
  }
  diagnose::Diagnostics diagnostics;
  auto out = files_below(folder, is_submittal_file, diagnostics);
  if (out.empty() && !diagnostics.has_errors()) {
    diagnostics.error(diagnose::Code::file_unreadable, {}, "found no submittal below the folder `" + folder + "`",
                      "name a folder with .yaml, .yml, .json or .csv files");
  }
  print_diagnostics(diagnostics, source::SourceMap());
  return diagnostics.has_errors() ? std::nullopt : std::optional(std::move(out));
}

std::string page(const report::ContrastReport& report, Format format) {
  return format == Format::html       ? report::contrast_html(report)
         : format == Format::json     ? report::contrast_json(report)
         : format == Format::markdown ? report::contrast_markdown(report)
                                      : report::contrast_text(report, page_width);
}

Exit status(const report::ContrastReport& report) {
  const bool differs = std::any_of(report.contrast.changes.begin(), report.contrast.changes.end(),
                                   [](const contrast::Change& one) { return one.kind != contrast::Kind::same; });
  const bool unread =
      std::any_of(report.filed.begin(), report.filed.end(), [](const report::Filed& one) { return !one.before; });
  const bool judged_otherwise = std::any_of(report.filed.begin(), report.filed.end(), [](const report::Filed& one) {
    return one.before != one.after || !one.clauses.empty();
  });
  return differs || judged_otherwise ? Exit::fails : unread ? Exit::incomplete : Exit::complies;
}

}  // namespace

Exit contrast(const ContrastOptions& options) {
  source::SourceMap sources;
  if (options.after.empty() && options.amendments.empty()) {
    print_error("found one specification and no amendment; name another specification, or an amendment with --with");
    return Exit::unusable;
  }
  auto before = specification(sources, options.before, options.before_amendments, options);
  auto after =
      specification(sources, options.after.empty() ? options.before : options.after, options.amendments, options);
  if (!before || !after) {
    return Exit::rules_broken;
  }
  const auto filed = filed_in(options.archive);
  if (!filed) {
    return Exit::unusable;
  }
  std::vector<RuleSet> sets;
  sets.push_back(std::move(*before));
  sets.push_back(std::move(*after));
  const contrast::Contrast differences = contrast::contrast(sets.front().rules, sets.back().rules);
  report::ContrastReport report{sets.front().rules, sets.back().rules, differences, !options.archive.empty(), {}, {}};
  std::vector<source::FileId> submittals;
  if (report.archive) {
    report.filed = archive(sources, sets, differences, *filed, submittals);
  }
  report.origin = origin_of(sources, sets, submittals);
  return write_output(page(report, options.format), options.out) ? status(report) : Exit::unusable;
}

}  // namespace plumbrule::command
