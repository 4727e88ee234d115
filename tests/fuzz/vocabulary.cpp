#include "target.hpp"

namespace plumbrule::fuzz {

const char* vocabulary() {
  return R"(plumbrule 1
vocabulary small "Small vocabulary for fuzzing"
category traffic "Traffic": light, medium, heavy
category mixer "Machine": C-100, A-120
category rupture "Rupture": normal, spin
basis dry_aggregate "dry aggregate"
basis emulsion "emulsion"
condition soak "soak" in min
condition temperature "temperature" in degC within 1 Cdeg
condition sieve "sieve" as sieve designation
measure abrasion_loss "abrasion loss" in g/m2 reported to 1 g/m2 under soak
  from mass_before in g, mass_after in g, mixer
  computed as (mass_before - mass_after) * factor(mixer)
  refused when mass_after > mass_before because "gain"
table factor by mixer in 1/m2 C-100: 32.9 A-120: 29.9
measure torque "torque" in kg-cm reported to 1 kg-cm under soak
measure mode "mode" among rupture under soak
measure softening "softening point" in degC
measure binder "binder" in % of dry_aggregate reported to 0.1 %
  from content in % of dry_aggregate, residue in % of emulsion
  computed as content * fraction(residue)
measure passing "passing" in % under sieve
  from dry_mass in g, retained in g
  computed as (dry_mass - cumulative(retained)) / dry_mass
measure mix_time "mix time" in s under temperature
measure certificate "certificate" as text
)";
}

}  // namespace plumbrule::fuzz
