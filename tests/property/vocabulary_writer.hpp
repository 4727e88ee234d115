#pragma once
// A random vocabulary: categories, conditions, bases, tables and measures of every kind.

#include "catalog.hpp"

namespace plumbrule::property {

/// The text of `mix.plumb`; what stands in it goes into the catalog.
[[nodiscard]] std::string write_vocabulary(Random& random, Catalog& catalog);

}  // namespace plumbrule::property
