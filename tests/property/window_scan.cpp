// window_scan --trials N [--seed S]
//
// Random trial series and limits: the window that the engine finds against a scan of the variable on a fine grid, and
// next to each end that was found. The scan interpolates in whole numbers, rounds and then compares; it shares nothing
// with src/apply/window. Exit status: 0 no disagreement, 1 some, 2 unusable.

#include <algorithm>
#include <iostream>
#include <map>
#include <random>

#include "apply/window/find.hpp"
#include "judge/evidence/evidence.hpp"
#include "language/check/check.hpp"
#include "language/plan/plan.hpp"

namespace {

using namespace plumbrule;
using quantity::Decimal;

__extension__ typedef __int128 Whole;  // products of twelve decimals and more

constexpr std::int64_t tenth = 100'000'000'000;  // of the variable, which is counted in 10^-12
constexpr int quarters = 4;                      // values are counted in quarters, so that a mean of two is whole

enum class Answer { complies, fails, open };

struct Limit {
  bool low = false, high = false;
  int least = 0, most = 0;
  int rounding = 0;  // 0 absolute, 1 to a whole number with ties to even, 2 ties up
};

struct Test {
  int at = 0;               // tenths of the variable
  std::vector<int> values;  // of specimens, in halves
  bool bound = false;       // "at least" the only value
  bool unmarked = false;    // written without `at`: at the job mix
};

struct Demand {
  Limit limit;
  bool mean = false;  // of at least two specimens; otherwise each one
  std::vector<Test> tests;
};

struct Trial {
  std::vector<std::vector<Demand>> clauses;  // each a list of alternatives
  Limit own;
  bool has_own = false;
  int choice = 0;
};

// ------------------------------------------------------------------------------------------------ drawing

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : engine_(seed) {}
  int upto(int most) { return static_cast<int>(engine_() % static_cast<unsigned>(most + 1)); }
  bool one_in(int n) { return upto(n - 1) == 0; }

  Trial trial() {
    Trial out;
    out.choice = 60 + upto(30);
    const int clauses = 1 + upto(2);
    for (int at = 0; at < clauses; ++at) {
      std::vector<Demand> alternatives(one_in(4) ? 2 : 1);
      for (Demand& one : alternatives) {
        one = demand(out.choice);
      }
      for (Demand& one : alternatives) {
        one.limit.rounding = alternatives.back().limit.rounding;  // a requirement has one way of comparing
      }
      out.clauses.push_back(std::move(alternatives));
    }
    out.has_own = one_in(3);
    out.own.low = out.own.high = true;
    out.own.least = 5 + upto(2);
    out.own.most = out.own.least + 1 + upto(2);
    out.own.rounding = upto(2);
    return out;
  }

 private:
  std::mt19937_64 engine_;

  Demand demand(int choice) {
    Demand out;
    const int kind = upto(2);
    out.limit.low = kind != 0;
    out.limit.high = kind != 1;
    out.limit.least = 4 + upto(3);
    out.limit.most = out.limit.least + upto(3);
    out.limit.rounding = upto(2);
    out.mean = one_in(3);
    const int count = 1 + upto(5);
    int value = 2 * (3 + upto(6));
    for (int at = 0; at < count; ++at) {
      value = one_in(3) ? value : std::max(0, value + upto(8) - 4);  // plateaus, rises and falls
      Test one;
      one.unmarked = one_in(8);
      one.at = one.unmarked ? choice : 60 + 5 * upto(6);
      one.bound = !out.mean && one_in(12);
      const int specimens = one.bound ? 1 : one_in(10) ? 1 : 1 + upto(1);
      for (int specimen = 0; specimen < specimens; ++specimen) {
        one.values.push_back(value + (specimen == 0 ? 0 : upto(2)));
      }
      out.tests.push_back(std::move(one));
    }
    return out;
  }
};

// ------------------------------------------------------------------------------------------------ writing

std::string halves(int value) { return std::to_string(value / 2) + (value % 2 == 0 ? ".0" : ".5"); }
std::string tenths(int value) { return std::to_string(value / 10) + "." + std::to_string(value % 10); }

