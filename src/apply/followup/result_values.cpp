#include "apply/followup/result_values.hpp"

namespace plumbrule::followup {
namespace {

// The only value, as reported or as that of a single specimen.
const Value* only_value(const Result& result) {
  if (result.specimens.empty()) {
    return result.reported.kind == Value::Kind::missing || result.replicates > 1 ? nullptr : &result.reported;
  }
  const Specimen& one = result.specimens.front();
  const bool only = result.specimens.size() == 1 && result.reported.kind == Value::Kind::missing && !has_readings(one);
  return only && one.direct.kind != Value::Kind::missing ? &one.direct : nullptr;
}

}  // namespace

Differences ResultComparer::compare(const Pair& pair) {
  Differences out;
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
  const bool other_measure = from.measure != to.measure;
  const std::string left = other_measure ? subject(both_.before, from) : placing(both_.before, from);
  const std::string right = other_measure ? subject(both_.after, to) : placing(both_.after, to);
  if (pair.moved && left != right) {
    both_.out.values.push_back({both_.measure(to).title, "stands for", left.empty() ? both_.unplaced(from, to) : left,
                                right.empty() ? both_.unplaced(to, from) : right, "", from.span, to.span});
  }
  if (other_measure) {
    return out;  // its readings have other names
  }
  if (!restyled(pair, out)) {
    specimens_.compare(pair, out);
    reported(pair, out);
  }
  noted_.compare(pair, out);
  return out;
}

// A single value that was reported is given as that of a specimen, or the other way round: nothing is lost.
bool ResultComparer::restyled(const Pair& pair, Differences& out) {
  const Value* from = only_value(both_.earlier(pair));
  const Value* to = only_value(both_.later(pair));
  if (from == nullptr || to == nullptr ||
      both_.earlier(pair).specimens.empty() == both_.later(pair).specimens.empty()) {
    return false;
  }
  const Difference change = values_.value(subject(both_.after, both_.later(pair)), "value", *from, *to,
                                          both_.measure(both_.later(pair)).type);
  if (change == Difference::converted) {
    out.converted.push_back(both_.out.values.size() - 1);
  } else if (change == Difference::other && from->usable()) {
    out.altered.push_back(both_.out.values.size() - 1);
  }
  out.restyled = true;
  ++out.compared;
  if (change != Difference::other && to->kind == Value::Kind::quantity) {
    out.unchanged = out.numbers = out.most = 1;
  }
  return true;
}

// A value that readings stand behind is judged by them. Where they are new, it is left to them unless it is written
// anew or the result fails no more.
void ResultComparer::reported(const Pair& pair, Differences& out) {
  const Result& from = both_.earlier(pair);
  const Result& to = both_.later(pair);
  const Difference change = values_.value(subject(both_.after, to), from.declared ? "declared value" : "reported value",
                                          from.reported, to.reported, both_.measure(to).type);
  out.reported = change == Difference::other;
  if (change == Difference::converted) {
    out.converted.push_back(both_.out.values.size() - 1);
  }
  const bool stands = to.specimens.empty() || to.reported.usable() || both_.cured(pair);
  if (out.reported && from.specimens.empty() && from.reported.usable() && stands) {
    out.altered.push_back(both_.out.values.size() - 1);
  }
}

}  // namespace plumbrule::followup
