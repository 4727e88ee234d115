// Questions about a submittal, and their answers.

#include "apply/contrast/envelope_report.hpp"
#include "apply/contrast/filed.hpp"
#include "apply/followup/report.hpp"
#include "apply/review/review.hpp"
#include "apply/window/windows.hpp"
#include "doors/session/bodies.hpp"
#include "show/report/followup/followup.hpp"
#include "show/report/matrix/matrix.hpp"
#include "show/report/review/glance.hpp"
#include "show/report/review/junit.hpp"
#include "show/report/review/sarif.hpp"
#include "show/report/window/window.hpp"

namespace plumbrule {
namespace {

// A submittal beside the rules, in a map of texts of its own.
struct Opened {
  std::optional<evidence::SubmittalRecord> record;
  diagnose::Diagnostics problems;
};

Opened open(source::SourceMap& sources, const SubmittalText& submittal) {
  Opened out;
  if (submittal.text.size() > source::largest_file) {
    out.problems.error(diagnose::Code::file_unreadable, {}, "found a submittal of more than 256 MiB",
                       "hand over one submittal at a time");
    return out;
  }
  const source::FileId file = sources.add(submittal.name, submittal.text);
  out.record = evidence::read_record(sources, file, {submittal.record, "record"}, out.problems);
  if (out.problems.has_errors()) {
    out.record.reset();
  }
  return out;
}

// Why nothing can be asked of these rules; nothing if all is well.
std::optional<Report> refusal(const Rules& rules) {
  return rules.usable() ? std::nullopt : std::optional(failed(Status::rules_broken, rules.diagnostics()));
}

class ReviewBody final : public Report::Body {
 public:
  ReviewBody(review::Report report, std::vector<Diagnostic> found)
      : Body(status_of(review::upshot(report)), std::move(found)), report_(std::move(report)) {
    for (const review::SpecificationReport& from : report_.specifications) {
      SpecificationVerdict& to = specifications.emplace_back();
      to = {from.name, from.title, from.edition, std::string(explain::outcome_text(from.outcome)), {}};
      for (const explain::Explanation& clause : from.findings) {
        to.clauses.push_back({clause.number, clause.title, std::string(explain::verdict_text(clause.verdict)),
                              std::string(explain::reason_code(clause.reason)), clause.why, clause.sentence});
      }
    }
  }

  [[nodiscard]] std::optional<std::string> render(Form form, const Layout& layout) const override {
    if (!layout.clause.empty()) {
      return clause_alone(form, layout);
    }
    switch (form) {
      case Form::text:
        return report::text(report_, layout.colour);
      case Form::brief:
        return report::glance(report_, layout.width, layout.colour);
      case Form::markdown:
        return report::markdown(report_);
      case Form::html:
        return report::html(report_);
      case Form::json:
        return report::json(report_);
      case Form::sarif:
        return report::sarif(report_, report_.sources);
      case Form::junit:
        return report::junit(report_);
      default:
        return matrix(form, layout);
    }
  }

 private:
  review::Report report_;

  [[nodiscard]] std::optional<std::string> matrix(Form form, const Layout& layout) const {
    switch (form) {
      case Form::matrix_text:
        return report::matrix_text(report_, layout.width);
      case Form::matrix_markdown:
        return report::matrix_markdown(report_);
      case Form::matrix_html:
        return report::matrix_html(report_);
      case Form::matrix_json:
        return report::matrix_json(report_);
      default:
        return std::nullopt;
    }
  }

  [[nodiscard]] std::optional<std::string> clause_alone(Form form, const Layout& layout) const {
    std::string out;
    for (const review::SpecificationReport& specification : report_.specifications) {
      for (const explain::Explanation& finding : specification.findings) {
        if (finding.number == layout.clause) {
          out += specification.title + ", edition " + specification.edition + "\n" +
                 report::explanation_text(finding, layout.colour);
        }
      }
    }
    if (out.empty() || (form != Form::text && form != Form::json)) {
      return std::nullopt;
    }
    return form == Form::json ? report::json(report_, layout.clause) : out + report::closing_text(report_.origin);
  }
};

class WindowBody final : public Report::Body {
 public:
  WindowBody(window::Windows windows, std::vector<Diagnostic> found)
      : Body(status_of(window::upshot(windows)), std::move(found)), windows_(std::move(windows)) {}

  [[nodiscard]] std::optional<std::string> render(Form form, const Layout& layout) const override {
    if (!layout.clause.empty()) {
      return form == Form::text ? report::window_explained(windows_, layout.clause) : std::nullopt;
    }
    switch (form) {
      case Form::text:
        return report::window_text(windows_, layout.colour);
      case Form::brief:
        return report::glance(windows_, layout.width, layout.colour);
      case Form::html:
        return report::window_html(windows_);
      case Form::json:
        return report::window_json(windows_);
      default:
        return std::nullopt;
    }
  }

