#include "apply/followup/heads.hpp"

#include "base/diagnose/quote.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::followup {
namespace {

using diagnose::quoted;

std::string result_text(const Context& context, const Result& result) {
  const std::size_t count = result.specimens.size();
  if (result.reported.kind != Value::Kind::missing) {
    return written(context, result.reported.span);
  }
  if (count == 1 && result.specimens.front().direct.kind != Value::Kind::missing) {
    return written(context, result.specimens.front().direct.span);
  }
  return std::to_string(count) + (count == 1 ? " specimen" : " specimens");
}

}  // namespace

void compare_identity(Comparison& both) {
  const evidence::Identity& from = both.before.evidence.identity;
  const evidence::Identity& to = both.after.evidence.identity;
  const auto compare = [&](const std::string& what, const std::string& left, const std::string& right,
                           const Span& before, const Span& after) {
    if (left != right) {
      const auto stated = [](const std::string& text) { return text.empty() ? not_stated : explain::one_line(text); };
      both.out.values.push_back({"submittal", what, stated(left), stated(right), "", before, after});
    }
  };
  compare("project", from.project, to.project, from.project_place, to.project_place);
  compare("mix", from.mix, to.mix, from.mix_place, to.mix_place);
  compare("laboratory", from.laboratory, to.laboratory, from.laboratory_place, to.laboratory_place);
  compare("prepared by", from.prepared_by, to.prepared_by, from.prepared_by_place, to.prepared_by_place);
  compare("note", from.note, to.note, from.note_place, to.note_place);
}

void compare_classes(Comparison& both) {
  for (std::size_t at = 0; at < both.after.evidence.classes.size(); ++at) {
    const Value& from = both.before.evidence.classes[at];
    const Value& to = both.after.evidence.classes[at];
    if (from.kind != to.kind || from.word != to.word) {
      both.out.values.push_back({"class", explain::spaced(both.after.rules.categories[at].name),
                                 worded(both.before, from), worded(both.after, to), "", from.span, to.span});
    }
  }
}

void list_other_results(Comparison& both) {
  for (const std::uint32_t at : both.matching.removed) {
    const Result& one = both.before.evidence.results[at];
    both.out.results.push_back({false, subject(both.before, one), result_text(both.before, one), one.span});
  }
  for (const std::uint32_t at : both.matching.added) {
    const Result& one = both.after.evidence.results[at];
    both.out.results.push_back({true, subject(both.after, one), result_text(both.after, one), one.span});
  }
}

void look_whose(Comparison& both) {
  const auto other = [&](const std::string& what, const std::string& from, const std::string& to, const Span& before,
                         const Span& after) {
    if (!from.empty() && !to.empty() && plain(from) != plain(to)) {
      both.look(LookKind::other_submittal, what + " was " + quoted(from) + " and is " + quoted(to),
                "ask whether both files are of one mix", before, after);
    }
  };
  const evidence::Identity& from = both.before.evidence.identity;
  const evidence::Identity& to = both.after.evidence.identity;
  other("project", from.project, to.project, from.project_place, to.project_place);
  other("mix", from.mix, to.mix, from.mix_place, to.mix_place);
  const evidence::Day& first = both.before.evidence.reviewed;
  const evidence::Day& second = both.after.evidence.reviewed;
  if (second.day != evidence::no_date && first.day > second.day) {
    both.look(LookKind::dates_reversed,
              "the submittal of before is dated " + written(both.before, first.span) + ", the one of now " +
                  written(both.after, second.span),
              "ask whether the files were exchanged", first.span, second.span);
  }
}

}  // namespace plumbrule::followup
