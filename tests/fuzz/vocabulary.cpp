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
  repeatability 60 g/m2 held at bath 25 degC within 1 Cdeg
table factor by mixer in 1/m2 C-100: 32.9 A-120: 29.9
table loss_points by value in g in points below 0.7 g: 4 at most 0.7 g: 3 at most 2 g: 1 otherwise: 0
table coat_points by value in % in points at least 90 %: 4 above 75 %: 3
measure pill "pill" in points from before in g, after in g, coated in %
  computed as loss_points(before - after) + coat_points(coated)
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

const char* specification() {
  return R"(plumbrule 1
specification s "S" edition 2026 compare by the rounding method, ties to even
  outliers at 5 % certificates required
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
}

}  // namespace plumbrule::fuzz
