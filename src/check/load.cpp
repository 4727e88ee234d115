#include <filesystem>

#include "check/check.hpp"
#include "diagnose/encoding.hpp"

namespace plumbrule::check {
namespace {

namespace fs = std::filesystem;

std::optional<syntax::RuleFile> read(source::SourceMap& sources, const std::string& path, const Span& wanted,
                                     diagnose::Diagnostics& diagnostics) {
  source::FileText file = source::read_file(path);
  if (!file.text) {
    diagnostics.error(diagnose::Code::file_unreadable, wanted, "cannot read `" + path + "`: " + file.reason,
                      "check the path");
    return std::nullopt;
  }
  const source::FileId id = sources.add(path, std::move(*file.text));
  if (!diagnose::check_encoding(sources, id, diagnostics)) {
    return std::nullopt;
  }
  return syntax::parse(sources, id, diagnostics);
}

std::vector<fs::path> folders(const std::string& path, const std::vector<std::string>& libraries) {
  const fs::path folder = fs::path(path).parent_path();
  std::vector<fs::path> out{folder, folder / "vocabulary", folder / "..", folder / ".." / "vocabulary"};
  for (const std::string& library : libraries) {
    out.emplace_back(library);
    out.push_back(fs::path(library) / "vocabulary");
  }
  return out;
}

std::string locate(const std::string& name, const std::vector<fs::path>& where) {
  for (const fs::path& folder : where) {
    const fs::path candidate = folder / (name + ".plumb");
    std::error_code failure;
    if (fs::is_regular_file(candidate, failure)) {
      return candidate.lexically_normal().string();
    }
  }
  return {};
}

bool holds_vocabulary(const syntax::RuleFile& file) {
  for (const syntax::Item& item : file.items) {
    if (std::holds_alternative<syntax::Vocabulary>(item)) {
      return true;
    }
  }
  return false;
}

void load_library(source::SourceMap& sources, const syntax::Text& name, const std::vector<fs::path>& where,
                  std::vector<syntax::RuleFile>& files, diagnose::Diagnostics& diagnostics) {
  const std::string found = locate(name.value, where);
  if (found.empty()) {
    diagnostics.error(diagnose::Code::library_missing, name.span,
                      "found no file `" + name.value + ".plumb` for this vocabulary",
                      "put it beside this file, in a folder `vocabulary`, or name its folder with `--library`");
    return;
  }
  auto library = read(sources, found, name.span, diagnostics);
  if (!library) {
    return;
  }
  if (!holds_vocabulary(*library)) {
    diagnostics.error(diagnose::Code::name_wrong_kind, name.span, "found `" + found + "`, which holds no vocabulary",
                      "only vocabularies can be used by a specification");
  }
  files.push_back(std::move(*library));
}

}  // namespace

std::vector<syntax::RuleFile> load(source::SourceMap& sources, const std::string& path,
                                   const std::vector<std::string>& libraries, diagnose::Diagnostics& diagnostics) {
  std::vector<syntax::RuleFile> files;
  auto first = read(sources, path, {}, diagnostics);
  if (!first) {
    return files;
  }
  std::vector<syntax::Text> uses;
  for (const syntax::Item& item : first->items) {
    if (const auto* specification = std::get_if<syntax::Specification>(&item)) {
      uses.insert(uses.end(), specification->uses.begin(), specification->uses.end());
    }
  }
  files.push_back(std::move(*first));
  const auto where = folders(path, libraries);
  for (const syntax::Text& name : uses) {
    load_library(sources, name, where, files, diagnostics);
  }
  return files;
}

}  // namespace plumbrule::check
