#include "report/markup.hpp"

#include <catch2/catch.hpp>
#include <string>

namespace plumbrule::report {
namespace {

constexpr Template greeting{"<p class=\"[[kind]]\">[[text]], [[text]]</p>"};

TEST_CASE("a text is escaped, Markup goes in as it is") {
  const Markup inner = fill<greeting>(hole<"kind">("a\" onclick=\"b"), hole<"text">("<b> & 'c'"));
  CHECK(inner.html() ==
        "<p class=\"a&quot; onclick=&quot;b\">&lt;b&gt; &amp; &#39;c&#39;, &lt;b&gt; &amp; &#39;c&#39;</p>");
  CHECK(fill<greeting>(hole<"kind">("k"), hole<"text">(inner)).html().find("&lt;b&gt;") != std::string::npos);
}

TEST_CASE("what fills a hole is not searched for holes") {
  CHECK(fill<greeting>(hole<"kind">("[[text]]"), hole<"text">("[[kind]]")).html() ==
        "<p class=\"[[text]]\">[[kind]], [[kind]]</p>");
}

TEST_CASE("control characters, marks of direction and broken UTF-8 are shown as a replacement mark") {
  const std::string mark = "\xEF\xBF\xBD";
  CHECK(escaped("a\x01"
                "b\x1b[31m")
            .html() == "a" + mark + "b" + mark + "[31m");
  CHECK(escaped("\xE2\x80\xAE"
                "right\xE2\x81\xA6")
            .html() == mark + "right" + mark);
  CHECK(escaped("a\xFF"
                "b\xC3")
            .html() == "a" + mark + "b" + mark);
  CHECK(escaped(std::string_view("a\0b", 3)).html() == "a" + mark + "b");
  CHECK(escaped("one\ntwo\tthree").html() == "one two three");
}

TEST_CASE("the holes given must be those of the template") {
  CHECK(complete("[[a]] [[b]] [[a]]", {"a", "b"}));
  CHECK_FALSE(complete("[[a]] [[b]]", {"a"}));
  CHECK_FALSE(complete("[[a]]", {"a", "b"}));
  CHECK_FALSE(complete("[[a]]", {"a", "a"}));
}

TEST_CASE("a hole stands only where an escaped text is harmless") {
  CHECK(sound("<p>[[a]]</p>"));
  CHECK(sound("<p class=\"x [[a]]\">[[b]]</p>"));
  CHECK(sound("<a href=\"#[[a]]\">x</a>"));
  CHECK_FALSE(sound("<a href=\"[[a]]\">x</a>"));
  CHECK_FALSE(sound("<a href=\"//host/[[a]]\">x</a>"));
  CHECK_FALSE(sound("<p onclick=\"[[a]]\">x</p>"));
  CHECK_FALSE(sound("<p style=\"[[a]]\">x</p>"));
  CHECK_FALSE(sound("<p class=[[a]]>x</p>"));
  CHECK_FALSE(sound("<p [[a]]>x</p>"));
  CHECK_FALSE(sound("<style>[[a]]</style>"));
  CHECK_FALSE(sound("<script>[[a]]</script>"));
  CHECK_FALSE(sound("<!-- [[a]] -->"));
  CHECK_FALSE(sound("<p>[[a]]</p"));
}

}  // namespace
}  // namespace plumbrule::report
