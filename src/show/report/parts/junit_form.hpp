#pragma once
// The XML that integration servers read as the results of tests: suites of cases that pass, fail, cannot be judged
// (error) or are passed over (skipped).

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace plumbrule::report {

enum class CaseState : std::uint8_t { passed, failure, error, skipped };

struct JunitCase {
  std::string name, classname;
  CaseState state = CaseState::passed;
  std::string type, message;       // of a case that did not pass
  std::vector<std::string> lines;  // what else there is to say
};

struct JunitSuite {
  std::string name;
  std::vector<std::pair<std::string, std::string>> properties;
  std::vector<JunitCase> cases;
  std::vector<std::string> lines;
};

/// Nothing that changes from run to run stands in it: no time, no host. Every text is made fit for XML 1.0: markup is
/// escaped, and characters that XML cannot hold become the replacement mark.
[[nodiscard]] std::string junit_xml(const std::vector<JunitSuite>& suites);

/// A text inside XML, in an element or a quoted attribute.
[[nodiscard]] std::string xml_text(std::string_view text);

}  // namespace plumbrule::report
