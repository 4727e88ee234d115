/* The library for C, and for every language that can call C. Texts are UTF-8; what is asked and answered is JSON. No
 * exception leaves these functions. A pointer that a function gives is released by the function named beside it; NULL
 * may be released. A function that can give nothing gives NULL, as it does when memory runs out.
 *
 * Threads: rules, submittals and reports never change and may be used by several threads at once; of a session's
 * functions one waits for the other. */
#ifndef PLUMBRULE_H
#define PLUMBRULE_H

#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

#define PLUMBRULE_API __attribute__((visibility("default")))

typedef struct plumbrule_session plumbrule_session;
typedef struct plumbrule_rules plumbrule_rules;
typedef struct plumbrule_submittal plumbrule_submittal;
typedef struct plumbrule_report plumbrule_report;

/* What an answer comes to; the numbers are the exit statuses of the command. */
enum plumbrule_status {
  PLUMBRULE_COMPLIES = 0,
  PLUMBRULE_FAILS = 1,
  PLUMBRULE_INCOMPLETE = 2,
  PLUMBRULE_RULES_BROKEN = 3,
  PLUMBRULE_UNUSABLE = 4
};

/* "0.1.0"; never released. */
PLUMBRULE_API const char* plumbrule_version(void);

/* Files of the disk. `libraries`: a JSON list of folders with vocabularies, or NULL. plumbrule_session_close. */
PLUMBRULE_API plumbrule_session* plumbrule_session_on_disk(const char* libraries);
/* Files that plumbrule_session_put hands over, and no others. */
PLUMBRULE_API plumbrule_session* plumbrule_session_in_memory(const char* libraries);
PLUMBRULE_API void plumbrule_session_close(plumbrule_session* session);
/* Hands a file over, in place of one of the same path. 1; 0 if the session has the files of the disk. */
PLUMBRULE_API int plumbrule_session_put(plumbrule_session* session, const char* path, const char* text, size_t size);

/* `choice`: {"against": ["cls.plumb"], "amendments": [], "on": "2026-03-20"}; all but "against" may be left out. Rules
 * that are broken are given, too: plumbrule_rules_diagnostics says why. NULL if `choice` is not of this form.
 * plumbrule_rules_release; the session may be closed before. */
PLUMBRULE_API plumbrule_rules* plumbrule_rules_load(plumbrule_session* session, const char* choice);
/* 1 or 0. */
PLUMBRULE_API int plumbrule_rules_usable(const plumbrule_rules* rules);
/* A JSON list. plumbrule_text_release. */
PLUMBRULE_API char* plumbrule_rules_diagnostics(const plumbrule_rules* rules);
PLUMBRULE_API void plumbrule_rules_release(plumbrule_rules* rules);

/* What `name` ends in says the form: .json, .csv, else YAML. `record`: of a sheet of several, its number or its mix; or
 * NULL. plumbrule_submittal_release. */
PLUMBRULE_API plumbrule_submittal* plumbrule_submittal_of(const char* name, const char* text, size_t size,
                                                          const char* record);
PLUMBRULE_API void plumbrule_submittal_release(plumbrule_submittal* submittal);

/* Answers. plumbrule_report_release. */
PLUMBRULE_API plumbrule_report* plumbrule_review(const plumbrule_rules* rules, const plumbrule_submittal* submittal);
/* `question`: {"vary": "emulsion_content", "tolerance": "0.5 %", "curve": false}, parts left out, or NULL. */
PLUMBRULE_API plumbrule_report* plumbrule_window(const plumbrule_rules* rules, const plumbrule_submittal* submittal,
                                                 const char* question);
PLUMBRULE_API plumbrule_report* plumbrule_follow_up(const plumbrule_rules* rules, const plumbrule_submittal* before,
                                                    const plumbrule_submittal* after);
PLUMBRULE_API plumbrule_report* plumbrule_contrast(const plumbrule_rules* before, const plumbrule_rules* after);
/* `classes`: a JSON list of "category=word", or NULL. */
PLUMBRULE_API plumbrule_report* plumbrule_envelope(const plumbrule_rules* rules, const char* classes);
/* `paths`: a JSON list of rule files and folders. */
PLUMBRULE_API plumbrule_report* plumbrule_proof(plumbrule_session* session, const char* paths);

/* Never PLUMBRULE_COMPLIES where something is wrong; PLUMBRULE_UNUSABLE of NULL. */
PLUMBRULE_API enum plumbrule_status plumbrule_report_status(const plumbrule_report* report);
/* A JSON list. plumbrule_text_release. */
PLUMBRULE_API char* plumbrule_report_diagnostics(const plumbrule_report* report);
/* `form`: "text", "brief", "markdown", "html", "json", "sarif", "junit", "matrix text", "matrix markdown", "matrix html",
 * "matrix json", "rules". NULL if the answer has no such form. plumbrule_text_release. */
PLUMBRULE_API char* plumbrule_report_render(const plumbrule_report* report, const char* form);
PLUMBRULE_API void plumbrule_report_release(plumbrule_report* report);

PLUMBRULE_API void plumbrule_text_release(char* text);

#ifdef __cplusplus
}
#endif

#endif
