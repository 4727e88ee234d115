#include "show/report/parts/junit_form.hpp"

#include <algorithm>

#include "base/diagnose/encoding.hpp"
#include "base/diagnose/quote.hpp"

namespace plumbrule::report {
namespace {

constexpr std::string_view mark = "\xEF\xBF\xBD";  // U+FFFD

// Bytes that are no UTF-8 become marks, one each. NUL is harmful in itself and is dealt with by `printable`.
std::string valid_utf8(std::string_view text) {
  std::string out;
  while (const auto bad = diagnose::first_bad_byte(text)) {
    out += std::string(text.substr(0, *bad)) + std::string(mark);
    text.remove_prefix(*bad + 1);
  }
  return out + std::string(text);
}

std::string_view entity(char letter) {
  switch (letter) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    default:
      return {};
  }
}

std::string attribute(const std::string& name, std::string_view value) {
  return " " + name + "=\"" + xml_text(value) + "\"";
}

std::string lines_of(const std::vector<std::string>& lines) {
  std::string out;
  for (const std::string& line : lines) {
    out += (out.empty() ? "" : "\n") + xml_text(line);
  }
  return out;
}

std::string counts(const std::vector<const JunitCase*>& cases) {
  const auto count = [&](CaseState state) {
    return std::to_string(
        std::count_if(cases.begin(), cases.end(), [&](const JunitCase* one) { return one->state == state; }));
  };
  return attribute("tests", std::to_string(cases.size())) + attribute("failures", count(CaseState::failure)) +
         attribute("errors", count(CaseState::error)) + attribute("skipped", count(CaseState::skipped));
}

std::string element(const JunitCase& one) {
  std::string out = "    <testcase" + attribute("name", one.name) + attribute("classname", one.classname);
  const std::string text = lines_of(one.lines);
  if (one.state == CaseState::passed) {
    return out + (text.empty() ? "/>\n" : ">\n      <system-out>" + text + "</system-out>\n    </testcase>\n");
  }
  out += ">\n";
  if (one.state == CaseState::skipped) {
    out += "      <skipped" + attribute("message", one.message) + "/>\n";
    return out + (text.empty() ? "" : "      <system-out>" + text + "</system-out>\n") + "    </testcase>\n";
  }
  const std::string name = one.state == CaseState::failure ? "failure" : "error";
  return out + "      <" + name + attribute("message", one.message) + attribute("type", one.type) + ">" + text + "</" +
         name + ">\n    </testcase>\n";
}

std::string element(const JunitSuite& suite) {
  std::vector<const JunitCase*> cases;
  for (const JunitCase& one : suite.cases) {
    cases.push_back(&one);
  }
  std::string out = "  <testsuite" + attribute("name", suite.name) + counts(cases) + ">\n";
  if (!suite.properties.empty()) {
    out += "    <properties>\n";
    for (const auto& [name, value] : suite.properties) {
      out += "      <property" + attribute("name", name) + attribute("value", value) + "/>\n";
    }
    out += "    </properties>\n";
  }
  for (const JunitCase& one : suite.cases) {
    out += element(one);
  }
  const std::string text = lines_of(suite.lines);
  return out + (text.empty() ? "" : "    <system-out>" + text + "</system-out>\n") + "  </testsuite>\n";
}

}  // namespace

std::string xml_text(std::string_view text) {
  std::string out;
  const std::string harmless = diagnose::printable(valid_utf8(text));
  for (std::size_t at = 0; at < harmless.size(); ++at) {
    const std::string_view three = std::string_view(harmless).substr(at, 3);
    const std::string_view escaped = entity(harmless[at]);
    if (three == "\xEF\xBF\xBE" || three == "\xEF\xBF\xBF") {  // U+FFFE and U+FFFF are no characters of XML
      out += mark;
      at += 2;
    } else if (!escaped.empty()) {
      out += escaped;
    } else {
      out += harmless[at];
    }
  }
  return out;
}

std::string junit_xml(const std::vector<JunitSuite>& suites) {
  std::vector<const JunitCase*> all;
  std::string body;
  for (const JunitSuite& suite : suites) {
    for (const JunitCase& one : suite.cases) {
      all.push_back(&one);
    }
    body += element(suite);
  }
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites" + attribute("name", "plumbrule") + counts(all) +
         ">\n" + body + "</testsuites>\n";
}

}  // namespace plumbrule::report
