#include "show/picture/scale.hpp"

#include <catch2/catch.hpp>
#include <cmath>

namespace plumbrule::picture {
namespace {

std::vector<std::string> texts(double low, double high, std::size_t most) {
  std::vector<std::string> out;
  for (const Tick& one : ticks(low, high, most)) {
    out.push_back(one.text);
  }
  return out;
}

TEST_CASE("ticks stand at round numbers and are written alike") {
  using All = std::vector<std::string>;
  CHECK(texts(0, 10, 6) == All{"0", "2", "4", "6", "8", "10"});
  CHECK(texts(6.4, 8.6, 6) == All{"6.5", "7.0", "7.5", "8.0", "8.5"});
  CHECK(texts(-50, 100, 4) == All{"-50", "0", "50", "100"});
  CHECK(texts(300, 700, 6) == All{"300", "400", "500", "600", "700"});
  CHECK(texts(0.001, 0.0045, 5) == All{"0.001", "0.002", "0.003", "0.004"});
}

TEST_CASE("ticks: as many as fit, all inside, in steps of 1, 2 or 5") {
  for (const double low : {-1e6, -3.7, 0.0, 0.00012, 17.3, 99999.0}) {
    for (const double width : {1e-5, 0.3, 7.0, 1234.5, 8e8}) {
      for (const std::size_t most : {std::size_t{2}, std::size_t{5}, std::size_t{10}}) {
        const std::vector<Tick> all = ticks(low, low + width, most);
        CAPTURE(low, width, most);
        CHECK(all.size() <= most);
        for (std::size_t at = 0; at < all.size(); ++at) {
          CHECK(all[at].at >= low - width * 1e-6);
          CHECK(all[at].at <= low + width * (1 + 1e-6));
          CHECK(std::abs(std::stod(all[at].text) - all[at].at) <= width * 1e-6 + std::abs(low) * 1e-12);
        }
      }
    }
  }
}

TEST_CASE("ticks of a range without width, or of no numbers, are none") {
  CHECK(ticks(5, 5, 4).empty());
  CHECK(ticks(7, 2, 4).empty());
  CHECK(ticks(0, std::nan(""), 4).empty());
  CHECK(ticks(0, INFINITY, 4).empty());
  CHECK(ticks(1e17, 1e17 + 64, 4).size() <= 4);
}

TEST_CASE("a range is rounded outwards") {
  const Range out = rounded_out({331, 674}, 6);
  CHECK(out.low == Approx(300));
  CHECK(out.high == Approx(700));
  for (const double low : {-312.0, 0.0, 0.37, 45.5}) {
    const Range wide = rounded_out({low, low + 7.7}, 6);
    CHECK(wide.low <= low + 1e-6);
    CHECK(wide.high >= low + 7.7 - 1e-6);
    CHECK(ticks(wide.low, wide.high, 6).size() >= 2);
  }
}

TEST_CASE("scales map the ends of a range to the ends of the drawing") {
  for (const ScaleKind kind : {ScaleKind::linear, ScaleKind::logarithmic, ScaleKind::power}) {
    const Scale scale(kind, 0.075, 9.5, 300, 20);
    CHECK(scale.at(0.075) == Approx(300));
    CHECK(scale.at(9.5) == Approx(20));
    CHECK(scale.at(1) < scale.at(0.5));
  }
}

TEST_CASE("half-way on each scale") {
  CHECK(Scale(ScaleKind::linear, 0, 10, 0, 100).at(5) == Approx(50));
  CHECK(Scale(ScaleKind::logarithmic, 1, 100, 0, 100).at(10) == Approx(50));
  // (2.5 / 10) to the power 0.45 is 0.5359; computed here
  CHECK(Scale(ScaleKind::power, 0, 10, 0, 100).at(2.5) == Approx(53.5887).epsilon(1e-4));
}

TEST_CASE("a scale of one value alone has a width") {
  const Scale scale(ScaleKind::linear, 5, 5, 0, 100);
  CHECK(scale.at(5) == Approx(50));
  CHECK(Scale(ScaleKind::linear, 0, 0, 0, 100).at(0) == Approx(50));
}

}  // namespace
}  // namespace plumbrule::picture
