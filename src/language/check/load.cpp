#include <algorithm>
#include <filesystem>

#include "language/check/check.hpp"
#include "language/check/shelf.hpp"

namespace plumbrule::check {
namespace {

namespace fs = std::filesystem;

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

std::string locate(const source::Files& files, const std::string& name, const std::vector<fs::path>& where) {
  for (const fs::path& folder : where) {
    const fs::path candidate = folder / (name + ".plumb");
    if (files.find(candidate.string()) == source::Found::file) {
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

void load_library(Shelf& shelf, const syntax::Text& name, const std::vector<fs::path>& where,
                  std::vector<syntax::RuleFile>& files, diagnose::Diagnostics& diagnostics) {
  const std::string found = locate(shelf.files(), name.value, where);
  if (found.empty()) {
    diagnostics.error(diagnose::Code::library_missing, name.span,
                      "found no file `" + name.value + ".plumb` for this vocabulary",
                      "put it beside this file, in a folder `vocabulary`, or name its folder with `--library`");
    return;
  }
  const syntax::RuleFile* library = shelf.read(found, name.span, diagnostics);
  if (library == nullptr) {
    return;
  }
  if (!holds_vocabulary(*library)) {
    diagnostics.error(diagnose::Code::library_kind, name.span, "found `" + found + "`, which holds no vocabulary",
                      "only vocabularies can be used by a specification");
  }
  files.push_back(*library);
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
const syntax::RuleFile* base_of(Shelf& shelf, const syntax::RuleFile& amendment, const std::vector<fs::path>& where,
                                diagnose::Diagnostics& diagnostics) {
  const syntax::Text& name = first_of<syntax::Amendment>(amendment)->specification;
  if (!name.given()) {
    return nullptr;  // reported by the reader, or by amend()
  }
  const std::string found = locate(shelf.files(), name.value, where);
  if (found.empty()) {
    diagnostics.error(diagnose::Code::library_missing, name.span,
                      "found no file `" + name.value + ".plumb` for the specification that is amended",
                      "put it beside this file, or name its folder with `--library`");
    return nullptr;
  }
  return shelf.read(found, name.span, diagnostics);
}

}  // namespace

Loaded load(Shelf& shelf, const Request& request, diagnose::Diagnostics& diagnostics) {
  Loaded out;
  const auto where = folders(request);
  const syntax::RuleFile* first = shelf.read(request.path, {}, diagnostics);
  if (first != nullptr && first_of<syntax::Amendment>(*first) != nullptr) {
    out.amendments.push_back(*first);
    first = base_of(shelf, *first, where, diagnostics);
  }
  for (const std::string& path : request.amendments) {
    if (const syntax::RuleFile* amendment = shelf.read(path, {}, diagnostics)) {
      out.amendments.push_back(*amendment);
    }
  }
  if (first == nullptr) {
    return out;
  }
  out.files.push_back(*first);
  if (const auto* specification = first_of<syntax::Specification>(*first)) {
    std::vector<std::string> loaded;
    for (const syntax::Text& name : specification->uses) {
      if (std::find(loaded.begin(), loaded.end(), name.value) != loaded.end()) {
        continue;
      }
      loaded.push_back(name.value);
      load_library(shelf, name, where, out.files, diagnostics);
    }
  }
  return out;
}

}  // namespace plumbrule::check
