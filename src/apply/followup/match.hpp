#pragma once
// Which results of two submittals are the same test, and which specimens of two results. Internal to this folder.

#include <optional>
#include <vector>

#include "apply/followup/naming.hpp"

namespace plumbrule::followup {

using evidence::Specimen;
using evidence::Value;

/// `moved`: the values are the same, but stand under another condition, design value or lot, or for another measure.
struct Pair {
  std::uint32_t before = 0, after = 0;
  bool moved = false;
};

struct Matching {
  std::vector<Pair> pairs;  // in the order of the new submittal
  std::vector<std::uint32_t> removed, added;
};

/// Results are the same test if measure, conditions, design values, lot and being in a series agree. Of several that
/// do, those with the same values belong together, then those with the same date, then the first to the first. A
/// result at the job mix stands at the value that its own job mix declares, if some result of the measure says with
/// `at` that the value matters.
[[nodiscard]] Matching match(const explain::Context& before, const explain::Context& after);

/// Specimens by label; then those with the same values; then in order. A test that was repeated has specimens of its
/// own: if all of them are labelled, those whose labels are in one of the two only do not belong together, unless so
/// much is the same that they are no others.
struct SpecimenPair {
  std::uint32_t before = check::none, after = check::none;  // none: it stands in the other one only
};
[[nodiscard]] std::vector<SpecimenPair> match_specimens(const explain::Context& before, const Result& earlier,
                                                        const explain::Context& after, const Result& later,
                                                        bool repeated);
/// All values of a specimen; equal for the same values in other units.
[[nodiscard]] std::string specimen_key(const explain::Context& context, const Result& result, const Specimen& specimen);
/// How many readings of its own are numbers.
[[nodiscard]] std::size_t own_numbers(const Specimen& specimen);

/// Of one submittal.
[[nodiscard]] bool same_conditions(const explain::Context& context, const Result& left, const Result& right);

/// In another unit, and no farther from the earlier value than half of the last digit as written.
[[nodiscard]] bool converted(const explain::Context& before, const Value& earlier, const explain::Context& after,
                             const Value& later);

/// The same value, in whatever unit it is written.
[[nodiscard]] bool same(const explain::Context& before, const Value& earlier, const explain::Context& after,
                        const Value& later, const check::Type& type);

/// A value; equal for the same in another unit.
[[nodiscard]] std::string value_key(const explain::Context& context, const Value& value, const check::Type& type);

/// The value is written for this specimen, not for all that share it.
[[nodiscard]] bool own(const Specimen& specimen, const Value& value);

}  // namespace plumbrule::followup
