// One submittal against many specifications.

#include <algorithm>

#include "show/picture/chart.hpp"

namespace plumbrule::picture {
namespace {

constexpr double row_label_width = 150;
constexpr double cells_left = 158;
constexpr std::size_t most_columns = 12;  // side by side; more stand in a further block below
constexpr double row_line = 13;

class MatrixDrawer {
 public:
  explicit MatrixDrawer(const MatrixChart& chart) : chart_(chart) {}

  Picture run() {
    double y = 2;
    for (std::size_t first = 0; first < chart_.columns.size(); first += most_columns) {
      y = block(first, std::min(first + most_columns, chart_.columns.size()), y);
    }
    y = seen_.key(drawing_, y + 2);
    y = paragraph(drawing_, {6, y}, page_width - 8, "an empty place: the specification does not ask for it",
                  small_size);
    for (std::size_t at = 0; at < chart_.columns.size(); ++at) {
      const MatrixColumn& one = chart_.columns[at];
      drawing_.text({22, y + text_size + 3}, std::to_string(at + 1), small_size, Anchor::end, Ink::text, true);
      y = paragraph(drawing_, {30, y + 3}, page_width - 32, one.label + ": " + one.outcome, small_size);
    }
    const std::string said = describe();
    return {drawing_.finish(y + 3, chart_.title, said), chart_.title, said, table()};
  }

 private:
  const MatrixChart& chart_;
  Drawing drawing_;
  Seen seen_;

  [[nodiscard]] static double middle(std::size_t at, std::size_t count) {
    const double width = std::min((page_width - cells_left) / static_cast<double>(count), 60.0);
    return cells_left + width * (static_cast<double>(at) + 0.5);
  }

  double block(std::size_t first, std::size_t end, double y) {
    for (std::size_t at = first; at < end; ++at) {
      drawing_.text({middle(at - first, end - first), y + text_size}, std::to_string(at + 1), small_size,
                    Anchor::middle, Ink::text, true);
    }
    y += line_height + 2;
    const double top = y;
    for (const MatrixRow& one : chart_.rows) {
      drawing_.line({2, y}, {page_width - 2, y}, {Ink::quiet, 0.4, {}});
      y = row(one, first, end, y);
    }
    drawing_.line({2, y}, {page_width - 2, y}, {Ink::quiet, 0.4, {}});
    drawing_.line({cells_left - 3, top}, {cells_left - 3, y}, {Ink::text, 1, {}});
    return y + 6;
  }

  double row(const MatrixRow& one, std::size_t first, std::size_t end, double y) {
    double base = y + 1;
    for (const std::string& words : folded(one.label, small_size, row_label_width)) {
      base += row_line;
      drawing_.text({2, base - 1}, words, small_size);
    }
    const double bottom = base + 4;
    for (std::size_t at = first; at < std::min(end, one.cells.size()); ++at) {
      if (one.cells[at].asked) {
        drawing_.mark({middle(at - first, end - first), (y + bottom) / 2}, one.cells[at].verdict);
        seen_.add(one.cells[at].verdict);
      }
    }
    return bottom;
  }

  [[nodiscard]] std::string describe() const {
    std::vector<std::string> all{counted(chart_.columns.size(), "specification", "specifications") + " and " +
                                 counted(chart_.rows.size(), "test", "tests")};
    for (const MatrixColumn& one : chart_.columns) {
      all.push_back(one.label + ": " + one.outcome);
    }
    all.insert(all.end(), chart_.notes.begin(), chart_.notes.end());
    return sentences(all);
  }

  [[nodiscard]] Table table() const {
    Table out{{"test"}, {}};
    for (const MatrixColumn& one : chart_.columns) {
      out.heads.push_back(one.label);
    }
    for (const MatrixRow& one : chart_.rows) {
      std::vector<std::string> cells{one.label};
      for (std::size_t at = 0; at < chart_.columns.size(); ++at) {
        const bool asked = at < one.cells.size() && one.cells[at].asked;
        const std::string verdict = asked ? std::string(verdict_text(one.cells[at].verdict)) : "";
        cells.push_back(!asked                       ? "not asked"
                        : one.cells[at].text.empty() ? verdict
                                                     : verdict + ": " + one.cells[at].text);
      }
      out.rows.push_back(std::move(cells));
    }
    return out;
  }
};

}  // namespace

Picture draw(const MatrixChart& chart) { return MatrixDrawer(chart).run(); }

}  // namespace plumbrule::picture
