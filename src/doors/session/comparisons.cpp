// Questions about rules alone, and their answers.

#include <algorithm>

#include "apply/contrast/envelope_report.hpp"
#include "apply/contrast/filed.hpp"
#include "doors/session/bodies.hpp"
#include "show/report/contrast/contrast.hpp"
#include "show/report/envelope/envelope.hpp"

namespace plumbrule {
namespace {

// What differs, with the rules that it points into.
class ContrastBody final : public Report::Body {
 public:
  ContrastBody(const Rules& before, const Rules& after, const source::SourceMap& sources)
      : Body(Status::incomplete, {}),
        before_(before),
        after_(after),
        differences_(contrast::contrast(set_of(before).rules, set_of(after).rules)),
        report_{set_of(before).rules, set_of(after).rules, differences_, false, {}, origin(before, after, sources)} {
    status = status_of(contrast::upshot(report_));
  }

  [[nodiscard]] std::optional<std::string> render(Form form, const Layout& layout) const override {
    switch (form) {
      case Form::text:
        return report::contrast_text(report_, layout.width);
      case Form::markdown:
        return report::contrast_markdown(report_);
      case Form::html:
        return report::contrast_html(report_);
      case Form::json:
        return report::contrast_json(report_);
      default:
        return std::nullopt;
    }
  }

 private:
  Rules before_, after_;  // so that they live as long
  contrast::Contrast differences_;
  contrast::ContrastReport report_;

  static const library::RuleSet& set_of(const Rules& rules) { return rules.body().rules->sets.front(); }
  static library::Origin origin(const Rules& before, const Rules& after, const source::SourceMap& sources) {
    library::Origin out = library::origin_of(sources, {&set_of(before), 1});
    const library::Origin more = library::origin_of(sources, {&set_of(after), 1});
    for (const library::UsedFile& file : more.files) {
      const auto same = [&](const library::UsedFile& other) {
        return other.path == file.path && other.digest == file.digest;
      };
      if (std::none_of(out.files.begin(), out.files.end(), same)) {
        out.files.push_back(file);
      }
    }
    return out;
  }
};

std::vector<const check::Rules*> rules_of(const library::RulesInForce& rules) {
  std::vector<const check::Rules*> out;
  for (const library::RuleSet& set : rules.sets) {
    out.push_back(&set.rules);
  }
  return out;
}

class EnvelopeBody final : public Report::Body {
 public:
  EnvelopeBody(const Rules& rules, contrast::Classes classes)
      : Body(Status::incomplete, {}),
        rules_(rules),
        specifications_(rules_of(*rules.body().rules)),
        classes_(std::move(classes)),
        envelope_(contrast::envelope(specifications_, classes_)),
        report_{specifications_, envelope_, classes_, library::origin_of(rules.body().sources, *rules.body().rules)} {
    status = status_of(contrast::upshot(report_));
  }

  [[nodiscard]] std::optional<std::string> render(Form form, const Layout& layout) const override {
    switch (form) {
      case Form::text:
        return report::envelope_text(report_, layout.width);
      case Form::markdown:
        return report::envelope_markdown(report_);
      case Form::json:
        return report::envelope_json(report_);
      case Form::rules: {
        diagnose::Diagnostics faults;
        source::SourceMap own;
        return report::envelope_rules(
            report_, contrast::vocabularies_of(rules_.body().sources, rules_.body().rules->sets), own, faults);
      }
      default:
        return std::nullopt;
    }
  }

 private:
  Rules rules_;  // so that they live as long
  std::vector<const check::Rules*> specifications_;
  contrast::Classes classes_;
  contrast::Envelope envelope_;
  contrast::EnvelopeReport report_;
};

}  // namespace

Report Rules::contrast(const Rules& after) const {
  for (const Rules* rules : {this, &after}) {
    if (!rules->usable()) {
      return failed(Status::rules_broken, rules->diagnostics());
    }
  }
  if (body_->session != after.body_->session) {
    return unusable("found rules of two sessions", "load both in one");
  }
  const source::SourceMap& first = body_->sources;
  const source::SourceMap& second = after.body_->sources;
  return Report(std::make_shared<const ContrastBody>(*this, after, first.size() < second.size() ? second : first));
}

Report Rules::envelope(const std::vector<std::string>& classes) const {
  if (!usable()) {
    return failed(Status::rules_broken, diagnostics());
  }
  const auto& sets = body_->rules->sets;
  if (const std::string unlike = contrast::unlike_names(body_->sources, sets); !unlike.empty()) {
    return unusable(unlike);
  }
  contrast::Chosen chosen = contrast::choose_classes(sets, classes);
  if (!chosen.misfit.empty()) {
    return unusable(chosen.misfit);
  }
  return Report(std::make_shared<const EnvelopeBody>(*this, std::move(chosen.classes)));
}

}  // namespace plumbrule
