#include "base/quantity/unit_suggestion.hpp"

#include "base/diagnose/suggest.hpp"
#include "base/quantity/symbols.hpp"
#include "base/quantity/unit.hpp"

namespace plumbrule::quantity {

std::string unit_suggestion(std::string_view written) {
  for (const Symbol& symbol : symbols()) {
    const bool scale = !written.empty() && !symbol.difference.empty();
    if (scale && symbol.text == "deg" + std::string(written)) {
      return "did you mean `" + std::string(symbol.text) + "` (a temperature) or `" + std::string(symbol.difference) +
             "` (a difference of temperatures)?";
    }
  }
  return diagnose::suggestion(written, known_units());
}

}  // namespace plumbrule::quantity
