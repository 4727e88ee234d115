// The canonical layout: laws over all shipped rule files and random variants of them, then single layouts.
// Values in the rules are made up here, no source; they are never evaluated.
#include "language/syntax/tidy.hpp"
#include "base/source/files.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <random>

#include "language/syntax/tree.hpp"
#include "tree_dump.hpp"

using namespace plumbrule;

namespace {

// Every item, clause and phrase of the language at least once.
constexpr std::string_view everything_else = R"(plumbrule 1
vocabulary v "A" "b" source "s" status unverified "why" note "n" "m"
category course "Course": levelling, surface, rut_fill
category k "K" : a
condition temperature "temp" in degC within 1 Cdeg condition soak "s" in min
condition sieve "sieve" as sieve designation condition which "w" among course
basis dry_aggregate "mass" basis other_basis "mass of another thing"
term early means cure 30 min and soak at most 1 h term strong "strength" means at least 20 kg-cm
measure m "M" in % of dry_aggregate reported to 0.1 % of dry_aggregate under soak and cure method "TB" "100"
  from a in g, b among course, c, d computed as -3 * (a - b)/(c+ -2.5 g)*f(a, larger(b,c)) + 1
  refused when a >= b because "x" "y" refused when m = 0 because "z" source "s" status verified note "n"
measure p "percent passing" in % under sieve measure q "word" among k measure r "cert" as text
table f by course in 1/m2 source "s" levelling: 1 surface: 2.25 rut_fill: -10 note "n"
table g "T" by course in number levelling: 1
table h by value in % of dry_aggregate in points note "n" above 7.25 % of dry_aggregate: 4 at least 7.25 %
  of dry_aggregate : -3.5 at least 5 % of dry_aggregate: 2 # edge
  otherwise: 0 table i by value in number in 1/m2 at most 3: 1 below 10.5 : 2
grading t3 "Type III" sieve 9.5 mm 100 % sieve No.4 70 to 90 % job mix within 5 % stockpile within 5 %
  sieve 3/8 in 45.5 % to 70 % stockpile within 10 % sieve No. 200 no limit ends of the band 10 % cite "t"
specification s "Spec" edition 2026-03-01 effective 2026-03 uses v, w agency "A" compare by the absolute method
  compare p by the rounding method to 1 %, ties up round each specimen to reporting place, ties to even
  tested within 12 months accept lint.citation because "made up"
section 1.2-3 "Section"
requirement 1.1 "R" where course is rut_fill and k is not a and course is not one of levelling, surface optional
  severity advise either m under soak 1 h and early, mean of at least 2 specimens, shall be at most 5 % of dry_aggregate
  or q shall be one of a, b or p under sieve No. 4 within 2 mm, standard deviation of specimens shall be between 1 % and 2 %
  compare by the rounding method to 0.1 %, ties to even tested within 30 days accept lint.bound because "x"
  except where course is rut_fill, shall be between 6.5 % and 8.0 % of dry_aggregate cite "note a"
  except where course is levelling and k is a, not required cite "c" because "b" mend "m" note "n"
requirement 1.2 "S" p shall conform to grading t3 within job mix tolerance
requirement 1.3 "T" m, each of at least 3 results in each lot, shall be within 0.5 % of dry_aggregate from the job mix
requirement 1.4 "U" m under cure at least 60 min, greatest of results shall be strong
requirement 1.5 "V" r shall be stated
example "e1" for 1.1 given job mix m 7.8 % given m at least 7.6 % and above 3 % under soak 1 h in lot A expect not shown
example "e2" for 1.1 given m from a 5, b levelling, c -2.50 g under early expect value 5.0 % note "n" expect complies
example "e3" for 1.1 given q a
  expect does not apply
amendment sp "Special" amends s edition 2026-03-01 effective 2026-05-15 replace 1.2 limit by at least 13.5 kg-cm cite "SP"
  withdraw 1.7 because "none" retitle 1.4 "Working" "time" cite "x" source "s"
  add requirement 1.9 "Floor" m shall be at least 7.7 % cite "c"
)";

struct Laid {
  std::string text;
  std::string tree;  // of the text before
};

std::string errors_of(const diagnose::Diagnostics& diagnostics, const source::SourceMap& sources) {
  std::string out;
  for (const diagnose::Diagnostic& one : diagnostics.all()) {
    out += sources.place_text(one.primary.span) + " " + one.message + "\n";
  }
  return out;
}

