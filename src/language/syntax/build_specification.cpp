#include "language/syntax/builder.hpp"

namespace plumbrule::syntax {

void Builder::specification_clause(Specification& out, const Branch& clause) {
  const std::string word = phrase(clause.children.at(0));
  const Parts rest = Parts(clause.children).subspan(1);
  if (word == "edition") {
    calendar(clause.children.at(1));
    once(out.edition, clause);
  } else if (word == "uses") {
    for (const Branch& library : rest) {
      out.uses.push_back(name(library));
    }
  } else if (word == "agency") {
    once(out.agency, clause);
  } else if (word == "compare") {
    out.comparing.push_back(comparing(rest));
    out.comparing.back().span = clause.span;
  } else if (word == "round") {
    if (free_slot(out.staged.has_value(), clause)) {
      out.staged = comparing(rest);
    }
  } else if (word == "tested") {
    if (free_slot(out.validity.has_value(), clause)) {
      out.validity = validity(clause);
    }
  } else if (word == "effective") {
    calendar(clause.children.at(1));
    once(out.effective, clause);
  } else if (word == "accept") {
    out.accepted.push_back(accepted(clause));
  } else if (word == "outliers") {
    if (free_slot(out.outliers.has_value(), clause)) {
      out.outliers = quantity(rest.front());
    }
  } else if (word == "certificates") {
    out.certificates = free_slot(out.certificates, clause) || out.certificates;
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

Exception Builder::exception(const Branch& clause) {
  Exception out;
  out.span = clause.span;
  for (const Branch& part : Parts(clause.children).subspan(1)) {
    if (part.kind == Kind::test) {
      out.where.push_back(test(part));
    } else if (part.kind == Kind::limit) {
      out.limit = limit(part);
    } else if (part.kind == Kind::clause_group) {
      out.cite = text(part.children.at(1));
    }
  }
  return out;
}

// The clauses that say how the demand is judged; false: another clause.
bool Builder::shared_clause(Requirement& out, const Branch& clause) {
  const std::string word = phrase(clause.children.at(0));
  if (word == "where") {
    for (const Branch& part : Parts(clause.children).subspan(1)) {
      out.where.push_back(test(part));
    }
  } else if (word == "optional") {
    out.optional = free_slot(out.optional, clause);
    out.optional = true;
  } else if (word == "severity") {
    once(out.severity, clause);
  } else if (word == "compare") {
    if (free_slot(out.comparing.has_value(), clause)) {
      out.comparing = comparing(Parts(clause.children).subspan(1));
    }
  } else if (word == "tested") {
    if (free_slot(out.validity.has_value(), clause)) {
      out.validity = validity(clause);
    }
  } else if (word == "accept") {
    out.accepted.push_back(accepted(clause));
  } else if (word == "except") {
    out.exceptions.push_back(exception(clause));
  } else {
    return false;
  }
  return true;
}

void Builder::requirement_clause(Requirement& out, const Branch& clause) {
  const bool plain = clause.children.at(0).kind == Kind::assertion;
  const std::string word = plain ? "shall" : phrase(clause.children.at(0));
  if (!plain && shared_clause(out, clause)) {
    return;
  }
  if (word == "cite") {
    once(out.cite, clause);
  } else if (word == "because") {
    once(out.because, clause);
  } else if (word == "mend") {
    once(out.mend, clause);
  } else if (word == "either" || plain) {
    if (!out.alternatives.empty()) {
      diagnostics_.error(diagnose::Code::clause_duplicate, clause.span,
                         "found a second demand in requirement `" + out.number.value + "`",
                         "give each demand a requirement of its own, or join alternatives by `either ... or ...`");
      return;
    }
    for (const Branch& part : Parts(clause.children).subspan(plain ? 0 : 1)) {
      out.alternatives.push_back(assertion(part));
    }
  } else {
    provenance(out.provenance, clause);
  }
}

Requirement Builder::requirement_tree(const Branch& item) {
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
  return out;
}

void Builder::requirement(const Branch& item) { out_.items.emplace_back(requirement_tree(item)); }

Given Builder::given(const Branch& clause) {
  Given out;
  out.span = clause.span;
  std::size_t first = 1;
  if (clause.children.at(1).kind == Kind::choice) {
    out.job_mix = true;
    first = 2;
  }
  out.name = name(clause.children.at(first));
  for (const Branch& part : Parts(clause.children).subspan(first + 1)) {
    if (part.kind == Kind::clause) {
      out.lot = name(part);
    } else if (part.kind == Kind::conditions) {
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
      {"example", &Builder::example},       {"term", &Builder::term},
      {"amendment", &Builder::amendment},
  };
  for (const auto& [name, build] : builds) {
    if (name == word) {
      (this->*build)(branch);
    }
  }
}

// The first words of a stretch that could not be read; one of them may be a name that others use.
void Builder::broken(const Branch& branch) {
  constexpr std::size_t looked_at = 4;
  const std::string_view text = written(branch);
  std::string word;
  for (std::size_t at = 0; at <= text.size() && out_.broken.size() < 1000; ++at) {
    const bool part = at < text.size() && (std::isalnum(static_cast<unsigned char>(text[at])) != 0 || text[at] == '_' ||
                                           text[at] == '-' || text[at] == '.');
    if (part) {
      word.push_back(text[at]);
    } else if (!word.empty()) {
      out_.broken.push_back(word.substr(0, 64));
      word.clear();
      if (out_.broken.size() % looked_at == 0) {
        return;
      }
    }
  }
}

// A file of another version may say anything; only its version is reported.
static bool other_version(const source::SourceMap& sources, const std::vector<Branch>& branches,
                          diagnose::Diagnostics& diagnostics) {
  for (const Branch& branch : branches) {
    if (branch.kind == Kind::integer && sources.text(branch.span) != language_version) {
      diagnostics.error(diagnose::Code::syntax_version, branch.span,
                        "found language version `" + std::string(sources.text(branch.span)) + "`, expected `1`",
                        "this program reads version 1 of the rule language");
      return true;
    }
  }
  return false;
}

RuleFile parse(const source::SourceMap& sources, source::FileId file, diagnose::Diagnostics& diagnostics) {
  RuleFile out;
  out.file = file;
  diagnose::Diagnostics own;
  const std::vector<Branch> branches = parse_branches(sources, file, own);
  if (other_version(sources, branches, diagnostics)) {
    return out;
  }
  diagnostics.append(own);
  Builder builder(sources, out, diagnostics);
  for (const Branch& branch : branches) {
    if (branch.kind == Kind::item) {
      builder.item(branch);
    } else if (branch.kind == Kind::broken) {
      builder.broken(branch);
    }
  }
  return out;
}

}  // namespace plumbrule::syntax
