#include "language/syntax/builder.hpp"

namespace plumbrule::syntax {

void Builder::term(const Branch& item) {
  Term out;
  out.span = item.span;
  out.name = name(item.children.at(1));
  for (const Branch& part : Parts(item.children).subspan(2)) {
    if (part.kind == Kind::texts) {
      out.title = text(part);
    } else if (part.kind == Kind::limit) {
      out.limit = limit(part);
    } else {
      out.conditions.push_back(condition_value(part));
    }
  }
  out_.items.emplace_back(std::move(out));
}

Change Builder::change(const Branch& clause) {
  Change out;
  out.span = clause.span;
  const std::string word = phrase(clause.children.at(0));
  out.kind = word == "add"        ? Change::Kind::add
             : word == "withdraw" ? Change::Kind::withdraw
             : word == "retitle"  ? Change::Kind::retitle
                                  : Change::Kind::limit;
  for (const Branch& part : Parts(clause.children).subspan(1)) {
    if (part.kind == Kind::clause) {
      out.number = name(part);
    } else if (part.kind == Kind::texts) {
      out.title = text(part);
    } else if (part.kind == Kind::limit) {
      out.limit = limit(part);
    } else if (part.kind == Kind::item) {
      out.requirement = requirement_tree(part);
      out.number = out.requirement->number;
      out.kind = word == "add" ? Change::Kind::add : Change::Kind::whole;
    } else if (part.kind == Kind::clause_group) {
      const bool because = phrase(part.children.at(0)) == "because";
      (because ? out.because : out.cite) = text(part.children.at(1));
    }
  }
  return out;
}

void Builder::amendment_clause(Amendment& out, const Branch& clause) {
  const std::string word = phrase(clause.children.at(0));
  if (word == "amends") {
    if (free_slot(out.specification.given(), clause)) {
      out.specification = name(clause.children.at(1));
      out.edition = name(clause.children.at(2));
    }
  } else if (word == "effective") {
    calendar(clause.children.at(1));
    once(out.effective, clause);
  } else if (!provenance(out.provenance, clause)) {
    out.changes.push_back(change(clause));
  }
}

void Builder::amendment(const Branch& item) {
  Amendment out;
  out.name = name(item.children.at(1));
  out.title = text(item.children.at(2));
  for (const Branch& clause : Parts(item.children).subspan(3)) {
    if (clause.kind == Kind::broken) {
      out.broken = true;
    } else {
      amendment_clause(out, clause);
    }
  }
  out_.items.emplace_back(std::move(out));
}

}  // namespace plumbrule::syntax
