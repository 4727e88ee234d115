// Any bytes as a submittal: reading, binding, evaluating and explaining end; a submittal with an error never leaves
// everything complying unnoticed, because the error is reported.

#include "evaluate/evaluate.hpp"
#include "explain/explanation.hpp"
#include "target.hpp"

namespace {

const char* const specification = R"(plumbrule 1
specification s "S" edition 2026 compare by the rounding method, ties to even
requirement 1 "a" abrasion_loss under soak 1 h, mean of at least 2 specimens, shall be at most 538 g/m2
requirement 2 "b" where traffic is heavy either torque under soak 30 min shall be at least 20 kg-cm
  or mode under soak 30 min shall be spin
requirement 3 "c" binder shall be between 5.5 % and 10.5 % of dry_aggregate
requirement 4 "d" binder, mean of at least 1 results in each lot, shall be within 0.5 % of dry_aggregate from the job mix
requirement 5 "e" mix_time under temperature 25 degC shall be at least 120 s tested within 12 months
requirement 6 "f" passing shall conform to grading g within job mix tolerance
grading g "G" sieve No. 4 70 % to 90 % job mix within 5 % sieve No. 8 45 % to 70 % ends of the band 10 %
requirement 7 "g" certificate shall be stated
requirement 8 "h" softening, range of at least 2 specimens, shall be at most 3 Cdeg
)";

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace plumbrule;
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  auto files = fuzz::parsed(sources, specification, diagnostics);
  files.push_back(std::move(fuzz::parsed(sources, fuzz::vocabulary(), diagnostics).front()));
  const auto rules = check::check(sources, files, diagnostics);
  if (!rules) {
    fuzz::print_all(diagnostics, sources);
    __builtin_trap();  // the specification above must stay right
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
    }
  }
  fuzz::print_all(diagnostics, sources);
  return 0;
}