Laid lay(const std::string& text) {
  source::SourceMap sources;
  diagnose::Diagnostics diagnostics;
  const source::FileId file = sources.add("test", text);
  const auto laid = syntax::tidy(sources, file, diagnostics);
  INFO(text << errors_of(diagnostics, sources));
  REQUIRE(laid);
  diagnose::Diagnostics again;
  return {*laid, test::dump(syntax::parse(sources, file, again))};
}

std::string laid(const std::string& text) { return lay("plumbrule 1\n" + text).text.substr(13); }

bool blank(char byte) { return std::string_view(" \t\r\n\v\f").find(byte) != std::string_view::npos; }

// Tokens and comments, told apart by their first character; independent of the tokens of the program.
struct Piece {
  std::string text;
  bool comment = false;
};

std::vector<Piece> pieces(std::string_view text) {
  constexpr std::string_view marks = ",:()\"#";
  std::vector<Piece> out;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = at + 1;
    if (blank(text[at])) {
      at = end;
      continue;
    }
    if (text[at] == '"') {
      end = text.find('"', end) + 1;
    } else if (text[at] == '#') {
      end = std::min(text.find('\n', at), text.size());
    } else if (marks.find(text[at]) == std::string_view::npos) {
      while (end < text.size() && !blank(text[end]) && marks.find(text[end]) == std::string_view::npos) {
        ++end;
      }
    }
    std::string piece(text.substr(at, end - at));
    while (blank(piece.back())) {
      piece.pop_back();
    }
    out.push_back({piece, text[at] == '#'});
    at = end;
  }
  return out;
}

// The comments each, and all that is no comment without its blanks.
std::string ink(std::string_view text, bool comments) {
  std::string out;
  for (const Piece& piece : pieces(text)) {
    if (piece.comment == comments) {
      out += piece.text + (comments ? "\n" : "");
    }
  }
  return out;
}

void check_form(const std::string& text) {
  CHECK(text.ends_with("\n"));
  CHECK_FALSE(text.ends_with("\n\n"));
  CHECK(text.find("\n\n\n") == std::string::npos);
  CHECK(text.find(" \n") == std::string::npos);
  CHECK(text.find('\r') == std::string::npos);
  CHECK(text.find('\t') == std::string::npos);
}

// Returns the layout.
std::string check_laws(const std::string& text) {
  const Laid once = lay(text);
  INFO("--- before\n" << text << "--- after\n" << once.text);
  CHECK(ink(once.text, false) == ink(text, false));
  CHECK(ink(once.text, true) == ink(text, true));
  CHECK(syntax::same_but_for_blanks(text, once.text));
  check_form(once.text);
  const Laid twice = lay(once.text);
  CHECK(twice.text == once.text);
  CHECK(twice.tree == once.tree);
  return once.text;
}

std::vector<std::string> shipped() {
  std::vector<std::string> out{std::string(everything_else)};
  for (const char* folder : {"specs", "examples"}) {
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
      if (entry.path().extension() == ".plumb") {
        out.push_back(*source::read_file(entry.path().string()).text);
      }
    }
  }
  return out;
}

// Between "No." and its number, and in "3/8 in", only blanks can stand.
bool only_blanks_between(const std::string& before, const std::string& after) {
  const bool fraction = after == "in" && before.find('/') != std::string::npos;
  return before == "No." || before == "No" || fraction;
}

bool mark(const Piece& piece) {
  return piece.text.size() == 1 && std::string_view(",:()").find(piece.text) != std::string_view::npos;
}

// The same tokens with other blanks, line ends and comments between them.
std::string variant(const std::vector<Piece>& all, std::mt19937& random, bool rare) {
  const std::vector<std::string> gaps{" ",
                                      "  \t ",
                                      "\n",
                                      "\r\n  ",
                                      "\n\n\n",
                                      " # c",
                                      "\n  # c",
                                      "\n# c",
                                      "\n\n\n# c",
                                      "# c",
                                      "\n\n#",
                                      " # c\n\n  # d",
                                      "\n   # c\n# d\n\n# e",
                                      "  #  c  "};
  std::string out;
  std::string before;
  int number = 0;
  for (const Piece& piece : all) {
    if (piece.comment) {
      continue;
    }
    std::string gap = gaps[random() % (rare && random() % 8 != 0 ? 2 : gaps.size())];
    if (only_blanks_between(before, piece.text)) {
      gap = "   ";
    } else if (gap.find('#') != std::string::npos) {
      gap += " " + std::to_string(++number) + (random() % 2 == 0 ? "\n" : " \r\n\n ");
    } else if (!before.empty() && random() % 2 == 0 && (mark(piece) || mark({before, false}))) {
      gap = "";
    }
    out += gap + piece.text;
    before = piece.text;
  }
  return out + (random() % 2 == 0 ? "" : "\n\n  # end\n\n# of file");
}

}  // namespace

