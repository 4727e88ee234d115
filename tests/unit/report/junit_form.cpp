#include "show/report/parts/junit_form.hpp"

#include <catch2/catch.hpp>
#include <string>

using namespace plumbrule::report;

// What XML 1.0, section 2.2, allows: tab and line end aside no C0, no surrogate, not U+FFFE and U+FFFF (from memory).
TEST_CASE("texts are made fit for XML") {
  const std::string mark = "\xEF\xBF\xBD";
  CHECK(xml_text("a < b & \"c\" > d ]]>") == "a &lt; b &amp; &quot;c&quot; &gt; d ]]&gt;");
  CHECK(xml_text("m\xC2\xB2") == "m\xC2\xB2");
  CHECK(xml_text(std::string("a\0b", 3)) == "a" + mark + "b");
  CHECK(xml_text("\x1b[31m\n\t\x7f") == mark + "[31m" + mark + mark + mark);
  CHECK(xml_text("\xEF\xBF\xBE|\xEF\xBF\xBF|\xEF\xBF\xBD") == mark + "|" + mark + "|" + mark);
  CHECK(xml_text("\xFF\xC3(") == mark + mark + "(");
  CHECK(xml_text("\xED\xA0\x80") == mark + mark + mark);
}

TEST_CASE("counts stand for the suite and for all") {
  const JunitCase good{"good", "c", CaseState::passed, {}, {}, {}};
  const JunitCase bad{"bad", "c", CaseState::failure, "fails", "too much", {"line 1", "line <2>"}};
  const JunitCase open{"open", "c", CaseState::error, "not shown", "nothing", {}};
  const std::string out = junit_xml({{"one", {{"p", "v"}}, {good, bad}, {}}, {"two", {}, {open}, {"said"}}});
  CHECK(out.find(R"(<testsuites name="plumbrule" tests="3" failures="1" errors="1" skipped="0">)") !=
        std::string::npos);
  CHECK(out.find(R"(<testsuite name="one" tests="2" failures="1" errors="0" skipped="0">)") != std::string::npos);
  CHECK(out.find("<failure message=\"too much\" type=\"fails\">line 1\nline &lt;2&gt;</failure>") != std::string::npos);
}
