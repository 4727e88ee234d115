#include "judge/evidence/records.hpp"

#include <algorithm>
#include <array>

#include "base/diagnose/quote.hpp"
#include "judge/evidence/json.hpp"
#include "judge/evidence/sheet.hpp"

namespace plumbrule::evidence {
namespace {

std::string mix_of(const std::optional<Node>& tree) {
  const Node* mix = tree ? tree->find("mix") : nullptr;
  return mix == nullptr ? "" : mix->text;
}

std::optional<source::FileId> opened(const source::Files& files, source::SourceMap& sources, const std::string& path,
                                     diagnose::Diagnostics& diagnostics) {
  source::FileText file = files.read(path);
  if (!file.text) {
    diagnostics.error(diagnose::Code::file_unreadable, {}, "cannot read `" + path + "`: " + file.reason,
                      "check the path");
    return std::nullopt;
  }
  return sources.add(path, std::move(*file.text));
}

std::optional<Node> nested_or_flat(const source::SourceMap& sources, source::FileId file,
                                   diagnose::Diagnostics& diagnostics) {
  auto tree = read_json(sources, file, diagnostics);
  return tree && is_flat(*tree) ? submittal_of(*tree, diagnostics) : std::move(tree);
}

std::string label(std::size_t number, const std::string& mix) {
  return std::to_string(number) + (mix.empty() ? "" : " (" + mix + ")");
}

std::vector<SubmittalRecord> sheet(const source::SourceMap& sources, source::FileId file, const std::string& path,
                                   diagnose::Diagnostics& diagnostics) {
  const auto sheet = read_sheet(sources, file, diagnostics);
  std::vector<SubmittalRecord> out;
  for (const SheetRow& row : sheet ? sheet->rows : std::vector<SheetRow>()) {
    auto tree = submittal_of(sheet->headings, row.cells, row.span, diagnostics);
    std::string mix = mix_of(tree);
    std::string name = sheet->rows.size() == 1 ? path : path + ", record " + label(out.size() + 1, mix);
    out.push_back({std::move(name), std::move(mix), std::move(tree)});
  }
  return out;
}

std::string listed(const std::vector<SubmittalRecord>& records) {
  constexpr std::size_t most = 10;
  std::string out;
  for (std::size_t at = 0; at < std::min(records.size(), most); ++at) {
    out += (at == 0 ? "" : ", ") + label(at + 1, records[at].mix);
  }
  return out + (records.size() > most ? " and so on" : "");
}

// Records that a name may mean: by mix, or by number. `number=` and `mix=` leave no choice.
std::vector<std::size_t> picked(const std::vector<SubmittalRecord>& records, const std::string& record) {
  std::vector<std::size_t> out;
  for (std::size_t at = 0; at < records.size(); ++at) {
    const std::string number = std::to_string(at + 1);
    const std::string& mix = records[at].mix;
    if (record == number || record == "number=" + number || record == mix || record == "mix=" + mix) {
      out.push_back(at);
    }
  }
  return out;
}

void report_choice(const std::vector<SubmittalRecord>& records, const std::string& path, const RecordChoice& choice,
                   bool several, diagnose::Diagnostics& diagnostics) {
  const auto& [record, option] = choice;
  const std::string message =
      record.empty() ? "found " + std::to_string(records.size()) + " records in `" + path + "`, and no `" + option +
                           "` that names one"
      : several ? "found several records that " + diagnose::quoted(record) + " may mean in `" + path + "`"
                : "found " + diagnose::quoted(record) + ", no record of `" + path + "`";
  diagnostics.error(
      diagnose::Code::submittal_sheet, {}, message,
      "name one by its number" + std::string(several ? ", as in `number=1`: " : " or its mix: ") + listed(records));
}

}  // namespace

bool is_submittal_file(const std::string& path) {
  constexpr std::array<std::string_view, 4> endings{".yaml", ".yml", ".json", ".csv"};
  return std::find(endings.begin(), endings.end(), source::ending(path)) != endings.end();
}

std::vector<SubmittalRecord> read_records(const source::SourceMap& sources, source::FileId file,
                                          diagnose::Diagnostics& diagnostics) {
  const std::string path(sources.name(file));
  if (source::ending(path) == ".csv") {
    return sheet(sources, file, path, diagnostics);
  }
  auto tree = source::ending(path) == ".json" ? nested_or_flat(sources, file, diagnostics)
                                              : read_yaml(sources, file, diagnostics);
  std::vector<SubmittalRecord> out;
  if (tree) {
    std::string mix = mix_of(tree);
    out.push_back({path, std::move(mix), std::move(tree)});
  }
  return out;
}

std::vector<SubmittalRecord> read_records(const source::Files& files, source::SourceMap& sources,
                                          const std::string& path, diagnose::Diagnostics& diagnostics) {
  const auto file = opened(files, sources, path, diagnostics);
  return file ? read_records(sources, *file, diagnostics) : std::vector<SubmittalRecord>();
}

std::optional<SubmittalRecord> read_record(const source::SourceMap& sources, source::FileId file,
                                           const RecordChoice& choice, diagnose::Diagnostics& diagnostics) {
  const std::string& record = choice.record;
  diagnose::Diagnostics found;  // what is wrong with other records does not matter
  std::vector<SubmittalRecord> records = read_records(sources, file, found);
  if (records.empty()) {
    diagnostics.append(found);
    return std::nullopt;
  }
  const auto fitting = record.empty() && records.size() == 1 ? std::vector<std::size_t>{0} : picked(records, record);
  if (fitting.size() != 1 || (record.empty() && records.size() != 1)) {
    report_choice(records, std::string(sources.name(file)), choice, fitting.size() > 1, diagnostics);
    return std::nullopt;
  }
  const std::size_t at = fitting.front();
  if (!records[at].tree) {
    diagnostics.append(found);
    return std::nullopt;
  }
  return std::move(records[at]);
}

std::optional<SubmittalRecord> read_record(const source::Files& files, source::SourceMap& sources,
                                           const std::string& path, const RecordChoice& choice,
                                           diagnose::Diagnostics& diagnostics) {
  const auto file = opened(files, sources, path, diagnostics);
  return file ? read_record(sources, *file, choice, diagnostics) : std::nullopt;
}

}  // namespace plumbrule::evidence
