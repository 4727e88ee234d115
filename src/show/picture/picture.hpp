#pragma once
// Pictures: plain data in, SVG text out. Nothing here knows a rule or a submittal; who fills the data in says what the
// axes, lines and words are. Doubles are coordinates only: every number that a reader sees comes in as text, ticks
// excepted, which are round numbers that picture chooses.
//
// An SVG is one element without a prolog, to stand inline in a page. It has a viewBox 420 units wide, takes the width
// that it is given (style_sheet() caps it), carries role, title and description, and no style element, style
// attribute, script, link or font, so that it stands under a strict content policy. Text and axes are in currentColor,
// other colours in custom properties of the page with fallbacks that hold on light and dark ground. No verdict is
// told by colour alone: each has a shape and stands in words in the table. The same data give the same bytes.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plumbrule::picture {

/// What a picture shows, for those who do not see it; as many cells in a row as heads. Plain text, not escaped.
struct Table {
  std::vector<std::string> heads;
  std::vector<std::vector<std::string>> rows;
};

struct Picture {
  std::string svg;
  std::string title, description;  // the same texts as in the SVG, not escaped
  Table table;
};

enum class Verdict : std::uint8_t { complies, fails, not_shown, does_not_apply };

/// A quantity as a coordinate and as people read it.
struct Value {
  double at = 0;
  std::string text;
};

/// A line across a chart that values must not pass. Where values are rounded before they are compared, one beyond the
/// line may comply: `unrounded` is where that ends, "at most 538.5 g/m2".
struct Limit {
  enum class Side : std::uint8_t { upper, lower };
  Value value;
  Side side = Side::upper;
  std::string label;  // "at most 538 g/m2"
  std::optional<Value> unrounded = std::nullopt;
};

struct Band {
  Value low, high;
  std::string label;
};

/// A measured point: a single value, or (where several results stand at one place) a range from low to high.
struct Reading {
  Value at, low, high;
  Verdict verdict{};
  bool joined = true;  // a straight line leads to the next reading
};

/// One quantity over the axis of the chart, with a scale of its own.
struct Panel {
  std::string title, unit;
  std::vector<Reading> readings;  // in rising order of `at`
  std::vector<Limit> limits;
  std::string nothing;  // why there is no point, if there is none
};

struct Axis {
  std::string title, unit;
};

/// Values against a design value: panels one below the other over one axis, each with its limits; the windows shaded
/// through all of them, the job mix and its production tolerance marked.
struct DesignChart {
  std::string title;
  Axis axis;
  std::vector<Panel> panels;
  std::vector<Band> windows;
  std::optional<Value> job_mix;
  std::optional<Band> tolerance;
  std::vector<std::string> notes;  // sentences of the description, such as that lines are an estimate
};
[[nodiscard]] Picture draw(const DesignChart& chart);

/// A level that is to be reached within a time.
struct Level {
  Value value;
  std::string label;             // "set: 12 kg-cm"
  std::optional<Value> asked;    // by when
  std::optional<Value> reached;  // when
  std::string said;              // one sentence: whether and when it is reached
  Verdict verdict{};
  std::optional<Value> unrounded = std::nullopt;  // as of a limit
};

/// Values against time, with levels and when they are reached.
struct BuildChart {
  std::string title;
  Axis time, value;
  std::vector<Reading> readings;
  std::vector<Level> levels;
  std::vector<std::string> notes;
};
[[nodiscard]] Picture draw(const BuildChart& chart);

enum class SieveAxis : std::uint8_t { power, logarithmic };  // power: opening to the power 0.45

struct Sieve {
  double opening = 0;                                  // in mm, above 0
  std::string name;                                    // "No. 4"
  std::optional<Value> low, high;                      // the band of the specification
  std::optional<Value> tolerance_low, tolerance_high;  // of production, about the job mix
  std::optional<Value> passing;                        // of the job mix, or of the sample
  Verdict verdict{};
};

/// Percent passing over sieves; openings may come in any order.
struct GradingChart {
  std::string title;
  SieveAxis axis = SieveAxis::power;
  std::vector<Sieve> sieves;
  std::vector<std::string> notes;
};
[[nodiscard]] Picture draw(const GradingChart& chart);

/// One bar of the margins. `headroom`: percent of the limit, negative outside; none where it cannot be told.
struct Margin {
  std::string number, title;
  Verdict verdict{};
  std::optional<double> headroom;
  std::string shown;                 // beside the bar: "11.9 %", its headroom; or a word that stands for it
  std::string value, limit, margin;  // for the table; the margin in the unit of the limit
};

/// The margins of all clauses on one scale: right of the line inside the limit, left of it outside.
struct MarginChart {
  std::string title;
  std::vector<Margin> margins;
  std::vector<std::string> notes;
};
[[nodiscard]] Picture draw(const MarginChart& chart);

/// The specimens of one test. `statistic`: the compared value, such as their mean.
struct Scatter {
  std::string title, unit;
  std::vector<Value> specimens;
  std::optional<Value> statistic;
  std::string statistic_name;  // "mean"
  std::vector<Limit> limits;
  Verdict verdict{};
};

/// Each test on a strip with a scale of its own.
struct ScatterChart {
  std::string title;
  std::vector<Scatter> strips;
  std::vector<std::string> notes;
};
[[nodiscard]] Picture draw(const ScatterChart& chart);

struct MatrixCell {
  Verdict verdict{};
  bool asked = false;  // false: nothing stands there
  std::string text;    // for the table
};

struct MatrixRow {
  std::string label;
  std::vector<MatrixCell> cells;  // one for each column
};

struct MatrixColumn {
  std::string label, outcome;
};

/// One submittal against many specifications.
struct MatrixChart {
  std::string title;
  std::vector<MatrixColumn> columns;
  std::vector<MatrixRow> rows;
  std::vector<std::string> notes;
};
[[nodiscard]] Picture draw(const MatrixChart& chart);

/// "complies", "fails", "not shown", "does not apply".
[[nodiscard]] std::string_view verdict_text(Verdict verdict);

/// What a page with pictures puts into its style element: widths, and the custom properties for light, dark and print.
[[nodiscard]] std::string_view style_sheet();

}  // namespace plumbrule::picture
