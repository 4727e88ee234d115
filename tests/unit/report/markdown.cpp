#include "show/report/parts/markdown.hpp"

#include <catch2/catch.hpp>

namespace plumbrule::report {
namespace {

TEST_CASE("no sign of a text has a meaning for Markdown or HTML") {
  CHECK(markdown_text("*a* _b_ `c` [d](e) ![f] #1 | ~g~ \\") ==
        "\\*a\\* \\_b\\_ \\`c\\` \\[d\\](e) \\!\\[f\\] \\#1 \\| \\~g\\~ \\\\");
  CHECK(markdown_text("<b>&amp;</b>") == "&lt;b&gt;&amp;amp;&lt;/b&gt;");
}

TEST_CASE("no name calls anybody, and no address becomes a link") {
  CHECK(markdown_text("@everybody https://a.invalid www.a.invalid") ==
        "\\@everybody https\\://a.invalid www\\.a.invalid");
}

TEST_CASE("a text cannot begin a list, and stands on one line") {
  CHECK(markdown_text("- a") == "\\- a");
  CHECK(markdown_text("+ a") == "\\+ a");
  CHECK(markdown_text("12. a") == "12\\. a");
  CHECK(markdown_text("1) a") == "1\\) a");
  CHECK(markdown_text("430.5 g/m2") == "430.5 g/m2");
  CHECK(markdown_text("a\n# b") == "a \\# b");
}

TEST_CASE("plain words and figures stay as they are") {
  CHECK(markdown_text("873 g/m2 against at most 807 g/m2 (8.2 % of it), No. 16") ==
        "873 g/m2 against at most 807 g/m2 (8.2 % of it), No. 16");
}

}  // namespace
}  // namespace plumbrule::report
