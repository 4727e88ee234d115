#pragma once
// How to mend a unit that is not known.

#include <string>
#include <string_view>

namespace plumbrule::quantity {

/// For a unit that UnitTable::find does not know: the nearest known one, else some that are known. A bare `C` or `F`
/// is near nothing by its letters; both the temperature and the difference of temperatures are offered, as only the
/// place where it stands could tell which is meant.
[[nodiscard]] std::string unit_suggestion(std::string_view written);

}  // namespace plumbrule::quantity