TEST_CASE("tidy changes nothing but blanks, and does so once") {
  for (const std::string& text : shipped()) {
    check_laws(text);
  }
}

TEST_CASE("every layout of the same tokens keeps tokens, comments and tree") {
  std::mt19937 random(20260320);
  for (const std::string& text : shipped()) {
    const auto all = pieces(text);
    const std::string tree = lay(text).tree;
    const int rounds = text.size() < 10'000 ? 80 : 2;
    for (int round = 0; round < rounds; ++round) {
      const std::string other = variant(all, random, round % 2 == 0);
      const std::string once = check_laws(other);
      REQUIRE(lay(once).tree == tree);
    }
  }
}

TEST_CASE("a file with an error has no layout") {
  for (const char* text : {"plumbrule 1\nrequirment 1 \"x\"\n", "plumbrule 2\n", "", "plumbrule 1 section 1 \"x\n\"",
                           "plumbrule 1 requirement 1 \"x\" m shall be\nsection 2 \"y\""}) {
    source::SourceMap sources;
    diagnose::Diagnostics diagnostics;
    CHECK_FALSE(syntax::tidy(sources, sources.add("test", text), diagnostics));
    CHECK(diagnostics.has_errors());
  }
}

TEST_CASE("tidy: what may differ between two texts") {
  CHECK(syntax::same_but_for_blanks("a b\r\n", " ab"));
  CHECK_FALSE(syntax::same_but_for_blanks("a b", "a c"));
  CHECK_FALSE(syntax::same_but_for_blanks("a", "a b"));
}

TEST_CASE("tidy: clauses on lines of their own, what they say in one column") {
  CHECK(
      laid("requirement 1 \"t\" optional m shall be at most 5% cite \"a\" because \"b\" mend\n\"c\"") ==
      "requirement 1 \"t\"\n  optional\n  m shall be at most 5 %\n  cite    \"a\"\n  because \"b\"\n  mend    \"c\"\n");
  CHECK(laid("measure m \"t\" in g/m2 reported to 1 g/m2 under a and b note \"n\"") ==
        "measure m \"t\"\n  in g/m2  reported to 1 g/m2\n  under a and b\n  note \"n\"\n");
  CHECK(laid("measure m \"t\" in g refused when m<0 g because \"n\"") ==
        "measure m \"t\"\n  in g\n  refused when m < 0 g\n    because \"n\"\n");
}

TEST_CASE("tidy: alternatives and rows stand in columns") {
  CHECK(laid("requirement 1 \"t\" either a under cure 60 min shall be b or longer under cure 5 h, mean of specimens, "
             "shall be c") ==
        "requirement 1 \"t\"\n"
        "  either a      under cure 60 min                    shall be b\n"
        "  or     longer under cure 5 h,   mean of specimens, shall be c\n");
  CHECK(laid("grading g \"t\" sieve No. 4 70 % to 100 % stockpile within 5 % sieve 3/8 in no limit sieve No. 200 5.5 % "
             "to 9 %") ==
        "grading g \"t\"\n"
        "  sieve No. 4    70   % to 100 %  stockpile within 5 %\n"
        "  sieve 3/8 in   no limit\n"
        "  sieve No. 200   5.5 % to   9 %\n");
  CHECK(laid("table t by c in g aa: 10 b: 2.5") == "table t by c in g\n  aa: 10\n  b:   2.5\n");
  CHECK(laid("table t by value in g in points below 0.7 g: 4 at most 10 g: 3 otherwise: 0.5") ==
        "table t by value in g in points\n"
        "  below    0.7 g: 4\n"
        "  at most 10   g: 3\n"
        "  otherwise:      0.5\n");
  CHECK(laid("table t by value in number in g above 10.5: 4 at least 3: 3") ==
        "table t by value in number in g\n  above    10.5: 4\n  at least  3:   3\n");
}

TEST_CASE("tidy: items of one line stand in columns, a blank line between kinds and where the author had one") {
  CHECK(laid("category a \"A\":x,y\ncategory bb \"B b\" : z\nbasis a \"A\"\n\n\nbasis bbb \"B\"") ==
        "category a  \"A\":    x, y\ncategory bb \"B b\":  z\n\nbasis a \"A\"\n\nbasis bbb \"B\"\n");
}

