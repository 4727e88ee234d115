#include "base/source/version.hpp"

namespace plumbrule::source {

std::string_view version() { return PLUMBRULE_VERSION; }

}  // namespace plumbrule::source