std::string text(const Limit& limit, const std::string& unit) {
  const std::string least = std::to_string(limit.least) + " " + unit;
  const std::string most = std::to_string(limit.most) + " " + unit;
  const std::string range = limit.low && limit.high ? "between " + least + " and " + most
                            : limit.low             ? "at least " + least
                                                    : "at most " + most;
  const std::string how = limit.rounding == 0
                              ? "absolute method"
                              : "rounding method to 1 " + unit + ", ties " + (limit.rounding == 1 ? "to even" : "up");
  return range + "\n  compare by the " + how + "\n";
}

std::string measure(std::size_t clause, std::size_t alternative) {
  return "m" + std::to_string(clause) + std::to_string(alternative);
}

std::string rules_of(const Trial& trial) {
  std::string out =
      "plumbrule 1\nspecification s \"s\" edition 2026 compare by the absolute method\n"
      "measure v \"variable\" in g\n";
  for (std::size_t at = 0; at < trial.clauses.size(); ++at) {
    const auto& alternatives = trial.clauses[at];
    std::string demands;
    std::string compare;
    for (std::size_t one = 0; one < alternatives.size(); ++one) {
      out += "measure " + measure(at, one) + " \"measure\" in N\n";
      const std::string limit = text(alternatives[one].limit, "N");
      demands += alternatives.size() == 1 ? "" : one == 0 ? "  either " : "  or ";
      demands += measure(at, one) + (alternatives[one].mean ? ", mean of at least 2 specimens," : ", each specimen,") +
                 " shall be " + limit.substr(0, limit.find('\n')) + "\n";
      compare = limit.substr(limit.find('\n') + 1);  // one for the whole requirement: that of the last
    }
    out += "requirement " + std::to_string(at + 1) + " \"r\"\n" + demands + compare;
  }
  return trial.has_own ? out + "requirement 9 \"own\" v shall be " + text(trial.own, "g") : out;
}

std::string submittal_of(const Trial& trial) {
  std::string out = "submittal: 1\njob_mix: {v: " + tenths(trial.choice) + " g}\nresults:\n";
  for (std::size_t at = 0; at < trial.clauses.size(); ++at) {
    for (std::size_t one = 0; one < trial.clauses[at].size(); ++one) {
      for (const Test& test : trial.clauses[at][one].tests) {
        out += "  - {measure: " + measure(at, one);
        out += test.unmarked ? "" : ", at: {v: " + tenths(test.at) + " g}";
        out += ", specimens: [";
        for (std::size_t value = 0; value < test.values.size(); ++value) {
          out +=
              std::string(value == 0 ? "" : ", ") + (test.bound ? "at least " : "") + halves(test.values[value]) + " N";
        }
        out += "]}\n";
      }
    }
  }
  return out;
}

// ------------------------------------------------------------------------------------------------ scanning

// A fraction; `below` is above zero.
struct Ratio {
  Whole above = 0, below = 1;
};

Whole floor_of(const Ratio& one) {
  const Whole whole = one.above / one.below;
  return one.above < 0 && whole * one.below != one.above ? whole - 1 : whole;
}

// Rounded first, compared then.
bool meets(const Limit& limit, Ratio value) {
  if (limit.rounding != 0) {
    const Whole low = floor_of(value);
    const Whole twice = 2 * (value.above - low * value.below);
    const bool up = twice > value.below || (twice == value.below && (limit.rounding == 2 || low % 2 != 0));
    value = {up ? low + 1 : low, 1};
  }
  return (!limit.low || value.above >= limit.least * value.below) &&
         (!limit.high || value.above <= limit.most * value.below);
}

// What is known at one tested value: the values in quarters, or that they are not all exact or not enough.
struct Known {
  std::vector<int> values;
  bool firm = true;
  Answer answer = Answer::complies;
};

void judge(Answer& whole, Answer part) {
  whole = whole == Answer::fails || part == Answer::fails ? Answer::fails
          : whole == Answer::open || part == Answer::open ? Answer::open
                                                          : Answer::complies;
}