TEST_CASE("tidy: an example stays on one line if its author wrote it so") {
  CHECK(laid("example \"a\" for 1 given m 5 % expect fails example \"bc\" for 1 given m 10.5 %\n expect complies") ==
        "example \"a\"  for 1  given m  5   %  expect fails\nexample \"bc\" for 1  given m 10.5 %  expect complies\n");
  CHECK(laid("example \"a\" for 1\ngiven m 5 % given m 10 % given k w expect fails") ==
        "example \"a\" for 1\n  given m  5 %\n  given m 10 %\n  given k w\n  expect fails\n");
}

TEST_CASE("tidy: an example too long for one line has its verdict below, or stands clause by clause") {
  const std::string name(40, 'm');
  const std::string title = '"' + std::string(38, 't') + '"';
  const std::string given = "given " + name + " 5 %";
  CHECK(laid("example " + title + " for 1 " + given + " expect not shown") ==
        "example " + title + " for 1  " + given + "\n" + std::string(56, ' ') + "expect not shown\n");
  CHECK(laid("example " + title + " for 1 " + given + " " + given + " expect not shown") ==
        "example " + title + " for 1\n  " + given + "\n  " + given + "\n  expect not shown\n");
}

TEST_CASE("tidy: among short examples, one that is too long in one respect is broken there") {
  const std::string title(70, 't');
  CHECK(laid("example \"a\" for 1 given loss 5 g/ft2 expect complies\nexample \"" + title +
             "\" for 1 given loss 50 g/ft2 expect complies") ==
        "example \"a\" for 1  given loss  5 g/ft2  expect complies\nexample \"" + title +
            "\"\n            for 1  given loss 50 g/ft2  expect complies\n");
  const std::string name(35, 'm');
  CHECK(laid("example \"a\" for 1 given " + name + " 5 % expect fails\nexample \"b\" for 1 given " + name +
             " 6 % given n" + name + " 7 % expect complies") ==
        "example \"a\" for 1  given " + name + " 5 %  expect fails\nexample \"b\" for 1  given " + name +
            " 6 %  given n" + name + " 7 %\n                   expect complies\n");
}

TEST_CASE("tidy: texts that overflow together stand one under the other") {
  const std::string a = '"' + std::string(40, 'a') + '"';
  const std::string b = '"' + std::string(60, 'b') + '"';
  CHECK(laid("vocabulary v \"t\" note " + a + " " + a) == "vocabulary v \"t\"\n  note " + a + " " + a + "\n");
  CHECK(laid("vocabulary v \"t\" note " + a + " " + b) == "vocabulary v \"t\"\n  note " + a + "\n       " + b + "\n");
}

TEST_CASE("tidy: a demand that is too long goes on below, whole") {
  const std::string name(30, 'm');
  CHECK(laid("requirement 1 \"t\" " + name +
             " under temperature 25 degC, mean of at least 2 results in each lot, "
             "shall be within 0.5 % from the job mix") ==
        "requirement 1 \"t\"\n  " + name +
            " under temperature 25 degC, mean of at least 2 results in each lot,\n"
            "      shall be within 0.5 % from the job mix\n");
}

TEST_CASE("tidy: comments stay in front of what follows, or behind what stands before") {
  CHECK(laid("\n# b\nsection 1 \"t\" # c\n   # indented\n\n # d\nrequirement 2 \"u\"\n# e\nm # f\nshall be # g\n# "
             "h\nw\n# i") ==
        "# b\nsection 1 \"t\"  # c\n  # indented\n\n# d\nrequirement 2 \"u\"\n  # e\n  m  # f\n      shall be  # g\n"
        "      # h\n      w\n\n# i\n");
}

TEST_CASE("tidy: a requirement inside an amendment is indented further") {
  CHECK(laid("amendment a \"t\" amends s edition 2020 effective 2026-05-15 replace requirement 1.5 \"V\" optional m "
             "shall be w cite \"c\" add requirement 2 \"W\" m shall be w withdraw 3 because \"x\"") ==
        "amendment a \"t\"\n  amends    s edition 2020\n  effective 2026-05-15\n  replace requirement 1.5 \"V\"\n    "
        "optional\n"
        "    m shall be w\n    cite \"c\"\n  add requirement 2 \"W\"\n    m shall be w\n  withdraw 3 because \"x\"\n");
}

TEST_CASE("tidy: comments behind rows stand in one column") {
  CHECK(laid("table t by c in g aa: 10 # one\nb: 2.5 # two\nc: 1") ==
        "table t by c in g\n  aa: 10    # one\n  b:   2.5  # two\n  c:   1\n");
}
