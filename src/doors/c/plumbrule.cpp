// The library for C. Each function stands between two languages: what was thrown stays here.

#include "plumbrule/plumbrule.h"

#include <array>
#include <cstdlib>
#include <cstring>
#include <new>
#include <nlohmann/json.hpp>
#include <utility>

#include "plumbrule/session.hpp"

struct plumbrule_session {
  std::shared_ptr<plumbrule::MemoryFiles> memory;  // none: the files of the disk
  plumbrule::Session session;
};

struct plumbrule_rules {
  plumbrule::Rules rules;
};

struct plumbrule_submittal {
  plumbrule::SubmittalText text;
};

struct plumbrule_report {
  plumbrule::Report report;
};

namespace {

using Json = nlohmann::json;

// What `make` gives, on the heap; nothing if it throws.
template <typename Make>
auto given(Make make) noexcept -> decltype(make()) {
  try {
    return make();
  } catch (...) {
    return nullptr;
  }
}

char* copied(const std::string& text) {
  auto* out = static_cast<char*>(std::malloc(text.size() + 1));
  if (out != nullptr) {
    std::memcpy(out, text.c_str(), text.size() + 1);
  }
  return out;
}

std::vector<std::string> list_of(const char* json) {
  return json == nullptr ? std::vector<std::string>() : Json::parse(json).get<std::vector<std::string>>();
}

// A misspelt part must not be passed over: another day, or another amendment, is another verdict.
void only(const Json& object, std::initializer_list<const char*> known) {
  if (!object.is_object()) {
    throw std::invalid_argument("no object");
  }
  for (const auto& part : object.items()) {
    bool found = false;
    for (const char* name : known) {
      found = found || part.key() == name;
    }
    if (!found) {
      throw std::invalid_argument(part.key());
    }
  }
}

plumbrule_session* opened(std::shared_ptr<plumbrule::MemoryFiles> memory, const char* libraries) {
  return given([&]() -> plumbrule_session* {
    const std::shared_ptr<const plumbrule::FileProvider> files = memory ? memory : plumbrule::disk();
    return new plumbrule_session{memory, plumbrule::Session(files, list_of(libraries))};
  });
}

template <typename Ask>
plumbrule_report* answered(Ask ask) {
  return given([&]() -> plumbrule_report* { return new plumbrule_report{ask()}; });
}

struct FormName {
  const char* name;
  plumbrule::Form form;
};
constexpr std::array<FormName, 12> forms{{{"text", plumbrule::Form::text},
                                          {"brief", plumbrule::Form::brief},
                                          {"markdown", plumbrule::Form::markdown},
                                          {"html", plumbrule::Form::html},
                                          {"json", plumbrule::Form::json},
                                          {"sarif", plumbrule::Form::sarif},
                                          {"junit", plumbrule::Form::junit},
                                          {"matrix text", plumbrule::Form::matrix_text},
                                          {"matrix markdown", plumbrule::Form::matrix_markdown},
                                          {"matrix html", plumbrule::Form::matrix_html},
                                          {"matrix json", plumbrule::Form::matrix_json},
                                          {"rules", plumbrule::Form::rules}}};

static_assert(static_cast<int>(plumbrule::Status::complies) == PLUMBRULE_COMPLIES &&
              static_cast<int>(plumbrule::Status::fails) == PLUMBRULE_FAILS &&
              static_cast<int>(plumbrule::Status::incomplete) == PLUMBRULE_INCOMPLETE &&
              static_cast<int>(plumbrule::Status::rules_broken) == PLUMBRULE_RULES_BROKEN &&
              static_cast<int>(plumbrule::Status::unusable) == PLUMBRULE_UNUSABLE);

}  // namespace

const char* plumbrule_version(void) { return plumbrule::version().data(); }

plumbrule_session* plumbrule_session_on_disk(const char* libraries) { return opened(nullptr, libraries); }

plumbrule_session* plumbrule_session_in_memory(const char* libraries) {
  return given([&]() -> plumbrule_session* { return opened(std::make_shared<plumbrule::MemoryFiles>(), libraries); });
}

void plumbrule_session_close(plumbrule_session* session) { delete session; }

int plumbrule_session_put(plumbrule_session* session, const char* path, const char* text, size_t size) {
  if (session == nullptr || path == nullptr || text == nullptr || !session->memory) {
    return 0;
  }
  try {
    session->memory->put(path, std::string(text, size));
    session->session.changed(path);
    return 1;
  } catch (...) {
    return 0;
  }
}