 private:
  window::Windows windows_;
};

class FollowUpBody final : public Report::Body {
 public:
  FollowUpBody(followup::FollowUpReport report, std::vector<Diagnostic> found)
      : Body(status_of(followup::upshot(report)), std::move(found)), report_(std::move(report)) {}

  [[nodiscard]] std::optional<std::string> render(Form form, const Layout& layout) const override {
    switch (form) {
      case Form::text:
        return report::follow_up_text(report_, layout.colour);
      case Form::markdown:
        return report::follow_up_markdown(report_);
      case Form::html:
        return report::follow_up_html(report_);
      case Form::json:
        return report::follow_up_json(report_);
      default:
        return std::nullopt;
    }
  }

 private:
  followup::FollowUpReport report_;
};

}  // namespace

std::optional<std::string> Report::Body::render(Form /*form*/, const Layout& /*layout*/) const { return std::nullopt; }

Report::Report(std::shared_ptr<const Body> body) : body_(std::move(body)) {}
Status Report::status() const { return body_->status; }
const std::vector<Diagnostic>& Report::diagnostics() const { return body_->diagnostics; }
const std::vector<SpecificationVerdict>& Report::specifications() const { return body_->specifications; }
std::optional<std::string> Report::render(Form form, const Layout& layout) const { return body_->render(form, layout); }

Status status_of(assess::Upshot upshot) {
  switch (upshot) {
    case assess::Upshot::complies:
      return Status::complies;
    case assess::Upshot::fails:
      return Status::fails;
    case assess::Upshot::incomplete:
      break;
  }
  return Status::incomplete;
}

Report failed(Status status, std::vector<Diagnostic> diagnostics) {
  return Report(std::make_shared<const Report::Body>(status, std::move(diagnostics)));
}

Report unusable(const std::string& message, const std::string& help) {
  Diagnostic out;
  out.code = diagnose::text(diagnose::Code::clause_missing);
  out.message = message;
  out.help = help;
  return failed(Status::unusable, {std::move(out)});
}

Report Rules::review(const SubmittalText& submittal) const {
  if (auto refused = refusal(*this)) {
    return *refused;
  }
  source::SourceMap sources = body_->sources;
  Opened opened = open(sources, submittal);
  if (!opened.record) {
    return failed(Status::unusable, published(opened.problems, sources));
  }
  review::Reviewed reviewed = review::review(sources, *body_->rules, *opened.record);
  opened.problems.append(reviewed.problems);
  std::vector<Diagnostic> found = published(opened.problems, sources);
  return reviewed.report ? Report(std::make_shared<const ReviewBody>(std::move(*reviewed.report), std::move(found)))
                         : failed(Status::unusable, std::move(found));
}

Report Rules::window(const SubmittalText& submittal, const WindowQuestion& question) const {
  if (auto refused = refusal(*this)) {
    return *refused;
  }
  source::SourceMap sources = body_->sources;
  Opened opened = open(sources, submittal);
  if (!opened.record) {
    return failed(Status::unusable, published(opened.problems, sources));
  }
  window::Sought sought =
      window::seek(sources, *body_->rules, *opened.record, {question.vary, question.tolerance, question.curve});
  if (!sought.misfit.empty()) {
    return unusable(sought.misfit);
  }
  opened.problems.append(sought.problems);
  std::vector<Diagnostic> found = published(opened.problems, sources);
  return sought.windows ? Report(std::make_shared<const WindowBody>(std::move(*sought.windows), std::move(found)))
                        : failed(Status::unusable, std::move(found));
}

Report Rules::follow_up(const SubmittalText& before, const SubmittalText& after) const {
  if (auto refused = refusal(*this)) {
    return *refused;
  }
  source::SourceMap sources = body_->sources;
  Opened earlier = open(sources, before);
  Opened later = open(sources, after);
  diagnose::Diagnostics problems = earlier.problems;
  problems.append(later.problems);
  if (!earlier.record || !later.record) {
    return failed(Status::unusable, published(problems, sources));
  }
  followup::Followed followed = followup::follow_up(sources, *body_->rules, *earlier.record, *later.record);
  problems.append(followed.problems_before);
  problems.append(followed.problems_after);
  std::vector<Diagnostic> found = published(problems, sources);
  return followed.report ? Report(std::make_shared<const FollowUpBody>(std::move(*followed.report), std::move(found)))
                         : failed(Status::unusable, std::move(found));
}

}  // namespace plumbrule
