#include "apply/sweep/verdict_line.hpp"

#include <array>

#include "judge/explain/explanation.hpp"

namespace plumbrule::sweep {
namespace {

constexpr std::string_view unreadable = "unreadable";

bool needs_escape(char byte) { return static_cast<unsigned char>(byte) < 0x20U || byte == '"' || byte == '\\'; }

}  // namespace

void append_json(std::string& out, std::string_view text) {
  constexpr std::string_view hex = "0123456789abcdef";
  out += '"';
  for (const char byte : text) {
    if (!needs_escape(byte)) {
      out += byte;
    } else if (byte == '"' || byte == '\\') {
      out += '\\';
      out += byte;
    } else {
      out += "\\u00";
      out += hex[static_cast<unsigned char>(byte) >> 4U];
      out += hex[static_cast<unsigned char>(byte) & 0xFU];
    }
  }
  out += '"';
}

void append_csv(std::string& out, std::string_view text) {
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
    out += text;
    return;
  }
  out += '"';
  for (const char byte : text) {
    out += byte == '"' ? "\"\"" : std::string(1, byte);
  }
  out += '"';
}

std::string verdict_heading(VerdictForm form) {
  return form == VerdictForm::csv ? "record,mix,specification,edition,outcome,fails,not_shown,errors\n" : "";
}

VerdictWriter::VerdictWriter(const Against& against, VerdictForm form) : form_(form) {
  if (form == VerdictForm::csv) {
    append_csv(specification_, against.name);
    specification_ += ',';
    append_csv(specification_, against.edition);
  } else {
    append_json(specification_, against.name);
    specification_ += R"(,"edition":)";
    append_json(specification_, against.edition);
  }
  for (const check::Requirement& requirement : against.rules->requirements) {
    std::string& number = numbers_.emplace_back();
    form == VerdictForm::csv ? void(number = requirement.number) : append_json(number, requirement.number);
  }
}

void VerdictWriter::append_clauses(std::string& out, const Judgement& judgement, Verdict verdict) const {
  const char separator = form_ == VerdictForm::csv ? ';' : ',';
  std::string all;
  bool first = true;
  for (std::size_t at = 0; at < judgement.verdicts.size(); ++at) {
    if (judgement.verdicts[at] == verdict) {
      if (!first) {
        all += separator;
      }
      all += numbers_[at];
      first = false;
    }
  }
  form_ == VerdictForm::csv ? append_csv(out, all) : void(out += all);
}

void VerdictWriter::append(std::string& out, std::string_view record, std::string_view mix, const Judgement& judgement,
                           std::size_t errors) const {
  const std::string_view outcome = explain::outcome_text(judgement.outcome);
  if (form_ == VerdictForm::csv) {
    append_csv(out, record);
    out += ',';
    append_csv(out, mix);
    out += ',';
    out += specification_;
    out += ',';
    out += outcome;
    out += ',';
    append_clauses(out, judgement, Verdict::fails);
    out += ',';
    append_clauses(out, judgement, Verdict::not_shown);
    out += ',';
    out += std::to_string(errors);
    out += '\n';
    return;
  }
  out += R"({"record":)";
  append_json(out, record);
  out += R"(,"mix":)";
  append_json(out, mix);
  out += R"(,"specification":)";
  out += specification_;
  out += R"(,"outcome":")";
  out += outcome;
  out += R"(","fails":[)";
  append_clauses(out, judgement, Verdict::fails);
  out += R"(],"not_shown":[)";
  append_clauses(out, judgement, Verdict::not_shown);
  out += R"(],"errors":)";
  out += std::to_string(errors);
  out += "}\n";
}

void VerdictWriter::append_unreadable(std::string& out, std::string_view record) const {
  if (form_ == VerdictForm::csv) {
    append_csv(out, record);
    out += ",,";
    out += specification_;
    out += ',';
    out += unreadable;
    out += ",,,\n";
    return;
  }
  out += R"({"record":)";
  append_json(out, record);
  out += R"(,"specification":)";
  out += specification_;
  out += R"(,"outcome":")";
  out += unreadable;
  out += "\"}\n";
}

}  // namespace plumbrule::sweep
