// Any bytes as a submittal: reading, binding, evaluating, explaining and auditing end; a submittal with an error never
// leaves everything complying unnoticed, because the error is reported.

#include "judge/audit/audit.hpp"
#include "judge/evaluate/evaluate.hpp"
#include "judge/explain/explanation.hpp"
#include "target.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace plumbrule;
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  auto files = fuzz::parsed(sources, fuzz::specification(), diagnostics);
  files.push_back(std::move(fuzz::parsed(sources, fuzz::vocabulary(), diagnostics).front()));
  const auto rules = check::check(sources, files, diagnostics);
  if (!rules) {
    fuzz::print_all(diagnostics, sources);
    __builtin_trap();  // the specification must stay right
  }
  const plan::Plan plan = plan::compile(*rules);
  const source::FileId file = sources.add("fuzz.yaml", fuzz::text_of(data, size));
  const auto document = evidence::read_yaml(sources, file, diagnostics);
  if (document) {
    if (const auto evidence = evidence::bind(*document, *rules, {}, diagnostics)) {
      const evaluate::Review review = evaluate::evaluate(plan, *evidence);
      const explain::Context context{sources, *rules, plan, *evidence, review};
      for (const evaluate::Finding& finding : review.findings) {
        (void)explain::explain(context, finding);
      }
      (void)audit::inspect(context);
    }
  }
  fuzz::print_all(diagnostics, sources);
  return 0;
}
