#include "show/picture/labels.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

namespace plumbrule::picture {
namespace {

TEST_CASE("wider texts measure wider, and size counts") {
  CHECK(text_width("", 12) == 0);
  CHECK(text_width("iii", 12) < text_width("WWW", 12));
  CHECK(text_width("g/m2", 24) == Approx(2 * text_width("g/m2", 12)));
  CHECK(text_width("\xC2\xB5", 10) == Approx(10));  // one character, although it has two bytes
}

TEST_CASE("a text is cut to its width, never inside a character") {
  CHECK(fitted("short", 12, 100) == "short");
  const std::string cut = fitted("Abrasion loss after a one-hour soak", 12, 80);
  CHECK(text_width(cut, 12) <= 80);
  CHECK(cut.ends_with("…"));
  for (double width = 12; width < 80; ++width) {
    const std::string one = fitted("\xC3\xA4\xC3\xB6\xC3\xBC\xC3\xA4\xC3\xB6\xC3\xBC", 12, width);
    CHECK(text_width(one, 12) <= width);
    CHECK((one.size() % 2 == 0 || one.ends_with("…")));
  }
}

TEST_CASE("a text is folded between words; numbers stay with their neighbours") {
  using Lines = std::vector<std::string>;
  CHECK(folded("percent passing, sieve No. 4", 12, 150) == Lines{"percent passing, sieve", "No. 4"});
  CHECK(folded("", 12, 100) == Lines{""});
  for (const std::string& line : folded("one extraordinarilylongwordthatfitsnowhere two", 12, 90)) {
    CHECK(text_width(line, 12) <= 90);
  }
}

TEST_CASE("boxes that only touch do not overlap") {
  const Box box{0, 0, 10, 10};
  CHECK_FALSE(box.overlaps({10, 0, 20, 10}));
  CHECK(box.overlaps({9, 9, 20, 20}));
}

TEST_CASE("a place is the first choice that is inside and free") {
  Places places({0, 0, 100, 100});
  places.keep_off({0, 0, 50, 50});
  const auto one = places.take({{-1, 60, 9, 70}, {40, 40, 60, 60}, {60, 60, 80, 80}});
  REQUIRE(one);
  CHECK(one->left == 60);
  CHECK_FALSE(places.take({{60, 60, 80, 80}}));
}

TEST_CASE("no two labels that were placed overlap, wherever they wished to be") {
  std::mt19937 random(20261125);
  const auto number = [&random](double most) { return most * static_cast<double>(random() % 1000) / 1000; };
  for (int round = 0; round < 200; ++round) {
    Places places({0, 0, 400, 300});
    std::vector<Box> taken;
    for (int at = 0; at < 40; ++at) {
      std::vector<Box> choices;
      for (int choice = 0; choice < 6; ++choice) {
        const double left = number(450);
        const double top = number(320);
        choices.push_back({left, top, left + 5 + number(90), top + 12});
      }
      if (const auto box = places.take(choices)) {
        taken.push_back(*box);
      }
    }
    CHECK(taken.size() > 5);
    for (std::size_t at = 0; at < taken.size(); ++at) {
      CHECK((taken[at].left >= 0 && taken[at].right <= 400 && taken[at].bottom <= 300));
      for (std::size_t other = 0; other < at; ++other) {
        CHECK_FALSE(taken[at].overlaps(taken[other]));
      }
    }
  }
}

TEST_CASE("labels of a column are spread apart, in order, and stay inside while they fit") {
  std::mt19937 random(4);
  for (int round = 0; round < 300; ++round) {
    std::vector<double> wished(1 + random() % 20);
    for (double& one : wished) {
      one = static_cast<double>(random() % 320) - 10;
    }
    const std::vector<double> out = spread(wished, 14, 0, 300);
    REQUIRE(out.size() == wished.size());
    std::vector<double> sorted = out;
    std::sort(sorted.begin(), sorted.end());
    CHECK(sorted.front() >= 7 - 1e-6);
    CHECK(sorted.back() <= 293 + 1e-6);
    for (std::size_t at = 0; at + 1 < sorted.size(); ++at) {
      CHECK(sorted[at + 1] - sorted[at] >= 14 - 1e-6);
    }
    for (std::size_t one = 0; one < wished.size(); ++one) {
      for (std::size_t other = 0; other < wished.size(); ++other) {
        CHECK((wished[one] >= wished[other] || out[one] < out[other]));
      }
    }
  }
}

}  // namespace
}  // namespace plumbrule::picture
