// Materials, certificates, and gradings that run the wrong way.

#include <algorithm>
#include <cctype>
#include <map>

#include "base/diagnose/quote.hpp"
#include "judge/audit/inspector.hpp"
#include "judge/explain/wording.hpp"

namespace plumbrule::audit {
namespace {

// Case, blanks, hyphens and underscores do not tell materials apart.
std::string plain(std::string_view text) {
  std::string out;
  for (const char byte : text) {
    if (byte != ' ' && byte != '-' && byte != '_') {
      out += static_cast<char>(std::tolower(static_cast<unsigned char>(byte)));
    }
  }
  return out;
}

bool is(std::string_view left, std::string_view right) { return plain(left) == plain(right); }

}  // namespace

void Inspector::materials(const Result& result) {
  if (evidence_.materials.empty()) {
    return;
  }
  for (const evidence::MaterialUsed& used : result.record.materials) {
    const evidence::Material* listed = nullptr;
    bool found = false;
    for (const evidence::Material& one : evidence_.materials) {
      if (is(one.material, used.material)) {
        listed = listed == nullptr ? &one : listed;
        found = found || std::any_of(one.names.begin(), one.names.end(),
                                     [&](const std::string& name) { return is(name, used.name.text); });
      }
    }
    if (found) {
      continue;
    }
    Finding& one = add(diagnose::Code::audit_material, used.name.span,
                       diagnose::quoted(used.material) + " of the trial of " + name(result) + " is " +
                           diagnose::quoted(used.name.text) + ", which is not what was submitted",
                       listed == nullptr ? "a material of the submittal's list"
                                         : "one of the names under which the material is listed",
                       "the trial may have been made of other materials than the mix");
    if (listed != nullptr) {
      one.related.push_back({listed->span, "the material that was submitted"});
    }
  }
}

void Inspector::certificates() {
  if (!rules_.specification || !rules_.specification->certificates) {
    return;
  }
  for (const evidence::Material& one : evidence_.materials) {
    if (!one.certified) {
      add(diagnose::Code::audit_certificate, one.span, "found a material without `certificate`",
          "a certificate of each material, as the specification asks");
    }
  }
  for (const Result& result : evidence_.results) {
    const evidence::Record& record = result.record;
    if (record.laboratory.given() && !is(record.laboratory.text, evidence_.identity.laboratory) &&
        !record.accreditation.given()) {
      add(diagnose::Code::audit_certificate, record.laboratory.span,
          "found a result of another laboratory, " + diagnose::quoted(record.laboratory.text) +
              ", without `accreditation`",
          "the accreditation of a laboratory that is not the submittal's");
    }
  }
}

// Percent passing of one sample: a finer sieve lets no more through. Which measure that is, a grading says.
void Inspector::gradings() {
  std::map<std::pair<check::MeasureId, std::uint32_t>, std::vector<std::pair<Decimal, const Result*>>> samples;
  for (const check::Requirement& requirement : rules_.requirements) {
    for (const check::Case& one : requirement.cases) {
      for (const check::Alternative& alternative : one.alternatives) {
        if (!alternative.grading.empty() && !alternative.assertions.empty()) {
          const check::MeasureId measure = alternative.assertions.front().measure;
          samples[{measure, check::none}];
        }
      }
    }
  }
  for (const Result& result : evidence_.results) {
    const bool graded = samples.contains({result.measure, check::none});
    const bool row = result.series != check::none || result.declared;
    if (graded && row && result.conditions.size() == 1 && exact(result.conditions.front().value)) {
      const std::uint32_t sample = result.declared ? check::none : result.series;
      samples[{result.measure, sample}].emplace_back(result.conditions.front().value.amount.value, &result);
    }
  }
  for (auto& [key, rows] : samples) {
    std::stable_sort(rows.begin(), rows.end(),
                     [](const auto& left, const auto& right) { return left.first < right.first; });
    std::optional<Decimal> finer;
    const Result* finest = nullptr;
    for (const auto& [sieve, row] : rows) {
      const auto value = row->specimens.empty() ? evaluate::reported_value(plan_, evidence_, *row)
                                                : evaluate::specimen_value(plan_, evidence_, *row, 0);
      if (!value.good() || value.amount.bound != quantity::Bound::exact) {
        continue;
      }
      const Decimal passing = in_unit(value.amount, measure(*row).type.unit);
      if (finer && passing < *finer) {
        add(diagnose::Code::audit_basis, row->span,
            "less passes this sieve than a finer one: " + shown(*row, passing) + " against " + shown(*row, *finer),
            "values that do not fall from the finer to the coarser sieve",
            "two sieves may have been exchanged, or parts retained reported for parts passing")
            .related.push_back({finest->span, "the finer sieve"});
        break;
      }
      finer = passing;
      finest = row;
    }
  }
}

}  // namespace plumbrule::audit
