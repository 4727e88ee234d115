#include "language/check/shelf.hpp"

#include "base/diagnose/encoding.hpp"

namespace plumbrule::check {

Shelf::Volume Shelf::open(const std::string& path) {
  Volume out;
  source::FileText file = files_.read(path);
  if (!file.text) {
    out.unreadable = file.reason;
    return out;
  }
  const source::FileId id = sources_.add(path, std::move(*file.text));
  if (diagnose::check_encoding(sources_, id, out.faults)) {
    out.tree = syntax::parse(sources_, id, out.faults);
  }
  return out;
}

const syntax::RuleFile* Shelf::read(const std::string& path, const source::Span& wanted,
                                    diagnose::Diagnostics& diagnostics) {
  auto found = volumes_.find(path);
  if (found == volumes_.end()) {
    found = volumes_.emplace(path, open(path)).first;
  }
  const Volume& volume = found->second;
  diagnostics.append(volume.faults);
  if (!volume.unreadable.empty()) {
    diagnostics.error(diagnose::Code::file_unreadable, wanted, "cannot read `" + path + "`: " + volume.unreadable,
                      "check the path");
  }
  return volume.tree ? &*volume.tree : nullptr;
}

}  // namespace plumbrule::check
