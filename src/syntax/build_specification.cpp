#include "syntax/builder.hpp"

namespace plumbrule::syntax {

void Builder::specification_clause(Specification& out, const Branch& clause) {
  const std::string word = phrase(clause.children.at(0));
  const Parts rest = Parts(clause.children).subspan(1);
  if (word == "edition") {
    once(out.edition, clause);
  } else if (word == "uses") {
    for (const Branch& library : rest) {
      out.uses.push_back(name(library));
    }
  } else if (word == "agency") {
    once(out.agency, clause);
  } else if (word == "compare") {
    if (free_slot(out.comparing.has_value(), clause)) {
      out.comparing = comparing(rest);
    }
  } else {
    provenance(out.provenance, clause);
  }
}

void Builder::specification(const Branch& item) {
  Specification out;
  out.name = name(item.children.at(1));
  out.title = text(item.children.at(2));
  for (const Branch& clause : Parts(item.children).subspan(3)) {
    if (clause.kind == Kind::broken) {
      out.broken = true;
    } else {
      specification_clause(out, clause);
    }
  }
  out_.items.emplace_back(std::move(out));
}

void Builder::section(const Branch& item) {
  out_.items.emplace_back(Section{name(item.children.at(1)), text(item.children.at(2))});
}

Test Builder::test(const Branch& branch) const {
  Test out;
  out.span = branch.span;
  out.category = name(branch.children.at(0));
  for (const Branch& part : Parts(branch.children).subspan(1)) {
    if (part.kind == Kind::choice) {
      out.negated = phrase(part).starts_with("not");
    } else if (part.kind == Kind::words) {
      out.words = words(part);
    } else {
      out.words.push_back(name(part));
    }
  }
  return out;
}

void Builder::requirement_clause(Requirement& out, const Branch& clause) {
  const std::string word = clause.children.at(0).kind == Kind::assertion ? "shall" : phrase(clause.children.at(0));
  const Parts rest = Parts(clause.children).subspan(1);
  if (word == "where") {
    for (const Branch& part : rest) {
      out.where.push_back(test(part));
    }
  } else if (word == "optional") {
    out.optional = true;
  } else if (word == "severity") {
    once(out.severity, clause);
  } else if (word == "compare") {
    if (free_slot(out.comparing.has_value(), clause)) {
      out.comparing = comparing(rest);
    }
  } else if (word == "cite") {
    once(out.cite, clause);
  } else if (word == "because") {
    once(out.because, clause);
  } else if (word == "mend") {
    once(out.mend, clause);
  } else if (word == "either" || word == "shall") {
    if (!out.alternatives.empty()) {
      diagnostics_.error(diagnose::Code::clause_duplicate, clause.span,
                         "found a second demand in requirement `" + out.number.value + "`",
                         "give each demand a requirement of its own, or join alternatives by `either ... or ...`");
      return;
    }
    for (const Branch& part : word == "shall" ? Parts(clause.children) : rest) {
      out.alternatives.push_back(assertion(part));
    }
  } else {
    provenance(out.provenance, clause);
  }
}

void Builder::requirement(const Branch& item) {
  Requirement out;
  out.number = name(item.children.at(1));
  out.title = text(item.children.at(2));
  for (const Branch& clause : Parts(item.children).subspan(3)) {
    if (clause.kind == Kind::broken) {
      out.broken = true;
    } else {
      requirement_clause(out, clause);
    }
  }
  out_.items.emplace_back(std::move(out));
}

Given Builder::given(const Branch& clause) {
  Given out;
  out.span = clause.span;
  out.name = name(clause.children.at(1));
  for (const Branch& part : Parts(clause.children).subspan(2)) {
    if (part.kind == Kind::conditions) {
      out.conditions = conditions(part);
    } else if (part.kind == Kind::name) {
      out.word = name(part);
    } else if (part.kind == Kind::given_readings) {
      for (const Branch& value : part.children) {
        out.readings.push_back({name(value.children.at(0)), amount_or_word(value.children.at(1))});
      }
    } else {
      const bool bounded = part.children.at(0).kind == Kind::choice;
      const std::string bound = bounded ? phrase(part.children[0]) : "";
      const GivenBound kind = bound == "at least"  ? GivenBound::at_least
                              : bound == "at most" ? GivenBound::at_most
                              : bound == "above"   ? GivenBound::above
                              : bound == "below"   ? GivenBound::below
                                                   : GivenBound::exact;
      out.amounts.push_back({kind, quantity(part.children.back())});
    }
  }
  return out;
}

Expect Builder::expect(const Branch& clause) {
  Expect out;
  out.span = clause.span;
  const Branch& part = clause.children.at(1);
  if (part.kind == Kind::quantity) {
    out.value = quantity(part);
    return out;
  }
  const std::string word = phrase(part);
  out.verdict = word == "complies"    ? ExpectedVerdict::complies
                : word == "fails"     ? ExpectedVerdict::fails
                : word == "not shown" ? ExpectedVerdict::not_shown
                : word == "refused"   ? ExpectedVerdict::refused
                                      : ExpectedVerdict::does_not_apply;
  return out;
}

void Builder::example(const Branch& item) {
  Example out;
  out.span = item.span;
  out.title = text(item.children.at(1));
  out.target = name(item.children.at(2));
  for (const Branch& clause : Parts(item.children).subspan(3)) {
    if (clause.kind == Kind::broken) {
      out.broken = true;
    } else if (const std::string word = phrase(clause.children.at(0)); word == "given") {
      out.given.push_back(given(clause));
    } else if (word == "expect") {
      out.expect.push_back(expect(clause));
    }
  }
  out_.items.emplace_back(std::move(out));
}

void Builder::item(const Branch& branch) {
  const std::string_view word = written(branch.children.at(0));
  using Build = void (Builder::*)(const Branch&);
  static constexpr std::pair<std::string_view, Build> builds[] = {
      {"vocabulary", &Builder::vocabulary}, {"category", &Builder::category},
      {"condition", &Builder::condition},   {"basis", &Builder::basis},
      {"measure", &Builder::measure},       {"table", &Builder::table},
      {"grading", &Builder::grading},       {"specification", &Builder::specification},
      {"section", &Builder::section},       {"requirement", &Builder::requirement},
      {"example", &Builder::example},
  };
  for (const auto& [name, build] : builds) {
    if (name == word) {
      (this->*build)(branch);
    }
  }
}

RuleFile parse(const source::SourceMap& sources, source::FileId file, diagnose::Diagnostics& diagnostics) {
  RuleFile out;
  out.file = file;
  Builder builder(sources, out, diagnostics);
  for (const Branch& branch : parse_branches(sources, file, diagnostics)) {
    if (branch.kind == Kind::item) {
      builder.item(branch);
    } else if (branch.kind == Kind::integer && sources.text(branch.span) != language_version) {
      diagnostics.error(diagnose::Code::syntax_version, branch.span,
                        "found language version `" + std::string(sources.text(branch.span)) + "`, expected `1`",
                        "this program reads version 1 of the rule language");
      return out;
    }
  }
  return out;
}

}  // namespace plumbrule::syntax
