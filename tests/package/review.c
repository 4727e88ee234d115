/* Reviews a submittal in memory: review RULES VOCABULARY SUBMITTAL, each a file, and prints the report as JSON. */
#include <plumbrule/plumbrule.h>
#include <stdio.h>
#include <stdlib.h>

static char* read_file(const char* path, size_t* size) {
  FILE* file = fopen(path, "rb");
  char* text = malloc(1 << 22);
  *size = file == NULL || text == NULL ? 0 : fread(text, 1, 1 << 22, file);
  if (file != NULL) fclose(file);
  return text;
}

int main(int count, char** arguments) {
  if (count != 4) return 64;
  plumbrule_session* session = plumbrule_session_in_memory("[\"specs\"]");
  char choice[1024];
  size_t size = 0;
  for (int at = 1; at <= 2; ++at) {
    char* text = read_file(arguments[at], &size);
    plumbrule_session_put(session, arguments[at], text, size);
    free(text);
  }
  snprintf(choice, sizeof choice, "{\"against\": [\"%s\"]}", arguments[1]);
  plumbrule_rules* rules = plumbrule_rules_load(session, choice);
  char* text = read_file(arguments[3], &size);
  plumbrule_submittal* submittal = plumbrule_submittal_of(arguments[3], text, size, NULL);
  plumbrule_report* report = plumbrule_review(rules, submittal);
  const int status = plumbrule_report_status(report);
  char* page = plumbrule_report_render(report, "json");
  if (page != NULL) fputs(page, stdout);
  plumbrule_text_release(page);
  plumbrule_report_release(report);
  plumbrule_submittal_release(submittal);
  plumbrule_rules_release(rules);
  plumbrule_session_close(session);
  free(text);
  return status;
}