Answer bound_answer(const Limit& limit, int halves_value) {
  const auto passes = [&](const Limit& side) { return meets(side, {halves_value, 2}); };
  Limit low = limit;
  Limit high = limit;
  low.high = false;
  high.low = false;
  if (limit.high && !passes(high)) {
    return Answer::fails;
  }
  return limit.low && !limit.high && passes(low) ? Answer::complies : Answer::open;
}

void add(const Demand& demand, const Test& test, Known& out) {
  if (test.bound) {
    out.firm = false;
    judge(out.answer, bound_answer(demand.limit, test.values.front()));
  } else if (demand.mean && test.values.size() < 2) {
    out.firm = false;
    judge(out.answer, Answer::open);
  } else if (demand.mean) {
    out.values.push_back(test.values[0] + test.values[1]);
    judge(out.answer, meets(demand.limit, {out.values.back(), quarters}) ? Answer::complies : Answer::fails);
  } else {
    for (const int value : test.values) {
      out.values.push_back(2 * value);
      judge(out.answer, meets(demand.limit, {2 * value, quarters}) ? Answer::complies : Answer::fails);
    }
  }
}

std::map<int, Known> known(const Demand& demand) {
  std::map<int, Known> out;
  for (const Test& test : demand.tests) {
    add(demand, test, out[test.at]);
  }
  return out;
}

Answer between(const Demand& demand, const std::pair<const int, Known>& first,
               const std::pair<const int, Known>& second, std::int64_t at) {
  if (!first.second.firm || !second.second.firm) {
    return Answer::open;
  }
  Answer out = Answer::complies;
  for (const bool high : {false, true}) {
    Limit side = demand.limit;
    (high ? side.low : side.high) = false;
    const auto pick = [&](const std::vector<int>& all) {
      return high ? *std::max_element(all.begin(), all.end()) : *std::min_element(all.begin(), all.end());
    };
    const Whole from = pick(first.second.values);
    const Whole to = pick(second.second.values);
    const Whole width = static_cast<Whole>(second.first - first.first) * tenth;
    const Whole along = at - static_cast<Whole>(first.first) * tenth;
    judge(out, meets(side, {from * width + along * (to - from), width * quarters}) ? Answer::complies : Answer::fails);
  }
  return out;
}

Answer at_value(const Demand& demand, std::int64_t at) {
  const auto all = known(demand);
  for (auto one = all.begin(); one != all.end(); ++one) {
    const std::int64_t own = one->first * tenth;
    if (own == at) {
      return one->second.answer;
    }
    if (at < own) {
      return one == all.begin() ? Answer::open : between(demand, *std::prev(one), *one, at);
    }
  }
  return Answer::open;
}

class Scan {
 public:
  explicit Scan(const Trial& trial) : trial_(trial) {
    for (const auto& alternatives : trial.clauses) {
      for (const Demand& one : alternatives) {
        for (const Test& test : one.tests) {
          lowest_ = std::min(lowest_, test.at);
          highest_ = std::max(highest_, test.at);
        }
      }
    }
  }

  // Whether the value belongs to the window.
  [[nodiscard]] bool member(std::int64_t at) const {
    bool narrowed = false;
    for (const auto& alternatives : trial_.clauses) {
      const bool varies = std::any_of(alternatives.begin(), alternatives.end(),
                                      [](const Demand& one) { return known(one).size() > 1; });
      const bool met = std::any_of(alternatives.begin(), alternatives.end(),
                                   [&](const Demand& one) { return at_value(one, at) == Answer::complies; });
      if (varies && !met) {
        return false;
      }
      narrowed = narrowed || varies;
    }
    const bool tested = lowest_ * tenth <= at && at <= highest_ * tenth;
    if (trial_.has_own && !(tested && meets(trial_.own, {at, 10 * tenth}))) {
      return false;
    }
    return narrowed || trial_.has_own;
  }

 private:
  const Trial& trial_;
  int lowest_ = 1000, highest_ = 0;
};

// ------------------------------------------------------------------------------------------------ comparing

