#include "judge/evidence/heading.hpp"

#include <algorithm>
#include <array>
#include <charconv>

#include "base/diagnose/quote.hpp"
#include "base/quantity/unit.hpp"
#include "base/quantity/unit_suggestion.hpp"
#include "judge/evidence/written.hpp"
#include "judge/evidence/written_fault.hpp"

namespace plumbrule::evidence {
namespace {

using diagnose::Code;
using source::Span;

constexpr std::array<std::string_view, 6> identity{"mix", "project", "laboratory", "prepared_by", "date", "note"};
constexpr std::array<std::string_view, 7> material_keys{"material", "id",          "batch", "description",
                                                        "source",   "certificate", "note"};
constexpr std::array<std::string_view, 7> text_keys{"replicates", "tested",        "made", "lot",
                                                    "laboratory", "accreditation", "note"};
constexpr std::array<std::string_view, 2> value_keys{"reported", "also"};
constexpr std::array<std::string_view, 6> key_words{"at", "result", "held", "clock", "material", "shared"};

template <std::size_t N>
bool is_one_of(std::string_view text, const std::array<std::string_view, N>& words) {
  return std::find(words.begin(), words.end(), text) != words.end();
}

bool is_letter(char byte) { return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z'); }

// Blanks side by side as one.
std::string single_blanks(std::string_view text) {
  std::string out;
  for (const char byte : text) {
    if (byte != ' ' || !out.ends_with(' ')) {
      out += byte;
    }
  }
  return out;
}

// A part between semicolons, as its first word and the rest.
struct Part {
  std::string_view whole, word, rest;
};

class Reader {
 public:
  Reader(const Cell& cell, quantity::UnitTable& units, diagnose::Diagnostics& diagnostics)
      : cell_(cell), units_(units), diagnostics_(diagnostics) {}

  std::optional<Heading> run() {
    std::string_view text = cell_.text;
    if (text.find('\t') != std::string_view::npos) {
      error(text, "found a tab in a heading",
            "columns of a sheet are separated by commas, the parts of a heading by `;`");
      return std::nullopt;
    }
    if (!take_unit(text) || !split(text)) {
      return std::nullopt;
    }
    const std::string_view first = parts_.front().whole;
    const bool good = is_identity(first)                  ? identity_of()
                      : first == "classes"                ? class_of()
                      : first == "job_mix"                ? target()
                      : parts_.front().word == "material" ? material()
                                                          : result();
    return good ? std::optional(std::move(out_)) : std::nullopt;
  }

 private:
  const Cell& cell_;
  quantity::UnitTable& units_;
  diagnose::Diagnostics& diagnostics_;
  Heading out_;
  std::vector<Part> parts_;
  std::size_t next_ = 1;
  std::string_view unit_;

  [[nodiscard]] bool more() const { return next_ < parts_.size(); }

  // Only where the heading stands as it was written is the place of a part known.
  [[nodiscard]] Span place(std::string_view part) const {
    const std::size_t length = cell_.span.end - cell_.span.begin;
    const bool quoted = length == cell_.text.size() + 2;
    if (!quoted && length != cell_.text.size()) {
      return cell_.span;
    }
    const auto at = static_cast<std::uint32_t>(part.data() - cell_.text.data()) + (quoted ? 1U : 0U);
    return {cell_.span.file, cell_.span.begin + at, cell_.span.begin + at + static_cast<std::uint32_t>(part.size())};
  }
  [[nodiscard]] Name name_of(std::string_view part) const { return {single_blanks(part), place(part)}; }

  bool error(std::string_view where, const std::string& message, const std::string& help,
             Code code = Code::submittal_sheet) {
    diagnostics_.error(code, place(where), message, help);
    return false;
  }

  bool take_unit(std::string_view& text) {
    text = trimmed(text);
    const std::size_t open = text.rfind('(');
    if (!text.ends_with(')') || open == std::string_view::npos) {
      return true;
    }
    unit_ = trimmed(text.substr(open + 1, text.size() - open - 2));
    text = trimmed(text.substr(0, open));
    const std::string value = "1 " + std::string(unit_);
    const auto read = read_written(value);
    const auto* written = std::get_if<Written>(&read);
    if (written == nullptr || written->bound != quantity::Bound::exact || written->unit.empty() ||
        !units_.find(written->unit)) {
      return error(unit_, "found " + diagnose::quoted(unit_) + ", no unit that is known",
                   quantity::unit_suggestion(unit_), Code::submittal_unit);
    }
    out_.unit = std::string(unit_);
    return true;
  }

  bool split(std::string_view text) {
    for (std::size_t at = 0; at <= text.size();) {
      const std::size_t end = std::min(text.find(';', at), text.size());
      const std::string_view whole = trimmed(text.substr(at, end - at));
      if (whole.empty()) {
        return text.empty() ? error(cell_.text, "found a column without a heading",
                                    "say what it holds, such as `mix` or `abrasion_loss; soak 1 h (g/m2)`")
                            : error(text.substr(at, end - at), "found nothing between two semicolons of a heading",
                                    "take one of them out");
      }
      const std::size_t blank = std::min(whole.find(' '), whole.size());
      parts_.push_back({whole, whole.substr(0, blank), trimmed(whole.substr(blank))});
      at = end + 1;
    }
    return true;
  }

  bool without_unit(std::string_view part) {
    return unit_.empty() || error(unit_, "found a unit for " + diagnose::quoted(part) + ", which is a text",
                                  "take the brackets out of the heading");
  }

  void step(std::string_view name) { out_.path.push_back({name_of(name), false}); }
  void step(std::string_view name, std::string_view written) {
    out_.path.push_back({{std::string(name), place(written)}, false});
  }
  void item(std::string name, std::string_view written) {
    out_.path.push_back({{std::move(name), place(written)}, true});
  }

  bool finished() {
    return !more() || error(parts_[next_].whole,
                            "found " + diagnose::quoted(parts_[next_].whole) + " behind " +
                                diagnose::quoted(parts_[next_ - 1].whole) + ", where a heading ends",
                            "take it out; columns of a sheet are separated by commas, the parts of a heading by `;`");
  }

  bool identity_of() {
    step(parts_.front().whole);
    return finished() && without_unit(parts_.front().whole);
  }

  // The next part, a single name.
  bool single(const std::string& what, const std::string& such_as) {
    if (!more() || !is_name(parts_[next_].whole)) {
      const std::string_view found = more() ? parts_[next_].whole : cell_.text;
      return error(found,
                   more() ? "found " + diagnose::quoted(found) + ", no name of " + what
                          : "found a heading without the name of " + what,
                   "write one name, such as `" + such_as + "`");
    }
    ++next_;
    return true;
  }

  bool class_of() {
    step("classes", parts_.front().whole);
    if (!single("a class", "classes; traffic")) {
      return false;
    }
    step(parts_[1].whole);
    return without_unit(parts_[1].whole) && finished();
  }

  // Behind a key word that counts: "specimen 2".
  bool number(const Part& part) {
    unsigned value = 0;
    const char* const end = part.rest.data() + part.rest.size();
    const auto read = std::from_chars(part.rest.data(), end, value);
    if (read.ec == std::errc() && read.ptr == end && value > 0 && part.rest.front() != '0') {
      return true;
    }
    return error(part.whole,
                 "found " + diagnose::quoted(part.whole) + ", expected a whole number from 1 up behind `" +
                     std::string(part.word) + "`",
                 "write `" + std::string(part.word) + " 1`, `" + std::string(part.word) + " 2` and so on");
  }

  bool material() {
    const Part& part = parts_.front();
    if (!number(part)) {
      return false;
    }
    step("materials", part.word);
    item(std::string(part.rest), part.whole);
    if (!more() || !is_one_of(parts_[1].whole, material_keys)) {
      return error(more() ? parts_[1].whole : part.whole, "found no entry of a material",
                   "write one of `material`, `id`, `batch`, `description`, `source`, `certificate`, `note` behind `;`");
    }
    ++next_;
    step(parts_[1].whole);
    return without_unit(parts_[1].whole) && finished();
  }

  bool target() {
    step("job_mix", parts_.front().whole);
    if (!single("a measure", "job_mix; residual_binder (% of dry aggregate)")) {
      return false;
    }
    step(parts_[1].whole);
    if (more()) {
      const Part& part = parts_[next_++];
      if (!is_name(part.word) || part.rest.empty()) {
        return no_condition(part);
      }
      step(part.rest);
    }
    return finished();
  }

  bool no_condition(const Part& part) {
    const bool name = is_name(part.whole);
    return error(
        part.whole,
        "found " + diagnose::quoted(part.whole) +
            (name ? ", neither a key word nor a condition with its value" : ", no condition"),
        name ? "write the value behind the condition, as in `soak 1 h`; a reading stands behind its specimen, as "
               "in `specimen 1; mass_before (g)`"
             : "write its name, a blank and its value, as in `soak 1 h` or `sieve No. 4`");
  }

  bool condition(std::string_view whole, std::vector<std::pair<Name, Name>>& out) {
    const std::size_t blank = std::min(whole.find(' '), whole.size());
    const std::string_view name = whole.substr(0, blank);
    const std::string_view value = trimmed(whole.substr(blank));
    if (!is_name(name) || value.empty()) {
      return no_condition({whole, name, value});
    }
    const auto same = std::find_if(out.begin(), out.end(), [&](const auto& one) { return one.first.text == name; });
    if (same != out.end()) {
      return error(whole, "found " + diagnose::quoted(name) + " a second time in one heading", "keep one of them",
                   Code::submittal_duplicate_key);
    }
    out.emplace_back(name_of(name), name_of(value));
    return true;
  }

  // `held water_temperature`, `clock cure; begin`; -1 if it is neither.
  int circumstance(const Part& part) {
    if ((part.word != "held" && part.word != "clock") || part.rest.empty()) {
      return -1;
    }
    if (!is_name(part.rest)) {
      return error(part.rest,
                   "found " + diagnose::quoted(part.rest) + " behind `" + std::string(part.word) + "`, no name",
                   "write one name, as in `held water_temperature` or `clock cure; begin`");
    }
    step(part.word);
    step(part.rest);
    if (part.word == "held") {
      return finished();
    }
    if (!more() || (parts_[next_].whole != "begin" && parts_[next_].whole != "end")) {
      return error(
          part.whole, "found " + diagnose::quoted(part.whole) + " without `begin` or `end`",
          "give it two columns: `" + std::string(part.whole) + "; begin` and `" + std::string(part.whole) + "; end`");
    }
    item(std::string(parts_[next_].whole), parts_[next_].whole);
    ++next_;
    return without_unit(part.whole) && finished();
  }

  // What stands in `shared`, a specimen or a row.
  bool member() {
    const Part& part = parts_[next_++];
    const int known = circumstance(part);
    if (known >= 0) {
      return known == 1;
    }
    if (!is_name(part.whole)) {
      return error(part.whole, "found " + diagnose::quoted(part.whole) + ", no name of a reading",
                   "write one name, such as `mass_before`; conditions stand before the specimen");
    }
    step(part.whole);
    return (part.whole != "label" || without_unit(part.whole)) && finished();
  }

  bool specimen(const Part& part) {
    if (!number(part)) {
      return false;
    }
    step(part.word == "row" ? "series" : "specimens", part.word);
    item(std::string(part.rest), part.whole);
    if (more()) {
      return member();
    }
    out_.direct = part.word == "specimen";
    step("value", part.whole);
    return true;
  }

  bool shared(const Part& part) {
    step(part.word);
    return more() ? member()
                  : error(part.whole, "found `shared` without a name behind it",
                          "write the reading that the specimens share, as in `shared; frame_area (in2)`");
  }

  // The part that says which entry of the result the column holds; parts before it say which result.
  bool entry(const Part& part) {
    const std::string_view word = part.word;
    if (word == "specimen" || word == "row") {
      return specimen(part);
    }
    if (part.whole == "shared") {
      return shared(part);
    }
    if (word == "material" && !part.rest.empty()) {
      step("materials", word);
      step(part.rest);
      return without_unit(part.whole) && finished();
    }
    if (is_one_of(part.whole, text_keys) || is_one_of(part.whole, value_keys)) {
      step(part.whole);
      return (is_one_of(part.whole, value_keys) || without_unit(part.whole)) && finished();
    }
    const int known = circumstance(part);
    return known >= 0 ? known == 1 : no_condition(part);
  }

  [[nodiscard]] static bool is_entry(const Part& part) {
    return part.word == "specimen" || part.word == "row" || is_one_of(part.word, text_keys) ||
           is_one_of(part.word, value_keys) || is_one_of(part.word, key_words) || part.rest.empty();
  }

  bool result() {
    const Part& first = parts_.front();
    if (!is_name(first.whole)) {
      return error(
          first.whole, "found " + diagnose::quoted(first.whole) + ", no entry of a submittal and no measure",
          "the name of a measure has no blanks; its conditions stand behind `;`, as in `abrasion_loss; soak 1 h`");
    }
    out_.measure = name_of(first.whole);
    std::string which;
    for (; more(); ++next_) {
      const Part& part = parts_[next_];
      if (part.word == "result" && !part.rest.empty()) {
        if (!number(part)) {
          return false;
        }
        which = part.rest;
      } else if (part.word == "at" && !part.rest.empty()) {
        if (!condition(part.rest, out_.at)) {
          return false;
        }
      } else if (is_entry(part)) {
        break;
      } else if (!condition(part.whole, out_.under)) {
        return false;
      }
    }
    step("results", first.whole);
    item(tag(which), first.whole);
    if (!more()) {
      step("reported", first.whole);
      return true;
    }
    return entry(parts_[next_++]);
  }

  // Tells one result from another, in whatever order the conditions are written.
  [[nodiscard]] std::string tag(const std::string& which) const {
    std::string out = out_.measure.text;
    for (const auto* conditions : {&out_.under, &out_.at}) {
      std::vector<std::string> sorted;
      for (const auto& [name, value] : *conditions) {
        sorted.push_back(name.text + " " + value.text);
      }
      std::sort(sorted.begin(), sorted.end());
      out += conditions == &out_.under ? ";" : ";at ";
      for (const std::string& one : sorted) {
        out += one + ";";
      }
    }
    return out + (which.empty() ? "1" : which);
  }
};

}  // namespace

bool is_identity(std::string_view text) { return is_one_of(text, identity); }

bool is_name(std::string_view text) {
  bool joined = true;  // a hyphen stands between two other characters
  for (const char byte : text) {
    const bool plain = is_letter(byte) || (byte >= '0' && byte <= '9') || byte == '_';
    if (!plain && (byte != '-' || joined)) {
      return false;
    }
    joined = !plain;
  }
  return !text.empty() && is_letter(text.front()) && !joined;
}

std::optional<std::string> with_unit(std::string_view written, std::string_view unit) {
  const auto read = read_written(written);
  const auto* known = std::get_if<Written>(&read);
  if (unit.empty() || known == nullptr) {
    return std::string(written);
  }
  if (!known->unit.empty() || !known->basis.empty()) {
    return std::nullopt;
  }
  std::string out(written);
  // No word of a bound holds a digit, so the number ends with the last one.
  return out.insert(out.find_last_of("0123456789") + 1, " " + std::string(unit));
}

std::optional<Heading> read_heading(const Cell& cell, quantity::UnitTable& units, diagnose::Diagnostics& diagnostics) {
  return Reader(cell, units, diagnostics).run();
}

}  // namespace plumbrule::evidence
