#!/usr/bin/env bash
# What an integration server runs: rule files are tidy and sound, and every submittal is reviewed. Any runner that can
# call a shell script can call this one; it collects what lies in REPORTS as test results (*.junit.xml), as findings
# beside the source (*.sarif) and as documents (*.txt).
# Usage: examples/pipeline.sh RULES SUBMITTALS REPORTS
#   RULES       a folder of specifications
#   SUBMITTALS  a folder of submittals (*.yaml, *.yml, *.json, *.csv); each is one record, so a sheet of several is an
#               error: `plumbrule transcribe --record` takes one out, and `plumbrule sweep` judges them all
#   REPORTS     a folder for the reports; those of an earlier run are removed, so that none is taken for a new one
# Exit status: as of `plumbrule review`, the gravest of all: 4 and 3 before 1, 1 before 2, 2 before 0. A folder without
# any submittal is an error (4): nothing reviewed must not look like nothing wrong.
set -euo pipefail

rules=${1:?usage: pipeline.sh RULES SUBMITTALS REPORTS}
submittals=${2:?usage: pipeline.sh RULES SUBMITTALS REPORTS}
reports=${3:?usage: pipeline.sh RULES SUBMITTALS REPORTS}
mkdir -p "$reports"
rm -f "$reports"/*.junit.xml "$reports"/*.sarif "$reports"/*.txt

gravest=0
# step WORDS COMMAND...: runs one step and keeps the gravest status. In this order: 0 2 1 3 4.
step() {
  local words=$1 status=0
  shift
  "$@" || status=$?
  echo "$words: exit status $status"
  local order=02134
  local before=${order%%"$gravest"*} now=${order%%"$status"*}
  if [[ ${#now} -gt ${#before} ]]; then
    gravest=$status
  fi
}

step "rules, tidy" find "$rules" -name '*.plumb' -exec plumbrule tidy --check {} +
step "rules, proof" plumbrule proof "$rules" --format junit --out "$reports/rules.junit.xml"
plumbrule proof "$rules" --format sarif --out "$reports/rules.sarif" || true # the same status, said above

reviewed=0
shopt -s nullglob
for submittal in "$submittals"/*; do
  case ${submittal,,} in
    *.yaml | *.yml | *.json | *.csv) ;;
    *)
      echo "$submittal: no submittal, passed over"
      continue
      ;;
  esac
  reviewed=$((reviewed + 1))
  report=$reports/$(basename "$submittal") # with its ending, for there may be a trial.yaml and a trial.json
  step "$submittal" plumbrule review "$submittal" --against "$rules" --format junit --out "$report.junit.xml"
  plumbrule review "$submittal" --against "$rules" --format sarif --out "$report.sarif" 2> /dev/null || true
  plumbrule review "$submittal" --against "$rules" --out "$report.txt" 2> /dev/null || true
done

if [[ $reviewed -eq 0 ]]; then
  echo "$submittals: no submittal to review (*.yaml, *.yml, *.json, *.csv)" >&2
  gravest=4
fi

echo "gravest: $gravest"
exit "$gravest"
