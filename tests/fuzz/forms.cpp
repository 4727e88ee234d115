// Any bytes as a submittal in JSON and as a sheet: reading ends, the words for a fault of JSON agree with the library
// on what is JSON, and what is read is written and read back the same.

#include "judge/evidence/json.hpp"
#include "judge/evidence/json_fault.hpp"
#include "judge/evidence/sheet.hpp"
#include "judge/evidence/transcribe.hpp"
#include "target.hpp"

namespace {

using namespace plumbrule;

void require(bool holds) {
  if (!holds) {
    __builtin_trap();
  }
}

void json(const std::string& text) {
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  const auto tree = evidence::read_json(sources, sources.add("fuzz.json", text), diagnostics);
  require(tree.has_value() != diagnostics.has_errors());
  if (tree) {
    require(!evidence::json_fault(text.starts_with("\xEF\xBB\xBF") ? "{}" : text).has_value());
    const auto file = sources.add("again.json", evidence::to_json(*tree));
    const auto again = evidence::read_json(sources, file, diagnostics);
    require(again && evidence::same_values(*tree, *again));
    if (evidence::is_flat(*tree)) {
      (void)evidence::submittal_of(*tree, diagnostics);
    }
  }
  fuzz::print_all(diagnostics, sources);
}

void sheet(const std::string& text) {
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  const auto sheet = evidence::read_sheet(sources, sources.add("fuzz.csv", text), diagnostics);
  for (const evidence::SheetRow& row : sheet ? sheet->rows : std::vector<evidence::SheetRow>()) {
    const auto tree = evidence::submittal_of(sheet->headings, row.cells, row.span, diagnostics);
    if (!tree) {
      require(diagnostics.has_errors());
      continue;
    }
    diagnose::Diagnostics refused;  // a list whose numbers have gaps, say, is written with other numbers: never lost
    const auto written = evidence::to_sheet(*tree, refused);
    require(written.has_value() != refused.has_errors());
    const auto file = sources.add("again.json", evidence::to_json(*tree));
    const auto again = evidence::read_json(sources, file, diagnostics);
    require(again && evidence::same_values(*tree, *again));
  }
  fuzz::print_all(diagnostics, sources);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text = fuzz::text_of(data, size);
  json(text);
  sheet(text);
  return 0;
}