Decimal decimal(std::int64_t at) { return Decimal{at} / Decimal{10 * tenth}; }

struct Tally {
  std::size_t empty = 0, points = 0, several = 0, whole = 0, values = 0, wrong = 0;
};

std::optional<window::Window> find(const Trial& trial) {
  source::SourceMap sources;
  diagnose::Diagnostics problems;
  const auto file = sources.add("r.plumb", rules_of(trial));
  const auto rules = check::check(sources, {syntax::parse(sources, file, problems)}, problems);
  const auto document = evidence::read_yaml(sources, sources.add("t.yaml", submittal_of(trial)), problems);
  if (!rules || !document) {
    return std::nullopt;
  }
  const plan::Plan plan = plan::compile(*rules);
  const auto evidence = evidence::bind(*document, *rules, {}, problems);
  if (!evidence || problems.has_errors()) {
    return std::nullopt;
  }
  return window::find(plan, *evidence, evaluate::evaluate(plan, *evidence), 0, std::nullopt);
}

bool engine_member(const window::Window& window, std::int64_t at) {
  return std::any_of(window.pieces.begin(), window.pieces.end(),
                     [&](const window::Piece& one) { return one.stretch.contains(decimal(at)); });
}

// The grid, and both sides of each end that the engine found, as near as twelve decimals allow.
std::vector<std::int64_t> places(const window::Window& window) {
  std::vector<std::int64_t> out;
  for (int hundredth = 580; hundredth <= 920; ++hundredth) {
    out.push_back(hundredth * tenth / 10);
  }
  for (const window::Piece& piece : window.pieces) {
    for (const Decimal& end : {piece.stretch.low, piece.stretch.high}) {
      const std::int64_t at = std::stoll((end * Decimal{10 * tenth}).floor().text());
      const bool exact = decimal(at) == end;
      out.insert(out.end(), {at - 1, at + 1});
      out.push_back(exact ? at : at + 2);
    }
  }
  return out;
}

void compare(const Trial& trial, const window::Window& window, Tally& tally) {
  const Scan scan(trial);
  for (const std::int64_t at : places(window)) {
    ++tally.values;
    if (engine_member(window, at) == scan.member(at)) {
      continue;
    }
    if (++tally.wrong <= 3) {
      std::cerr << "disagreement at " << decimal(at).text() << ": engine " << engine_member(window, at) << ", scan "
                << scan.member(at) << "\n"
                << rules_of(trial) << submittal_of(trial) << "\n";
    }
    return;
  }
}

void count(const window::Window& window, Tally& tally) {
  tally.empty += window.pieces.empty() ? 1U : 0U;
  tally.several += window.pieces.size() > 1 ? 1U : 0U;
  for (const window::Piece& one : window.pieces) {
    (one.stretch.low == one.stretch.high ? tally.points : tally.whole) += 1;
  }
}

}  // namespace

int main(int argc, char** argv) {
  std::size_t trials = 0;
  std::uint64_t seed = 1;
  for (int at = 1; at + 1 < argc; at += 2) {
    const std::string option = argv[at];
    (option == "--trials" ? trials : seed) = std::stoull(argv[at + 1]);
  }
  Tally tally;
  for (std::size_t at = 0; at < trials; ++at) {
    const Trial trial = Draw(seed * 1'000'003 + at).trial();
    const auto window = find(trial);
    if (!window) {
      std::cerr << "the generated trial is refused:\n" << rules_of(trial) << submittal_of(trial);
      return 2;
    }
    count(*window, tally);
    compare(trial, *window, tally);
  }
  std::cout << trials << " trials, " << tally.values << " values compared: " << tally.empty << " windows empty, "
            << tally.several << " of several parts, " << tally.whole << " intervals, " << tally.points
            << " single points; " << tally.wrong << " disagreements\n";
  // A generator that no longer makes every kind of window shows nothing.
  const bool rich = tally.empty > 0 && tally.several > 0 && tally.whole > 0 && tally.points > 0;
  return tally.wrong > 0 ? 1 : rich ? 0 : 2;
}
