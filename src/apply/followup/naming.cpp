#include "apply/followup/naming.hpp"

#include <algorithm>
#include <cctype>

#include "judge/explain/wording.hpp"

namespace plumbrule::followup {

using explain::Context;

std::string plain(const std::string& text) {
  std::string out;
  for (const char byte : text) {
    const auto one = static_cast<unsigned char>(byte);
    if (std::isspace(one) == 0 && byte != '-' && byte != '_') {
      out += static_cast<char>(std::tolower(one));
    }
  }
  return out;
}

std::string written(const Context& context, const Span& span) {
  std::string out = span.known() ? explain::one_line(context.sources.text(span)) : std::string();
  const bool quoted = out.size() > 1 && (out.front() == '"' || out.front() == '\'') && out.back() == out.front();
  return quoted ? out.substr(1, out.size() - 2) : out;
}

std::string placing(const Context& context, const Result& result) {
  std::string out;
  const auto add = [&](const std::string& part) { out += (out.empty() ? "" : ", ") + part; };
  for (const evidence::ConditionStated& one : result.conditions) {
    add(explain::spaced(context.rules.conditions[one.condition].name) + " " + written(context, one.value.span));
  }
  for (const evidence::DesignValue& one : result.at) {
    const bool known = one.measure != check::none;
    add("at " + (known ? explain::spaced(context.rules.measures[one.measure].name) + " " : std::string()) +
        written(context, one.value.span));
  }
  if (result.record.lot.given()) {
    add("lot " + result.record.lot.text);
  }
  return out;
}

std::string subject(const Context& context, const Result& result) {
  const std::string where = placing(context, result);
  const std::string& title = context.rules.measures[result.measure].title;
  return (result.declared ? "job mix: " : "") + title + (where.empty() ? "" : ", " + where);
}

std::string shared_subject(const Context& context, const Result& result) {
  if (result.series == check::none) {
    return subject(context, result);
  }
  Result all = result;
  const auto of_row = [&](const evidence::ConditionStated& one) {
    return one.value.span.begin >= result.span.begin && one.value.span.end <= result.span.end;
  };
  all.conditions.erase(std::remove_if(all.conditions.begin(), all.conditions.end(), of_row), all.conditions.end());
  return subject(context, all) + ", all rows";
}

}  // namespace plumbrule::followup
