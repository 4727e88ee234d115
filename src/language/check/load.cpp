#include <algorithm>
#include <filesystem>

#include "language/check/check.hpp"
#include "base/diagnose/encoding.hpp"

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

void add_folders(std::vector<fs::path>& out, const std::string& path) {
  const fs::path folder = fs::path(path).parent_path();
  out.insert(out.end(), {folder, folder / "vocabulary", folder / "..", folder / ".." / "vocabulary"});
}

std::vector<fs::path> folders(const Request& request) {
  std::vector<fs::path> out;
  add_folders(out, request.path);
  for (const std::string& path : request.amendments) {
    add_folders(out, path);
  }
  for (const std::string& library : request.libraries) {
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
    diagnostics.error(diagnose::Code::library_kind, name.span, "found `" + found + "`, which holds no vocabulary",
                      "only vocabularies can be used by a specification");
  }
  files.push_back(std::move(*library));
}

template <typename Item>
const Item* first_of(const syntax::RuleFile& file) {
  for (const syntax::Item& item : file.items) {
    if (const auto* found = std::get_if<Item>(&item)) {
      return found;
    }
  }
  return nullptr;
}

// The specification that an amendment amends.
std::optional<syntax::RuleFile> base_of(source::SourceMap& sources, const syntax::RuleFile& amendment,
                                        const std::vector<fs::path>& where, diagnose::Diagnostics& diagnostics) {
  const syntax::Text& name = first_of<syntax::Amendment>(amendment)->specification;
  if (!name.given()) {
    return std::nullopt;  // reported by the reader, or by amend()
  }
  const std::string found = locate(name.value, where);
  if (found.empty()) {
    diagnostics.error(diagnose::Code::library_missing, name.span,
                      "found no file `" + name.value + ".plumb` for the specification that is amended",
                      "put it beside this file, or name its folder with `--library`");
    return std::nullopt;
  }
  return read(sources, found, name.span, diagnostics);
}

}  // namespace

Loaded load(source::SourceMap& sources, const Request& request, diagnose::Diagnostics& diagnostics) {
  Loaded out;
  const auto where = folders(request);
  auto first = read(sources, request.path, {}, diagnostics);
  if (first && first_of<syntax::Amendment>(*first) != nullptr) {
    auto base = base_of(sources, *first, where, diagnostics);
    out.amendments.push_back(std::move(*first));
    first = std::move(base);
  }
  for (const std::string& path : request.amendments) {
    if (auto amendment = read(sources, path, {}, diagnostics)) {
      out.amendments.push_back(std::move(*amendment));
    }
  }
  if (!first) {
    return out;
  }
  out.files.push_back(std::move(*first));
  if (const auto* specification = first_of<syntax::Specification>(out.files.front())) {
    const std::vector<syntax::Text> uses = specification->uses;
    std::vector<std::string> loaded;
    for (const syntax::Text& name : uses) {
      if (std::find(loaded.begin(), loaded.end(), name.value) != loaded.end()) {
        continue;
      }
      loaded.push_back(name.value);
      load_library(sources, name, where, out.files, diagnostics);
    }
  }
  return out;
}

}  // namespace plumbrule::check
