#include "by_hand.hpp"

#include <cmath>

namespace plumbrule::bench {
namespace {

struct Tally {
  Counts& counts;
  bool open;  // the class is not stated: clauses for a class are not shown
  bool flawed = false;

  // Clauses for every class.
  void all(std::size_t clause, double value, bool met) { add(clause, !met && !std::isnan(value), std::isnan(value)); }

  // Clauses for a class to which the mix belongs or not.
  void only(bool applies, std::size_t clause, double value, bool met) {
    add(clause, applies && !met && !std::isnan(value), open || (applies && std::isnan(value)));
  }

  void add(std::size_t clause, bool fails, bool not_shown) {
    counts.failed[clause - 1] += fails ? 1 : 0;
    counts.not_shown[clause - 1] += not_shown ? 1 : 0;
    flawed |= fails || not_shown;
  }
};

void judge_wheel_and_set(const std::array<double, slot_count>& v, Traffic traffic, Tally& tally) {
  const bool heavy = traffic == Traffic::heavy;
  const bool light = traffic == Traffic::light;
  const bool other = light || traffic == Traffic::medium;
  const bool paved = heavy || traffic == Traffic::medium;
  tally.only(other, 1, v[loss_1h], v[loss_1h] <= 538.5);
  tally.only(heavy, 2, v[loss_1h], v[loss_1h] <= 430.5);
  tally.only(other, 3, v[loss_6d], v[loss_6d] < 807.5);
  tally.only(heavy, 4, v[loss_6d], v[loss_6d] <= 650.5);
  tally.only(other, 5, v[cohesion_30], v[cohesion_30] >= 11.5);
  tally.only(heavy, 6, v[cohesion_30], v[cohesion_30] > 12.5);
  tally.only(light, 7, v[cohesion_60], v[cohesion_60] >= 17.5);
  tally.only(paved, 8, v[cohesion_60], v[cohesion_60] >= 19.5);
  tally.only(light, 9, v[sand], v[sand] <= 538.5);
  tally.only(paved, 10, v[sand], v[sand] <= 500.5);
  tally.only(other, 11, v[lateral], v[lateral] <= 5.05);
  tally.only(heavy, 12, v[lateral], v[lateral] < 4.55);
  tally.all(13, v[gravity], v[gravity] >= 1.795);
  tally.all(14, v[gravity], v[gravity] <= 2.105);
  tally.all(15, v[mix_time], v[mix_time] >= 119.5);
  tally.all(16, v[mix_time], v[mix_time] <= 300.5);
  tally.only(other, 17, v[stripping], v[stripping] >= 89.5);
  tally.only(heavy, 18, v[stripping], v[stripping] > 94.5);
}

void judge_materials(const std::array<double, slot_count>& v, Traffic traffic, Tally& tally) {
  const bool heavy = traffic == Traffic::heavy;
  const bool other = traffic == Traffic::light || traffic == Traffic::medium;
  tally.only(other, 19, v[equivalent], v[equivalent] >= 59.5);
  tally.only(heavy, 20, v[equivalent], v[equivalent] > 64.5);
  tally.all(21, v[no_4], v[no_4] >= 69.5);
  tally.all(22, v[no_4], v[no_4] <= 90.5);
  tally.all(23, v[no_16], v[no_16] >= 27.5);
  tally.all(24, v[no_16], v[no_16] <= 50.5);
  tally.all(25, v[no_50], v[no_50] >= 11.5);
  tally.all(26, v[no_50], v[no_50] < 25.5);
  tally.all(27, v[no_200], v[no_200] > 4.5);
  tally.all(28, v[no_200], v[no_200] < 15.5);
  tally.only(other, 29, v[soundness], v[soundness] < 25.5);
  tally.only(heavy, 30, v[soundness], v[soundness] <= 20.5);
  tally.only(other, 31, v[los_angeles], v[los_angeles] < 35.5);
  tally.only(heavy, 32, v[los_angeles], v[los_angeles] <= 30.5);
  tally.only(other, 33, v[residue], v[residue] >= 59.5);
  tally.only(heavy, 34, v[residue], v[residue] >= 61.5);
  tally.all(35, v[penetration], v[penetration] >= 39.5);
  tally.all(36, v[penetration], v[penetration] <= 90.5);
  tally.all(37, v[binder], v[binder] > 6.45);
  tally.all(38, v[binder], v[binder] <= 9.05);
  tally.all(39, v[filler], v[filler] > 0.45);
  tally.all(40, v[filler], v[filler] <= 3.05);
}

}  // namespace

void judge(const Mix& mix, Counts& counts) {
  Tally tally{counts, mix.traffic == Traffic::missing};
  judge_wheel_and_set(mix.values, mix.traffic, tally);
  judge_materials(mix.values, mix.traffic, tally);
  counts.complying += tally.flawed ? 0 : 1;
  ++counts.records;
}

}  // namespace plumbrule::bench
