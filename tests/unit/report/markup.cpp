#include "show/report/parts/markup.hpp"

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

// What a reader of the page copies.
std::string without_breaks(std::string html) {
  for (const auto& [from, to] : {std::pair<std::string, std::string>{"<wbr>", ""}, {"&nbsp;", " "}}) {
    for (std::size_t at = html.find(from); at != std::string::npos; at = html.find(from, at)) {
      html.replace(at, from.size(), to);
    }
  }
  return html;
}

std::string broken(const std::string& text) { return breakable(escaped(text)).html(); }

TEST_CASE("long words may break at their joints, and only without those every few letters") {
  CHECK(broken("specification") == "specification");
  CHECK(broken("g/m2 2026-03-20 512.3.10") == "g/m2 2026-03-20 512.3.10");
  CHECK(broken("examples/submittals/clean_twin.yaml:24:9") ==
        "examples/<wbr>submittals/<wbr>clean_<wbr>twin.yaml:24:9");
  CHECK(broken("a/fine_aggregates.of.the.trial:24") ==
        "a/<wbr>fine_<wbr>aggregates.<wbr>of.<wbr>the.<wbr>trial:<wbr>24");
  CHECK(broken(std::string(24, 'w')) == "wwww<wbr>wwww<wbr>wwww<wbr>wwww<wbr>wwww<wbr>wwww");
  CHECK(broken(std::string(20, 'w')) == std::string(20, 'w'));
  CHECK(broken("a trailing/joint/of/words/") == "a trailing/<wbr>joint/<wbr>of/<wbr>words/");
}

TEST_CASE("a break never parts an entity, a character or a tag, and loses nothing") {
  std::string roads;
  for (int at = 0; at < 30; ++at) {
    roads += "\xF0\x9F\x9B\xA3";
  }
  for (const std::string& text :
       {std::string(30, '<'), "&amp;" + std::string(40, '&'), roads, std::string(";&;<w>_") + std::string(50, '\'')}) {
    INFO(text);
    const std::string html = broken(text);
    CHECK(html.find("<wbr>") != std::string::npos);
    CHECK(without_breaks(html) == escaped(text).html());
  }
  const std::string drawing = "<svg a=\"1\"><desc>" + std::string(60, 'd') + "</desc></svg>";
  CHECK(breakable(Markup::of_drawing(drawing)).html() == drawing);
  const std::string digest = "<code>sha256:" + std::string(64, 'a') + "</code>";  // searched for as a whole
  CHECK(breakable(Markup::of_drawing(digest)).html() == digest);
  const std::string tag = "<p class=\"" + std::string(60, 'c') + "\">x</p>";
  CHECK(breakable(Markup::of_drawing(tag)).html() == tag);
}

TEST_CASE("a number and its % stay on one line") {
  CHECK(broken("70 % to 90 %, or 5 %") == "70&nbsp;% to 90&nbsp;%, or 5&nbsp;%");
  CHECK(broken("7 %x and a %") == "7 %x and a %");
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
