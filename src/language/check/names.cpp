#include "base/diagnose/suggest.hpp"
#include "base/quantity/unit_suggestion.hpp"
#include "language/check/checker.hpp"

namespace plumbrule::check {

std::string_view describe(NameKind kind) {
  switch (kind) {
    case NameKind::category:
      return "category";
    case NameKind::condition:
      return "condition";
    case NameKind::measure:
      return "measure";
    case NameKind::table:
      return "table";
    case NameKind::basis:
      return "basis";
    case NameKind::grading:
      return "grading";
    case NameKind::term:
      return "term";
  }
  return "";
}

// A vocabulary that a specification uses: one of the files behind the first.
bool Checker::of_library(source::FileId file) const {
  return std::find(std::next(rules_.files.begin()), rules_.files.end(), file) != rules_.files.end();
}

void Checker::declare(Scope& scope, const syntax::Text& name, NameKind kind, std::size_t index) {
  const auto [at, fresh] = scope.try_emplace(name.value, Named{kind, static_cast<std::uint32_t>(index), name.span});
  if (fresh) {
    return;
  }
  // The specification was read first, but what it uses was there before it.
  Named second{kind, static_cast<std::uint32_t>(index), name.span};
  if (of_library(second.span.file) && !of_library(at->second.span.file)) {
    std::swap(second, at->second);
  }
  auto& report =
      diagnostics_.error(diagnose::Code::name_duplicate, second.span, "found `" + name.value + "` a second time",
                         "give the " + std::string(describe(second.kind)) + " a name of its own");
  report.secondary.push_back({at->second.span, "the first one, a " + std::string(describe(at->second.kind))});
}

const Named* Checker::find(const Scope& scope, const syntax::Text& name, std::string_view wanted) {
  if (const auto at = scope.find(name.value); at != scope.end()) {
    return &at->second;
  }
  if (broken_.count(name.value) > 0) {
    return nullptr;
  }
  std::vector<std::string_view> known;
  for (const auto& [text, entry] : scope) {
    known.push_back(text);
  }
  error(diagnose::Code::name_unknown, name.span,
        "found `" + name.value + "`, no " + std::string(wanted) + " of that name",
        diagnose::suggestion(name.value, known));
  return nullptr;
}

std::uint32_t Checker::find_kind(const Scope& scope, const syntax::Text& name, NameKind kind) {
  const auto at = scope.find(name.value);
  if (at == scope.end() && broken_.count(name.value) > 0) {
    return none;  // its declaration could not be read, and that was reported
  }
  if (at == scope.end()) {
    std::vector<std::string_view> known;
    for (const auto& [text, entry] : scope) {
      if (entry.kind == kind) {
        known.push_back(text);
      }
    }
    error(diagnose::Code::name_unknown, name.span,
          "found `" + name.value + "`, no " + std::string(describe(kind)) + " of that name",
          diagnose::suggestion(name.value, known));
    return none;
  }
  if (at->second.kind != kind) {
    auto& report = diagnostics_.error(diagnose::Code::name_wrong_kind, name.span,
                                      "found `" + name.value + "`, a " + std::string(describe(at->second.kind)) +
                                          ", where a " + std::string(describe(kind)) + " is needed",
                                      "correct the name, or declare a " + std::string(describe(kind)));
    report.secondary.push_back({at->second.span, "it was declared here"});
    return none;
  }
  used_.push_back(name.value);
  return at->second.index;
}

// Gradings, terms and categories of the first file that no clause of it names.
void Checker::note_unused() {
  const auto note = [&](const Scope& scope) {
    for (const auto& [name, entry] : scope) {
      const bool own = entry.span.file == rules_.file && rules_.specification;
      const bool checked = entry.kind == NameKind::grading || entry.kind == NameKind::term ||
                           entry.kind == NameKind::category || entry.kind == NameKind::condition;
      if (own && checked && std::find(used_.begin(), used_.end(), name) == used_.end()) {
        rules_.unused.emplace_back(name, entry.span);
      }
    }
  };
  note(names_);
  note(gradings_);
}

void Checker::unknown_word(const syntax::Text& word, const std::vector<std::string>& known, const std::string& what) {
  const std::vector<std::string_view> views(known.begin(), known.end());
  error(diagnose::Code::name_unknown, word.span, "found `" + word.value + "`, " + what,
        diagnose::suggestion(word.value, views));
}

std::uint32_t Checker::find_word(CategoryId category, const syntax::Text& word) {
  const Category& found = rules_.categories.at(category);
  for (std::size_t at = 0; at < found.words.size(); ++at) {
    if (found.words[at] == word.value) {
      return static_cast<std::uint32_t>(at);
    }
  }
  unknown_word(word, found.words, "no word of category `" + found.name + "`");
  return none;
}

Provenance Checker::provenance(const syntax::Provenance& tree) {
  Provenance out{tree.source.value, Status::unstated, tree.status_note.value, tree.note.value};
  if (tree.status.given()) {
    static const std::vector<std::string> known{"verified", "unverified", "demonstration"};
    const auto at = std::find(known.begin(), known.end(), tree.status.value);
    if (at == known.end()) {
      unknown_word(tree.status, known, "no status");
    } else {
      out.status = static_cast<Status>(at - known.begin() + 1);
    }
  }
  return out;
}

bool Checker::unit(const syntax::WrittenUnit& written, Type& out) {
  if (!written.span.known() || written.text == "number") {
    out.unit = quantity::UnitTable::number;
    return true;
  }
  const auto found = rules_.units.find(written.text);
  if (!found) {
    error(diagnose::Code::unit_unknown, written.span, "found `" + written.text + "`, no unit that is known",
          quantity::unit_suggestion(written.text));
    out.broken = true;
    return false;
  }
  out.unit = *found;
  if (written.basis.given()) {
    out.basis = find_kind(bases_, written.basis, NameKind::basis);
    out.broken = out.basis == none;
    return !out.broken;
  }
  return true;
}

// 10 for a percentage would be 1000 %, and so would 10 points.
bool Checker::lacks_percent(const Type& found, const Type& wanted) const {
  return !quantity::same_kind_of_number(rules_.units.at(found.unit), rules_.units.at(wanted.unit));
}

std::string Checker::unit_text(UnitId unit) const {
  const std::string& text = rules_.units.at(unit).text;
  return text.empty() ? "a plain number" : "`" + text + "`";
}

std::string Checker::type_text(const Type& type) const {
  if (type.text) {
    return "a text";
  }
  if (type.is_word()) {
    return "a word of category `" + rules_.categories.at(type.category).name + "`";
  }
  if (type.basis != none) {
    return "`% of " + rules_.bases.at(type.basis).name + "`";
  }
  const quantity::Unit& unit = rules_.units.at(type.unit);
  const bool plain = unit.dimension == quantity::Dimension{};
  return unit_text(type.unit) + (plain ? "" : " (" + quantity::describe(unit) + ")");
}

}  // namespace plumbrule::check
