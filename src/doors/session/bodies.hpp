#pragma once
// What stands behind the public classes. Internal to the doors.

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "base/diagnose/diagnostic.hpp"
#include "base/source/files.hpp"
#include "judge/assess/assessment.hpp"
#include "language/library/in_force.hpp"
#include "plumbrule/session.hpp"

namespace plumbrule {

/// The files of a program, as the library reads them.
class Provided final : public source::Files {
 public:
  explicit Provided(std::shared_ptr<const FileProvider> files) : files_(std::move(files)) {}
  [[nodiscard]] source::FileText read(const std::string& path) const override;
  [[nodiscard]] source::Found find(const std::string& path) const override;
  [[nodiscard]] source::Below below(const std::string& folder) const override;

 private:
  std::shared_ptr<const FileProvider> files_;
};

class Rules::Body {
 public:
  std::optional<library::RulesInForce> rules;
  source::SourceMap sources;  // all that the session had read by then
  std::vector<Diagnostic> diagnostics;
  std::vector<std::string> set_aside;
  std::shared_ptr<const int> session;  // whose sources they are
};

/// An answer. Without a way to render it, it is one of the two kinds of failure.
class Report::Body {
 public:
  Body(Status comes_to, std::vector<Diagnostic> found) : status(comes_to), diagnostics(std::move(found)) {}
  Body(const Body&) = delete;
  Body& operator=(const Body&) = delete;
  Body(Body&&) = delete;
  Body& operator=(Body&&) = delete;
  virtual ~Body() = default;
  [[nodiscard]] virtual std::optional<std::string> render(Form form, const Layout& layout) const;

  Status status;
  std::vector<Diagnostic> diagnostics;
  std::vector<SpecificationVerdict> specifications;
};

[[nodiscard]] std::vector<Diagnostic> published(const diagnose::Diagnostics& all, const source::SourceMap& sources);
[[nodiscard]] Status status_of(assess::Upshot upshot);
/// Broken rules, or what was handed in cannot be used.
[[nodiscard]] Report failed(Status status, std::vector<Diagnostic> diagnostics);
/// The same, with a reason that is about no place.
[[nodiscard]] Report unusable(const std::string& message, const std::string& help = {});

}  // namespace plumbrule
