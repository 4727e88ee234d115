#include "doors/command/transcribe.hpp"

#include "doors/command/workplace.hpp"
#include "judge/evidence/transcribe.hpp"

namespace plumbrule::command {

Exit transcribe(const TranscribeOptions& options) {
  Workplace place;
  const auto record = read_submittal(place, options.submittal, {options.record});
  if (!record) {
    return Exit::unusable;
  }
  const evidence::Node& tree = *record->tree;
  diagnose::Diagnostics diagnostics;
  std::optional<std::string> text;
  switch (options.form) {
    case SubmittalForm::yaml:
      text = evidence::to_yaml(tree);
      break;
    case SubmittalForm::json:
      text = evidence::to_json(tree);
      break;
    case SubmittalForm::csv:
      text = evidence::to_sheet(tree, diagnostics);
      break;
  }
  print_diagnostics(diagnostics, place.sources);
  return text && write_output(*text, options.out, place.sources) ? Exit::complies : Exit::unusable;
}

}  // namespace plumbrule::command
