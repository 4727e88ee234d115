#include "made_rules.hpp"

namespace plumbrule::property {

std::unique_ptr<MadeRules> make_rules(RuleTexts texts) {
  auto out = std::make_unique<MadeRules>();
  out->texts = std::move(texts);
  const auto parse = [&](const char* name, std::string text) {
    return syntax::parse(out->sources, out->sources.add(name, std::move(text)), out->diagnostics);
  };
  check::Loaded loaded;
  loaded.files.push_back(parse("spec.plumb", out->texts.specification()));
  loaded.files.push_back(parse("mix.plumb", out->texts.vocabulary));
  if (!out->texts.amendment.empty()) {
    loaded.amendments.push_back(parse("amend.plumb", out->texts.amendment));
  }
  out->rules = oracle::prepare(out->sources, std::move(loaded), "", out->diagnostics);
  return out;
}

std::unique_ptr<MadeRules> make_rules(std::uint64_t seed, std::size_t clauses) {
  Random random(seed);
  std::vector<std::uint64_t> seeds(clauses);
  for (std::uint64_t& one : seeds) {
    one = random.seed();
  }
  return make_rules(write_rules(random.seed(), seeds));
}

std::string errors_of(const MadeRules& made) {
  std::string out;
  for (const diagnose::Diagnostic& one : made.diagnostics.all()) {
    if (one.severity == diagnose::Severity::error) {
      out += made.sources.place_text(one.primary.span) + ": " + one.message + "\n";
      if (one.primary.span.known()) {
        const source::Place place = made.sources.place(one.primary.span);
        out += "    " + std::string(made.sources.line_text(one.primary.span.file, place.line)) + "\n";
      }
    }
  }
  return out;
}

}  // namespace plumbrule::property
