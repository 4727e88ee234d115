#pragma once
// The library: rules read once, submittals held against them, every answer as data. Nothing is printed, nothing is
// global, and no current folder matters unless the provider of files asks it.
//
//     plumbrule::Session session(plumbrule::disk(), {"/usr/share/plumbrule/specs"});
//     const plumbrule::Rules rules = session.rules({{"cls.plumb"}});
//     const plumbrule::Report report = rules.review({"trial.yaml", text});
//     std::cout << *report.render(plumbrule::Form::html);

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "plumbrule/diagnostic.hpp"
#include "plumbrule/files.hpp"
#include "plumbrule/report.hpp"

namespace plumbrule {

/// "0.1.0".
[[nodiscard]] PLUMBRULE_EXPORT std::string_view version();

/// Which rules: specifications, or folders of them; amendments; and the day of the review ("2026-03-20", or empty: all
/// amendments are in force).
struct RuleChoice {
  std::vector<std::string> against;
  std::vector<std::string> amendments{};
  std::string on{};
};

/// A submittal as text. What `name` ends in says its form: .json, .csv, else YAML; it stands in reports. `record`: of a
/// sheet of several, its number or its mix.
struct SubmittalText {
  std::string name, text;
  std::string record{};
};

struct WindowQuestion {
  std::string vary{};       // a design value; empty: each that results vary with
  std::string tolerance{};  // of production about the job mix: "0.5 %"
  bool curve = false;       // also a parabola of least squares
};

/// Rules in force, checked and compiled. Never changes, so that several threads may use it at once.
class PLUMBRULE_EXPORT Rules {
 public:
  /// Whether they can be used; if not, diagnostics() says why, and every answer is rules_broken.
  [[nodiscard]] bool usable() const;
  [[nodiscard]] const std::vector<Diagnostic>& diagnostics() const;
  /// What was asked for and is not in force on the day, in words.
  [[nodiscard]] const std::vector<std::string>& set_aside() const;

  /// Forms: text, brief, markdown, html, json, sarif, junit, and the matrix.
  [[nodiscard]] Report review(const SubmittalText& submittal) const;
  /// Forms: text, brief, html, json.
  [[nodiscard]] Report window(const SubmittalText& submittal, const WindowQuestion& question = {}) const;
  /// A resubmittal against the submittal before it. Forms: text, markdown, html, json.
  [[nodiscard]] Report follow_up(const SubmittalText& before, const SubmittalText& after) const;
  /// What is otherwise in `after`: the first specification of each, and both from one session. Forms: text, markdown,
  /// html, json.
  [[nodiscard]] Report contrast(const Rules& after) const;
  /// What satisfies all of them. `classes`: each "category=word". Forms: text, markdown, json, rules.
  [[nodiscard]] Report envelope(const std::vector<std::string>& classes = {}) const;

  class Body;
  explicit Rules(std::shared_ptr<const Body> body);
  [[nodiscard]] const Body& body() const { return *body_; }

 private:
  std::shared_ptr<const Body> body_;
};

/// Reads and keeps rule files. One thread at a time may be in each of its functions; they wait for each other.
class PLUMBRULE_EXPORT Session {
 public:
  /// `libraries`: folders in which vocabularies are found that do not stand beside the file that uses them.
  explicit Session(std::shared_ptr<const FileProvider> files, std::vector<std::string> libraries = {});
  ~Session();
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;
  Session(Session&&) = delete;
  Session& operator=(Session&&) = delete;

  [[nodiscard]] Rules rules(const RuleChoice& choice);
  /// Checks rule files, or all below folders, and runs their examples. Forms: text, json, sarif, junit.
  [[nodiscard]] Report proof(const std::vector<std::string>& paths);
  /// The file was changed, or is gone: it is read again when it is next asked for. Rules that were made stay as they
  /// are.
  void changed(const std::string& path);

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace plumbrule