plumbrule_rules* plumbrule_rules_load(plumbrule_session* session, const char* choice) {
  return given([&]() -> plumbrule_rules* {
    if (session == nullptr || choice == nullptr) {
      return nullptr;
    }
    const Json from = Json::parse(choice);
    only(from, {"against", "amendments", "on"});
    plumbrule::RuleChoice wanted{from.at("against").get<std::vector<std::string>>()};
    wanted.amendments = from.value("amendments", std::vector<std::string>());
    wanted.on = from.value("on", std::string());
    return new plumbrule_rules{session->session.rules(wanted)};
  });
}

int plumbrule_rules_usable(const plumbrule_rules* rules) { return rules != nullptr && rules->rules.usable() ? 1 : 0; }

char* plumbrule_rules_diagnostics(const plumbrule_rules* rules) {
  return given(
      [&]() -> char* { return rules == nullptr ? nullptr : copied(plumbrule::json_of(rules->rules.diagnostics())); });
}

void plumbrule_rules_release(plumbrule_rules* rules) { delete rules; }

plumbrule_submittal* plumbrule_submittal_of(const char* name, const char* text, size_t size, const char* record) {
  return given([&]() -> plumbrule_submittal* {
    if (name == nullptr || text == nullptr) {
      return nullptr;
    }
    return new plumbrule_submittal{{name, std::string(text, size), record == nullptr ? "" : record}};
  });
}

void plumbrule_submittal_release(plumbrule_submittal* submittal) { delete submittal; }

plumbrule_report* plumbrule_review(const plumbrule_rules* rules, const plumbrule_submittal* submittal) {
  return rules == nullptr || submittal == nullptr ? nullptr
                                                  : answered([&] { return rules->rules.review(submittal->text); });
}

plumbrule_report* plumbrule_window(const plumbrule_rules* rules, const plumbrule_submittal* submittal,
                                   const char* question) {
  if (rules == nullptr || submittal == nullptr) {
    return nullptr;
  }
  return answered([&] {
    const Json from = question == nullptr ? Json::object() : Json::parse(question);
    only(from, {"vary", "tolerance", "curve"});
    return rules->rules.window(submittal->text, {from.value("vary", std::string()),
                                                 from.value("tolerance", std::string()), from.value("curve", false)});
  });
}

plumbrule_report* plumbrule_follow_up(const plumbrule_rules* rules, const plumbrule_submittal* before,
                                      const plumbrule_submittal* after) {
  return rules == nullptr || before == nullptr || after == nullptr
             ? nullptr
             : answered([&] { return rules->rules.follow_up(before->text, after->text); });
}

plumbrule_report* plumbrule_contrast(const plumbrule_rules* before, const plumbrule_rules* after) {
  return before == nullptr || after == nullptr ? nullptr
                                               : answered([&] { return before->rules.contrast(after->rules); });
}

plumbrule_report* plumbrule_envelope(const plumbrule_rules* rules, const char* classes) {
  return rules == nullptr ? nullptr : answered([&] { return rules->rules.envelope(list_of(classes)); });
}

plumbrule_report* plumbrule_proof(plumbrule_session* session, const char* paths) {
  return session == nullptr ? nullptr : answered([&] { return session->session.proof(list_of(paths)); });
}

enum plumbrule_status plumbrule_report_status(const plumbrule_report* report) {
  return report == nullptr ? PLUMBRULE_UNUSABLE
                           : static_cast<enum plumbrule_status>(static_cast<int>(report->report.status()));
}

char* plumbrule_report_diagnostics(const plumbrule_report* report) {
  return given([&]() -> char* {
    return report == nullptr ? nullptr : copied(plumbrule::json_of(report->report.diagnostics()));
  });
}

char* plumbrule_report_render(const plumbrule_report* report, const char* form) {
  return given([&]() -> char* {
    for (const FormName& known : forms) {
      if (report != nullptr && form != nullptr && std::strcmp(known.name, form) == 0) {
        const auto page = report->report.render(known.form);
        return page ? copied(*page) : nullptr;
      }
    }
    return nullptr;
  });
}

void plumbrule_report_release(plumbrule_report* report) { delete report; }

void plumbrule_text_release(char* text) { std::free(text); }
