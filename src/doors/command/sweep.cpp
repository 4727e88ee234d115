#include "doors/command/sweep.hpp"

#include <malloc.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <deque>
#include <filesystem>
#include <set>
#include <thread>

#include "doors/command/archive.hpp"
#include "doors/command/crew.hpp"
#include "doors/command/result_file.hpp"
#include "doors/command/sweep_progress.hpp"
#include "doors/command/workplace.hpp"
#include "judge/evidence/written.hpp"
#include "judge/explain/explanation.hpp"
#include "language/library/folder.hpp"
#include "show/report/sweep/sweep.hpp"

namespace plumbrule::command {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t sweep_width = 120;

// Parts come and go by the thousand: their memory stays with the program, or the system has to make the same pages
// ready again for each of them, a fifth of the cost of a record. This is how much may lie unused.
constexpr int most_kept = 16 << 20;

void keep_memory() {
#ifdef __GLIBC__
  mallopt(M_MMAP_THRESHOLD, most_kept);
  mallopt(M_TRIM_THRESHOLD, most_kept);
#endif
}

std::optional<Archive::Form> form_of(const std::string& path, Lining lining) {
  const std::string kind = source::ending(path);
  if (lining != Lining::by_name) {
    return lining == Lining::csv ? Archive::Form::csv : Archive::Form::ndjson;
  }
  if (path == "-" || kind == ".ndjson" || kind == ".jsonl") {
    return Archive::Form::ndjson;
  }
  if (kind == ".csv") {
    return Archive::Form::csv;
  }
  return evidence::is_submittal_file(path) ? std::optional(Archive::Form::document) : std::nullopt;
}

// False if some of the folder cannot be read, which was said.
bool add_folder_of(const Workplace& place, const std::string& folder, std::vector<Archive::Input>& out) {
  diagnose::Diagnostics diagnostics;
  const auto form = [](const std::string& path) { return form_of(path, Lining::by_name); };
  std::vector<std::string> passed_over;
  const auto wanted = [&](const std::string& path) {
    if (!form(path)) {
      passed_over.push_back(path);
    }
    return form(path).has_value();
  };
  for (const std::string& path : library::files_below(place.files, folder, wanted, diagnostics)) {
    out.push_back({path, *form(path)});
  }
  if (!passed_over.empty()) {
    const std::string more =
        passed_over.size() > 1 ? " and " + std::to_string(passed_over.size() - 1) + " more" : std::string();
    print_error("passed over below `" + folder + "` what is no submittal by its ending: `" +
                *std::min_element(passed_over.begin(), passed_over.end()) + "`" + more);
  }
  print_diagnostics(diagnostics, place.sources);
  return !diagnostics.has_errors();
}

// The first path that names the same file as one before it.
std::optional<std::string> named_twice(const std::vector<std::string>& paths) {
  std::set<fs::path> seen;
  for (const std::string& path : paths) {
    std::error_code failure;
    const fs::path real = path == "-" ? fs::path(path) : fs::canonical(path, failure);
    if (!failure && !seen.insert(real).second) {
      return path;
    }
  }
  return std::nullopt;
}

std::optional<std::vector<Archive::Input>> inputs_of(const Workplace& place, const SweepOptions& options) {
  std::vector<Archive::Input> out;
  for (const std::string& path : options.archives) {
    std::error_code failure;
    if (path != "-" && !fs::exists(path, failure)) {
      print_error("cannot read `" + path + "`: no such file; check the path");
      return std::nullopt;
    }
    if (path != "-" && library::is_folder(place.files, path)) {
      if (!add_folder_of(place, path, out)) {
        return std::nullopt;
      }
    } else if (const auto form = form_of(path, options.lining)) {
      out.push_back({path, *form});
    } else {
      print_error("found `" + path +
                  "`, whose ending does not say what it is; call it .ndjson, .csv, .json or .yaml, or say what its "
                  "lines are with --lines");
      return std::nullopt;
    }
  }
  std::vector<std::string> paths;
  paths.reserve(out.size());
  for (const Archive::Input& one : out) {
    paths.push_back(one.name);
  }
  if (const auto twice = named_twice(paths)) {
    print_error("found `" + *twice + "` a second time in the archive; each file counts once");
    return std::nullopt;
  }
  if (out.empty()) {
    print_error("found no submittal in the archive; name files, or a folder with .ndjson, .csv, .json or .yaml files");
    return std::nullopt;
  }
  return out;
}

sweep::SweptSpecification head_of_swept(const library::RuleSet& set) {
  const check::Specification& own = *set.rules.specification;
  sweep::SweptSpecification out{own.name, own.title, own.edition, "", {}};
  out.status = explain::status_text(own.provenance.status);
  for (const check::Requirement& requirement : set.rules.requirements) {
    out.clauses.push_back({requirement.number, requirement.title});
  }
  return out;
}

// Standard error is for errors, which go where they belong between the records.
bool write(const sweep::Written& written, ResultFile& verdicts, Progress& progress) {
  if (!written.errors.empty()) {
    progress.clear();
    std::fwrite(written.errors.data(), 1, written.errors.size(), stderr);
  }
  progress.add(written.records, written.bytes);
  return verdicts.write(written.verdicts);
}

bool run_all(Archive& archive, std::deque<sweep::Worker>& workers, ResultFile& verdicts) {
  Progress progress;
  return Crew(archive, workers, [&](const sweep::Written& written) { return write(written, verdicts, progress); })
      .run();
}

// Where verdicts go to standard output, the summary is their last line; of CSV it goes to standard error.
bool write_summary(const sweep::Summary& report, const SweepOptions& options, ResultFile& verdicts) {
  const bool shared = options.verdicts == "-" && options.out.empty();
  if (options.verdict_form == sweep::VerdictForm::ndjson && !options.verdicts.empty() &&
      !verdicts.write(report::sweep_json(report, true))) {
    return false;
  }
  const std::string text =
      options.format == Format::json ? report::sweep_json(report) : report::sweep_text(report, sweep_width);
  if (shared) {
    if (options.verdict_form == sweep::VerdictForm::csv) {
      std::fwrite(text.data(), 1, text.size(), stderr);
    }
    return verdicts.commit();
  }
  return verdicts.commit() && write_output(text, options.out);
}

// Nothing that is read is written over, nor one of the two outputs by the other.
bool outputs_stand_apart(const SweepOptions& options, const std::vector<std::string>& read) {
  std::error_code failure;
  const bool both = !options.out.empty() && !options.verdicts.empty() && options.verdicts != "-";
  const auto real = [&](const std::string& path) { return fs::weakly_canonical(fs::absolute(path, failure), failure); };
  if (both && real(options.out) == real(options.verdicts)) {
    print_error("found `" + options.out +
                "` for the summary and for the verdicts, so that one would be lost; name two files");
    return false;
  }
  return spares(options.out, read) && spares(options.verdicts, read);
}

Exit cannot_add(const std::string& path, const std::string& reason) {
  print_error("cannot add `" + path + "`: " + reason + "; name the summaries of parts of one archive");
  return Exit::unusable;
}

Exit add_up(const SweepOptions& options) {
  const library::RuleChoice& rules = options.rules;
  if (!options.archives.empty() || !rules.against.empty() || !rules.amendments.empty() || !rules.on.empty() ||
      !options.verdicts.empty() || options.digests) {
    print_error(
        "found an archive, rules, verdicts or digests beside --add-up, which only adds what was counted before; sweep "
        "the archive first, and add its summary up");
    return Exit::unusable;
  }
  if (const auto twice = named_twice(options.summaries)) {
    print_error("found `" + *twice + "` twice; each part of an archive counts once");
    return Exit::unusable;
  }
  if (!spares(options.out, options.summaries)) {
    return Exit::unusable;
  }
  std::optional<sweep::Summary> whole;
  for (const std::string& path : options.summaries) {
    const source::FileText file = source::read_file(path);
    std::string reason = file.reason;
    auto part = file.text ? sweep::read_summary(*file.text, reason) : std::nullopt;
    if (part && whole && !sweep::add_part(*whole, *part, reason)) {
      part.reset();
    } else if (part && !whole) {
      whole = std::move(*part);
      part.emplace();
    }
    if (!part) {
      return cannot_add(path, reason);
    }
  }
  const std::string text =
      options.format == Format::json ? report::sweep_json(*whole) : report::sweep_text(*whole, sweep_width);
  return write_output(text, options.out) ? exit_of(sweep::upshot(*whole)) : Exit::unusable;
}

Exit run_sweep(const SweepOptions& options, const source::SourceMap& sources, const library::RulesInForce& rules,
               Archive& archive) {
  std::vector<sweep::Against> against;
  sweep::Summary report;
  for (const library::RuleSet& set : rules.sets) {
    against.push_back({set.rules.specification->name, set.rules.specification->edition, &set.rules, &set.plan});
    report.specifications.push_back(head_of_swept(set));
  }
  report.origin = library::origin_of(sources, rules);
  const evidence::KnownNames names = assess::names_of(rules.sets);
  const auto on = options.rules.on.empty() ? std::nullopt : evidence::read_date(options.rules.on);
  const sweep::VerdictForm form = options.verdicts.empty() ? sweep::VerdictForm::none : options.verdict_form;
  const std::uint32_t threads =
      options.threads > 0 ? options.threads : std::max(1U, std::thread::hardware_concurrency());
  std::deque<sweep::Worker> workers;
  for (std::uint32_t at = 0; at < threads; ++at) {
    workers.emplace_back(against, names, form, on, options.in_full);
  }
  ResultFile verdicts(options.verdicts);
  if (!verdicts.good() || !verdicts.write(form == sweep::VerdictForm::none ? "" : sweep::verdict_heading(form)) ||
      !run_all(archive, workers, verdicts)) {
    return Exit::unusable;
  }
  for (sweep::Worker& worker : workers) {
    sweep::add(report.tally, worker.tally());
  }
  for (const Archive::Digested& one : archive.digested()) {
    report.origin.files.push_back({one.file, library::archive_kind, one.digest});
  }
  return write_summary(report, options, verdicts) ? exit_of(sweep::upshot(report)) : Exit::unusable;
}

}  // namespace

Exit sweep(const SweepOptions& options) {
  keep_memory();
  std::signal(SIGPIPE, SIG_IGN);  // a closed pipe is an error of the write, which is reported
  if (!options.summaries.empty()) {
    return add_up(options);
  }
  if (options.rules.against.empty() || options.archives.empty()) {
    print_error("found no " + std::string(options.archives.empty() ? "archive" : "specification") +
                "; write `plumbrule sweep ARCHIVE --against SPECIFICATION`, or name summaries with --add-up");
    return Exit::unusable;
  }
  if (!is_day(options.rules.on, " for --on")) {
    return Exit::unusable;
  }
  Workplace place;
  const auto rules = rules_in_force(place, options.rules);
  if (!rules) {
    return Exit::rules_broken;
  }
  auto inputs = inputs_of(place, options);
  if (!inputs) {
    return Exit::unusable;
  }
  std::vector<std::string> read = files_of(place.sources);
  for (const Archive::Input& input : *inputs) {
    read.push_back(input.name);
  }
  if (!outputs_stand_apart(options, read)) {
    return Exit::unusable;
  }
  Archive archive(std::move(*inputs), options.digests);
  return run_sweep(options, place.sources, *rules, archive);
}

}  // namespace plumbrule::command
