#include "apply/sweep/worker.hpp"

#include <catch2/catch.hpp>

// Invented records, held against no specification: only whether they are records at all is looked at.
using namespace plumbrule;
using namespace plumbrule::sweep;

namespace {

Lines rows(bool begins, std::uint32_t first_line, const std::string& text) {
  return {"a.csv", true, "mix,project", 1, begins, first_line, text};
}

Lines objects(const std::string& text) { return {"b.ndjson", false, "", 0, false, 1, text}; }

std::string times(std::size_t count, const std::string& line) {
  std::string out;
  for (std::size_t at = 0; at < count; ++at) {
    out += line + "\n";
  }
  return out;
}

}  // namespace

TEST_CASE("what objects have taught a worker does not count for the rows of a sheet") {
  const std::vector<Against> against;
  const evidence::KnownNames names;
  Worker worker(against, names, VerdictForm::none, std::nullopt, false);
  CHECK(worker.run(rows(true, 2, times(20, "M-1,P"))).errors.empty());
  CHECK(worker.run(objects(times(20, R"({"mix":"M-1","project":"P","note":"N"})"))).errors.empty());
  CHECK(worker.tally().unreadable == 0);
  // A later part of the same sheet: one cell too many in the second row.
  const Written more = worker.run(rows(false, 500, "M-1,P\nM-1,P,N\nM-1,P\n"));
  CHECK(more.errors.find("a.csv:501:") != std::string::npos);
  CHECK(worker.tally().records == 43);
  CHECK(worker.tally().unreadable == 1);
}
