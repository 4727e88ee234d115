#include "doors/command/proof.hpp"

#include "apply/proof/proof.hpp"
#include "base/diagnose/render.hpp"
#include "base/source/version.hpp"
#include "doors/command/log.hpp"
#include "doors/command/workplace.hpp"
#include "show/report/proof/proof.hpp"

namespace plumbrule::command {
namespace {

using proof::Proved;

std::string proof_page(const std::vector<Proved>& all, const diagnose::Diagnostics& diagnostics,
                       const source::SourceMap& sources, const ProofOptions& options) {
  switch (options.format) {
    case Format::json:
      return report::proof_json(all, diagnostics, sources);
    case Format::sarif:
      return diagnose::render_sarif(diagnostics, sources, std::string(source::version()));
    case Format::junit:
      return report::proof_junit(all, sources);
    default:
      return report::proof_text(all, options.remarks);
  }
}

}  // namespace

Exit proof(const ProofOptions& options) {
  const Log log(options.log);
  Workplace place;
  diagnose::Diagnostics diagnostics;
  const auto files = library::rule_files(place.shelf, options.paths, diagnostics);
  if (diagnostics.has_errors()) {
    print_diagnostics(diagnostics, place.sources);
    return Exit::unusable;
  }
  std::vector<Proved> all;
  for (const std::string& path : files) {
    log.note("proving " + path);
    all.push_back(proof::prove(place.shelf, path, library_folders(options.libraries)));
    diagnostics.append(all.back().faults);
    for (const Proved::Case& one : all.back().cases) {
      diagnostics.append(one.wrong);
    }
    if (options.remarks || options.format != Format::text) {
      diagnostics.append(all.back().remarks);
    }
  }
  const bool nothing = !diagnostics.has_errors() && proof::nothing_to_prove(all, diagnostics);
  if (options.format == Format::text) {
    print_diagnostics(diagnostics, place.sources);
  }
  if (!write_output(proof_page(all, diagnostics, place.sources, options), options.out, place.sources)) {
    return Exit::unusable;
  }
  return nothing ? Exit::unusable : diagnostics.has_errors() ? Exit::rules_broken : Exit::complies;
}

}  // namespace plumbrule::command
