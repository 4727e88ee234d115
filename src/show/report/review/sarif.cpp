#include "show/report/review/sarif.hpp"

#include <algorithm>

#include "base/diagnose/sarif_parts.hpp"

namespace plumbrule::report {
namespace {

using diagnose::SarifJson;
using evaluate::Outcome;
using explain::Explanation;
using explain::Verdict;

std::string with(const std::string& name, const std::string& value) {
  const bool stop = value.ends_with('.');  // of a text of the rules; the message goes on
  return value.empty() ? "" : "; " + name + ": " + value.substr(0, value.size() - (stop ? 1 : 0));
}

// The standard has the kind "open" for what cannot be decided, but with it no level that any tool would stop at.
std::string level(const Explanation& one) {
  const bool left_out = one.severity == check::Severity::advise || (one.verdict == Verdict::not_shown && one.optional);
  return left_out                                                                  ? "note"
         : one.severity == check::Severity::refer && one.verdict == Verdict::fails ? "warning"
                                                                                   : "error";
}

std::string message(const Explanation& one) {
  std::string amended;
  for (const std::string& amendment : one.amended_by) {
    amended += with("amended by", amendment);
  }
  return one.number + " " + one.title + ": " + std::string(explain::verdict_text(one.verdict)) + marks_text(one) +
         (one.why.empty() ? "" : ": " + one.why) + with("demand", one.sentence) +
         (one.verdict == Verdict::fails ? with("reason", one.because) + with("to mend", one.mend) : "") +
         with("submit", one.submit) + amended + with("cited", one.cite) + with("limits", limit_standing(one)) +
         with("note", one.note);
}

class SarifMaker {
 public:
  SarifMaker(const Report& report, const source::SourceMap& sources) : report_(report), sources_(sources) {}

  std::string run() {
    for (const SpecificationReport& one : report_.specifications) {
      specification(one);
    }
    problems(report_.problems, "error");
    problems(report_.warnings, "warning");
    for (const AuditFinding& one : report_.audit.findings) {
      audited(one);
    }
    for (const UsedFile& one : report_.origin.files) {
      run_.artifacts.push_back(diagnose::sarif_artifact(
          one.path, one.digest, one.kind == "submittal" ? "analysisTarget" : "userSpecifiedConfiguration"));
    }
    run_.version = report_.origin.version;
    for (const SetAside& one : report_.origin.aside) {
      run_.properties["setAside"].push_back(aside_text(one));
      if (one.open) {
        rule("rules.set-aside", SarifJson::object());
        result("rules.set-aside", "error", aside_heading(report_.origin) + ": " + aside_text(one), {});
      }
    }
    run_.properties["caution"] = std::string(caution);
    return diagnose::sarif_log(run_);
  }

 private:
  void rule(const std::string& id, const SarifJson& more) {
    const bool known =
        std::any_of(run_.rules.begin(), run_.rules.end(), [&](const auto& one) { return one["id"] == id; });
    if (!known) {
      SarifJson one = {{"id", id}};
      one.update(more);
      run_.rules.push_back(one);
    }
  }

  SarifJson& result(const std::string& id, const std::string& grade, const std::string& text,
                    const source::Span& where) {
    const SarifJson place =
        where.known()
            ? diagnose::sarif_location(sources_, {where, {}})
            : SarifJson{{"physicalLocation", {{"artifactLocation", diagnose::sarif_file(report_.submittal)}}}};
    run_.results.push_back(
        {{"ruleId", id}, {"level", grade}, {"message", {{"text", text}}}, {"locations", SarifJson::array({place})}});
    return run_.results.back();
  }

  void clause(const Explanation& one, const std::string& specification) {
    const std::string id = specification + "/" + one.number;
    rule(id, {{"shortDescription", {{"text", one.title}}}, {"fullDescription", {{"text", one.sentence}}}});
    SarifJson& added = result(id, level(one), message(one), one.where);
    if (one.rule.known()) {
      added["relatedLocations"] = SarifJson::array({diagnose::sarif_location(sources_, {one.rule, "the requirement"})});
    }
    added["properties"] = {{"verdict", std::string(explain::verdict_text(one.verdict))}};
  }

  void problems(const std::vector<Problem>& problems, const std::string& grade) {
    for (const Problem& one : problems) {
      rule(one.code, SarifJson::object());
      result(one.code, grade, one.message + with("to mend", one.help), one.span);
    }
  }

  void specification(const SpecificationReport& one) {
    bool stops = false;
    for (const Explanation& finding : one.findings) {
      if (finding.verdict == Verdict::fails || finding.verdict == Verdict::not_shown) {
        clause(finding, one.name);
        stops = stops || level(finding) != "note";
      }
    }
    const std::string outcome(explain::outcome_text(one.outcome));
    run_.properties["outcomes"].push_back(
        {{"specification", one.name}, {"edition", one.edition}, {"outcome", outcome}});
    // Where nothing complies, or the submittal has errors, no clause need fail.
    if (one.outcome != Outcome::no_exception_taken && !stops) {
      const std::string id = one.name + "/outcome";
      rule(id, {{"shortDescription", {{"text", "the outcome as a whole"}}}});
      result(id, "error", one.title + ": " + outcome, {});
    }
  }

  void audited(const AuditFinding& one) {
    rule(one.code, SarifJson::object());
    SarifJson& added =
        result(one.code, "warning", one.found + with("expected", one.expected) + with("look", one.look), one.span);
    SarifJson related = SarifJson::array();
    for (const Related& other : one.related) {
      if (other.span.known()) {
        related.push_back(diagnose::sarif_location(sources_, {other.span, other.text}));
      }
    }
    added["relatedLocations"] = related;
  }

  const Report& report_;
  const source::SourceMap& sources_;
  diagnose::SarifRun run_;
};

}  // namespace

std::string sarif(const Report& report, const source::SourceMap& sources) { return SarifMaker(report, sources).run(); }

}  // namespace plumbrule::report
