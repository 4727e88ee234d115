#include "apply/sweep/worker.hpp"

#include "base/diagnose/problem.hpp"
#include "base/diagnose/render.hpp"
#include "judge/evidence/sheet.hpp"
#include "judge/evidence/text_of_file.hpp"

namespace plumbrule::sweep {
namespace {

std::string name_of(const Lines& lines, std::uint32_t number) { return lines.file + ":" + std::to_string(number); }

bool is_blank(std::string_view line) { return line.find_first_not_of(" \t\r") == std::string_view::npos; }

void append_errors(const diagnose::Diagnostics& diagnostics, const source::SourceMap& sources, std::string& out) {
  for (const diagnose::Diagnostic& one : diagnostics.all()) {
    if (one.severity == diagnose::Severity::error) {
      out += diagnose::render_text(one, sources, false);
    }
  }
}

// The same error against several specifications counts once; warnings do not count.
diagnose::Diagnostics errors_of(diagnose::Merged& merged) {
  diagnose::Diagnostics out;
  const diagnose::Diagnostics all = merged.take();
  for (const diagnose::Diagnostic& found : all.all()) {
    if (found.severity == diagnose::Severity::error) {
      out.add(found);
    }
  }
  return out;
}

}  // namespace

Worker::Worker(const std::vector<Against>& against, const evidence::KnownNames& names, VerdictForm form,
               std::optional<std::int32_t> on, bool in_full)
    : against_(against),
      names_(names),
      on_(on),
      in_full_(in_full),
      form_(form),
      objects_{{}, {against, names}},
      rows_{{}, {against, names}} {
  for (const Against& one : against_) {
    writers_.emplace_back(one, form);
    SpecificationTally& tally = tally_.specifications.emplace_back();
    tally.clauses.resize(one.plan->requirements.size());
  }
}

Written Worker::run(const Lines& lines) {
  Written out;
  out.bytes = lines.text.size();
  now_ = lines.is_sheet ? &rows_ : &objects_;
  if (lines.is_sheet) {
    use_sheet(lines, out);
  }
  std::string_view rest = lines.text;
  std::uint32_t number = lines.first_line;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    line(lines, rest.substr(0, end), number++, out);
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return out;
}

void Worker::line(const Lines& lines, std::string_view text, std::uint32_t number, Written& out) {
  if (is_blank(text)) {
    ++tally_.blank;
    return;
  }
  ++tally_.records;
  ++out.records;
  if (text.size() <= evidence::largest_submittal && !in_full_ && quickly(lines, text, number, out)) {
    return;
  }
  const std::string record = name_of(lines, number);
  if (text.size() > evidence::largest_submittal) {
    out.errors += record + ": error: found a line of more than " + std::to_string(evidence::largest_submittal) +
                  " bytes, longer than a submittal may be\n  to mend: put each record on a line of its own\n";
    return refuse(record, out);
  }
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  const auto document = read(lines, text, number, sources, diagnostics);
  append_errors(diagnostics, sources, out.errors);
  if (!document) {
    refuse(record, out);
  } else if (judge_all(*document, record, sources, out) && !in_full_) {
    learn(text, lines.is_sheet);
  }
}

bool Worker::read_cells(std::string_view text, bool is_row) {
  return is_row ? LineReader::read_row(text, now_->columns, cells_) : reader_.read_json(text, now_->columns, cells_);
}

// By the programs. False: nothing was written, and the record must be judged in full.
bool Worker::quickly(const Lines& lines, std::string_view text, std::uint32_t number, Written& out) {
  const bool taken = read_cells(text, lines.is_sheet);
  std::vector<Program>* const programs = taken && !on_ ? now_->programs.find(now_->columns, cells_) : nullptr;
  if (programs == nullptr) {
    return false;
  }
  const std::string record = form_ != VerdictForm::none ? name_of(lines, number) : std::string();
  for (std::size_t at = 0; at < programs->size(); ++at) {
    (*programs)[at].run(cells_, judgement_);
    add(tally_.specifications[at], judgement_);
    if (form_ != VerdictForm::none) {
      writers_[at].append(out.verdicts, record, mix(), judgement_, 0);
    }
  }
  return true;
}

std::string_view Worker::mix() const {
  const auto column = now_->columns.find("mix");
  return column ? cells_[*column].text : std::string_view{};
}

// A record without any error shows what its columns are for. Records that name columns anew are not many.
bool Worker::learn(std::string_view text, bool is_row) {
  if (!is_row) {
    diagnose::Diagnostics none;
    source::SourceMap sources;
    const auto id = sources.add("record", std::string(text));
    const auto document = json_.read(sources.text(id), id, 0, none);
    if (!document || !evidence::is_flat(*document) || now_->columns.size() + document->entries.size() > Columns::most) {
      return false;
    }
    for (const evidence::Entry& entry : document->entries) {
      if (!now_->columns.find(entry.key)) {
        now_->columns.add(entry.key);
      }
    }
  }
  const bool taken = read_cells(text, is_row);
  if (taken) {
    now_->programs.learn(now_->columns, cells_, tally_.specifications);
  }
  return taken;
}

// The columns of a sheet are its headings; they are known before the first row.
void Worker::use_sheet(const Lines& lines, Written& out) {
  const std::string& heading = lines.heading;
  if (sheet_.heading == heading && !lines.begins) {
    return;
  }
  sheet_ = {heading, std::nullopt};
  rows_.programs.settle(tally_.specifications);
  rows_ = {{}, {against_, names_}};
  diagnose::Diagnostics diagnostics;
  source::SourceMap sources;
  const auto file = sources.add(lines.file, heading, lines.heading_line);
  const bool readable = evidence::text_of_file(sources, file, diagnose::Code::submittal_sheet, diagnostics).has_value();
  const auto cells = readable ? evidence::split_row(heading, file, 0, diagnostics) : std::nullopt;
  sheet_.headings = cells ? evidence::read_headings(*cells, diagnostics) : std::nullopt;
  if (lines.begins) {
    append_errors(diagnostics, sources, out.errors);
  }
  if (!sheet_.headings) {
    return;
  }
  for (const evidence::Cell& cell : *cells) {
    if (cells->size() <= Columns::most) {
      now_->columns.add(cell.text);
    }
  }
}

std::optional<evidence::Node> Worker::read(const Lines& lines, std::string_view text, std::uint32_t number,
                                           source::SourceMap& sources, diagnose::Diagnostics& diagnostics) {
  if (!lines.is_sheet) {
    const auto file = sources.add(lines.file, std::string(text), number);
    auto document = json_.read(sources.text(file), file, 0, diagnostics);
    return document && evidence::is_flat(*document) ? evidence::submittal_of(*document, diagnostics)
                                                    : std::move(document);
  }
  sources.add(lines.file, lines.heading, lines.heading_line);
  const auto file = sources.add(lines.file, std::string(text), number);
  if (!sheet_.headings) {
    diagnostics.error(diagnose::Code::submittal_sheet, {file, 0, static_cast<std::uint32_t>(text.size())},
                      "found a record under headings that cannot be read", "mend the headings in the first line");
    return std::nullopt;
  }
  if (!evidence::text_of_file(sources, file, diagnose::Code::submittal_sheet, diagnostics)) {
    return std::nullopt;
  }
  const auto cells = evidence::split_row(sources.text(file), file, 0, diagnostics);
  const source::Span row{file, 0, static_cast<std::uint32_t>(text.size())};
  return cells ? evidence::submittal_of(*sheet_.headings, *cells, row, diagnostics) : std::nullopt;
}

// True: nothing was remarked.
bool Worker::judge_all(const evidence::Node& document, const std::string& record, const source::SourceMap& sources,
                       Written& out) {
  diagnose::Merged merged;
  std::vector<Judgement> judgements;
  std::string mix;
  for (const Against& one : against_) {
    diagnose::Diagnostics problems;
    auto evidence = evidence::bind(document, *one.rules, names_, problems);
    merged.add(problems);
    if (!evidence) {
      append_errors(errors_of(merged), sources, out.errors);
      refuse(record, out);
      return false;
    }
    evidence->date = on_.value_or(evidence->date);
    mix = evidence->identity.mix;
    judge(one, *evidence, problems.has_errors(), judgements.emplace_back());
  }
  const diagnose::Diagnostics all = errors_of(merged);
  append_errors(all, sources, out.errors);
  tally_.faulty += all.all().empty() ? 0 : 1;
  for (std::size_t at = 0; at < judgements.size(); ++at) {
    add(tally_.specifications[at], judgements[at]);
    if (form_ != VerdictForm::none) {
      writers_[at].append(out.verdicts, record, mix, judgements[at], all.all().size());
    }
  }
  return all.all().empty();
}

void Worker::refuse(const std::string& record, Written& out) {
  ++tally_.unreadable;
  if (form_ != VerdictForm::none) {
    for (const VerdictWriter& writer : writers_) {
      writer.append_unreadable(out.verdicts, record);
    }
  }
}

Written Worker::run(const Document& document) {
  Written out;
  out.bytes = document.text.size();
  out.records = 1;
  ++tally_.records;
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  const auto file = sources.add(document.file, document.text);
  const auto tree = document.is_json ? evidence::read_json(sources, file, diagnostics)
                                     : evidence::read_yaml(sources, file, diagnostics);
  const auto submittal = tree && evidence::is_flat(*tree) ? evidence::submittal_of(*tree, diagnostics) : tree;
  append_errors(diagnostics, sources, out.errors);
  if (!submittal) {
    refuse(document.file, out);
  } else {
    judge_all(*submittal, document.file, sources, out);
  }
  return out;
}

Written Worker::unreadable(const std::string& file, const std::string& reason) {
  Written out;
  out.records = 1;
  ++tally_.records;
  diagnose::Diagnostics diagnostics;
  diagnostics.error(diagnose::Code::file_unreadable, {}, "cannot read `" + file + "`: " + reason, "check the file");
  append_errors(diagnostics, source::SourceMap{}, out.errors);
  refuse(file, out);
  return out;
}

}  // namespace plumbrule::sweep
