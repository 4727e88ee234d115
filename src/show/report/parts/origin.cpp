#include "show/report/parts/origin.hpp"

#include <algorithm>

#include "base/diagnose/quote.hpp"
#include "show/report/parts/json_parts.hpp"
#include "show/report/parts/table.hpp"

namespace plumbrule::report {
namespace {

std::string heading(const Origin& origin) { return "Files of this report, made by plumbrule " + origin.version; }

std::string line(const UsedFile& one, std::size_t width) {
  return one.kind + std::string(width - one.kind.size() + 2, ' ') + "sha256:" + one.digest + "  " +
         diagnose::printable(one.path);
}

std::size_t widest(const Origin& origin) {
  std::size_t out = 0;
  for (const UsedFile& one : origin.files) {
    out = std::max(out, one.kind.size());
  }
  return out;
}

}  // namespace

std::string aside_heading(const Origin& origin) { return "Not in force on " + origin.on + ", and set aside"; }

std::string closing_text(const Origin& origin) {
  std::string out;
  if (!origin.aside.empty()) {
    out += "\n" + aside_heading(origin) + "\n";
    for (const SetAside& one : origin.aside) {
      out += "  " + diagnose::printable(aside_text(one)) + "\n";
    }
  }
  out += "\nCaution: " + std::string(caution) + "\n\n" + heading(origin) + "\n";
  for (const UsedFile& one : origin.files) {
    out += "  " + line(one, widest(origin)) + "\n";
  }
  return out;
}

std::string closing_markdown(const Origin& origin) {
  std::string out;
  if (!origin.aside.empty()) {
    out += "\n" + aside_heading(origin) + ":\n\n";
    for (const SetAside& one : origin.aside) {
      out += "- " + markdown_cell(aside_text(one)) + "\n";
    }
  }
  out += "\n" + std::string(caution) + "\n\n" + heading(origin) + ":\n\n";
  for (const UsedFile& one : origin.files) {
    out += "- " + markdown_cell(line(one, one.kind.size())) + "\n";
  }
  return out;
}

std::string closing_comments(const Origin& origin) {
  std::string out = "\n# " + heading(origin) + "\n";
  for (const UsedFile& one : origin.files) {
    out += "# " + line(one, widest(origin)) + "\n";
  }
  return out;
}

void close_json(Json& report, const Origin& origin) {
  Json files = Json::array();
  for (const UsedFile& one : origin.files) {
    files.push_back({{"path", one.path}, {"kind", one.kind}, {"sha256", one.digest}});
  }
  if (!origin.aside.empty()) {
    Json aside = Json::array();
    for (const SetAside& one : origin.aside) {
      aside.push_back({{"what", one.what}, {"why", one.why}, {"open", one.open}});
    }
    report["set_aside"] = aside;
  }
  report["program"] = "plumbrule " + origin.version;
  report["files"] = files;
  report["caution"] = std::string(caution);
}

}  // namespace plumbrule::report
