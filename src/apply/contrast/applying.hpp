#pragma once
// Which demands of a specification an envelope is made of, by the classes that the mix is designed for. Internal to
// this folder.

#include "apply/contrast/envelope.hpp"

namespace plumbrule::contrast {

/// The demands of one specification that may apply, in order. The narrowest case that holds hides all broader ones;
/// narrower ones that may hold stay beside it.
[[nodiscard]] std::vector<const Demand*> applying(const std::vector<Demand>& demands, const Classes& chosen);

/// What is asked beside the chosen classes.
[[nodiscard]] Asked left_open(const Asked& asked, const Classes& chosen);

/// The exceptions that may hold, in an order that does not depend on the document.
[[nodiscard]] std::vector<Asked> exceptions_of(const Demand& demand, const Classes& chosen);

}  // namespace plumbrule::contrast
