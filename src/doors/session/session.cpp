#include "plumbrule/session.hpp"

#include <algorithm>
#include <mutex>

#include "apply/proof/proof.hpp"
#include "base/diagnose/render.hpp"
#include "base/source/version.hpp"
#include "doors/session/bodies.hpp"
#include "judge/evidence/written.hpp"
#include "show/report/proof/proof.hpp"

namespace plumbrule {
namespace {

source::Found found_of(FileProvider::Kind kind) {
  switch (kind) {
    case FileProvider::Kind::file:
      return source::Found::file;
    case FileProvider::Kind::folder:
      return source::Found::folder;
    case FileProvider::Kind::other:
      return source::Found::other;
    case FileProvider::Kind::nothing:
      break;
  }
  return source::Found::nothing;
}

class ProofBody final : public Report::Body {
 public:
  ProofBody(Status comes_to, std::vector<proof::Proved> all, const diagnose::Diagnostics& found,
            const source::SourceMap& sources)
      : Body(comes_to, published(found, sources)), all_(std::move(all)), found_(found), sources_(sources) {}

  [[nodiscard]] std::optional<std::string> render(Form form, const Layout& /*layout*/) const override {
    switch (form) {
      case Form::text:
        return report::proof_text(all_, true);
      case Form::json:
        return report::proof_json(all_, found_, sources_);
      case Form::sarif:
        return diagnose::render_sarif(found_, sources_, std::string(source::version()));
      case Form::junit:
        return report::proof_junit(all_, sources_);
      default:
        return std::nullopt;
    }
  }

 private:
  std::vector<proof::Proved> all_;
  diagnose::Diagnostics found_;
  source::SourceMap sources_;
};

}  // namespace

source::FileText Provided::read(const std::string& path) const {
  source::FileText out;
  out.text = files_->read(path, out.reason);
  if (out.text && out.text->size() > source::largest_file) {
    return {std::nullopt, "it is larger than 256 MiB"};
  }
  if (!out.text && out.reason.empty()) {
    out.reason = "no such file";
  }
  return out;
}

source::Found Provided::find(const std::string& path) const { return found_of(files_->kind(path)); }

source::Below Provided::below(const std::string& folder) const {
  source::Below out;
  out.reached = folder;
  out.paths = files_->below(folder, out.failure);
  std::sort(out.paths.begin(), out.paths.end());
  return out;
}

Rules::Rules(std::shared_ptr<const Body> body) : body_(std::move(body)) {}
bool Rules::usable() const { return body_->rules.has_value(); }
const std::vector<Diagnostic>& Rules::diagnostics() const { return body_->diagnostics; }
const std::vector<std::string>& Rules::set_aside() const { return body_->set_aside; }

struct Session::State {
  State(std::shared_ptr<const FileProvider> provider, std::vector<std::string> folders)
      : files(std::move(provider)), libraries(std::move(folders)) {}
  std::mutex mutex;
  Provided files;
  std::vector<std::string> libraries;
  source::SourceMap sources;
  check::Shelf shelf{sources, files};
  std::shared_ptr<const int> token = std::make_shared<const int>(0);
};

Session::Session(std::shared_ptr<const FileProvider> files, std::vector<std::string> libraries)
    : state_(std::make_unique<State>(std::move(files), std::move(libraries))) {}
Session::~Session() = default;

Rules Session::rules(const RuleChoice& choice) {
  const std::lock_guard lock(state_->mutex);
  auto out = std::make_shared<Rules::Body>();
  out->session = state_->token;
  diagnose::Diagnostics found;
  if (choice.against.empty()) {
    found.error(diagnose::Code::clause_missing, {}, "found no specification to hold anything against",
                "name at least one rule file, or a folder");
  } else if (!choice.on.empty() && !evidence::read_date(choice.on)) {
    found.error(diagnose::Code::submittal_value, {}, "found `" + choice.on + "`, no date",
                "write year, month and day: 2026-03-20");
  } else {
    out->rules =
        library::choose(state_->shelf, {choice.against, choice.amendments, state_->libraries, choice.on}, found);
  }
  out->sources = state_->sources;
  out->diagnostics = published(found, out->sources);
  for (const library::SetAside& aside : out->rules ? out->rules->aside : std::vector<library::SetAside>()) {
    out->set_aside.push_back(library::aside_text(aside));
  }
  return Rules(std::move(out));
}

Report Session::proof(const std::vector<std::string>& paths) {
  const std::lock_guard lock(state_->mutex);
  diagnose::Diagnostics found;
  const auto files = library::rule_files(state_->shelf, paths, found);
  if (files.empty() && !found.has_errors()) {
    return unusable("found no rule file to prove", "name at least one, or a folder");
  }
  if (found.has_errors()) {
    return failed(Status::unusable, published(found, state_->sources));
  }
  std::vector<proof::Proved> all;
  for (const std::string& path : files) {
    const proof::Proved& proved = all.emplace_back(proof::prove(state_->shelf, path, state_->libraries));
    found.append(proved.faults);
    for (const proof::Proved::Case& example : proved.cases) {
      found.append(example.wrong);
    }
    found.append(proved.remarks);
  }
  const bool nothing = !found.has_errors() && proof::nothing_to_prove(all, found);
  const Status status = nothing ? Status::unusable : found.has_errors() ? Status::rules_broken : Status::complies;
  return Report(std::make_shared<const ProofBody>(status, std::move(all), found, state_->sources));
}

void Session::changed(const std::string& path) {
  const std::lock_guard lock(state_->mutex);
  state_->shelf.forget(path);
}

}  // namespace plumbrule
