#!/usr/bin/env bash
# No golden keeps an empty pass: a recorded `review`, `window`, `follow-up` or `sweep` that ends with status 0 and prints
# its report shows that something complies. Runs with a pipe, a second command or --out print no whole report and are
# passed over; so are those that only print help.
# Usage: no_empty_pass.sh [REPOSITORY]      or      no_empty_pass.sh --self-check
set -euo pipefail
export LC_ALL=C
least=50  # of these runs are there at least: else this test has gone blind

check() {
  local runs=0 violations=0 file line kind command
  while read -r kind file line command; do
    runs=$((runs + 1))
    if [[ $kind == empty ]]; then
      echo "no_empty_pass: ${file#"$1"/}:$line: status 0, and nothing complies: $command"
      violations=$((violations + 1))
    fi
  done < <(find "$1/tests" -name '*.case' -print0 | sort -z | xargs -0 awk '
      function close_run() {
        if (open && status == 0) print (shown ? "shown" : "empty"), file, line, command
        open = 0
      }
      FNR == 1 { close_run() }
      /^=== run / {
        close_run()
        command = substr($0, 9)
        open = command ~ /^plumbrule (review|window|follow-up|sweep) / && command !~ /[|;<>&]|--out|--help/
        file = FILENAME; line = FNR; status = 0; shown = 0
        next
      }
      /^=== status / { status = $3; close_run(); next }
      /^=== error/ { next }
      /^=== / { close_run(); next }
      open && /complies +(from|[1-9])|No exception taken|: complies|[|] complies|"verdict": ?"complies"/ { shown = 1 }
      open && /<testcase [^>]*\/>/ && !/classname="submittal"/ { shown = 1 }  # JUnit: a clause that passed
      END { close_run() }')
  echo "no_empty_pass: $runs reports with status 0, $violations empty"
  [[ $violations -eq 0 && $runs -ge $least ]]
}

# judge WORDS WANTED_STATUS TEXT: a case with this text beside $sound sound ones.
judge() {
  local status=0 at
  : >"$work/tests/sound.case"
  for ((at = 1; at <= sound; at++)); do
    printf '=== run plumbrule review a.yaml --against b.plumb\n  clauses     complies 1 | fails 0\n' >>"$work/tests/sound.case"
  done
  printf '%b' "$3" >"$work/tests/one.case"
  (check "$work") >"$work/printed" 2>&1 || status=$?
  if [[ $status -ne $2 ]]; then
    echo "FAILED: $1 (status $status, wanted $2)"
    sed 's/^/    /' "$work/printed"
    failures=$((failures + 1))
  fi
}

self_check() {
  failures=0
  sound=$least
  work=$(mktemp -d)
  trap 'rm -rf "$work"' EXIT
  mkdir -p "$work/tests"
  judge "a pass with a clause" 0 '=== run plumbrule review a --against b\n  clauses     complies 2 | fails 0\n'
  judge "an empty pass" 1 '=== run plumbrule review a --against b\nSubmittal a\n  clauses     complies 0 | fails 0\n'
  judge "an empty pass, stated" 1 '=== run plumbrule window a --against b\nSubmittal a\n=== status 0\n'
  judge "an empty pass before another run" 1 '=== run plumbrule review a --against b\nx\n=== run plumbrule recite b\ny\n'
  judge "nothing complies, and it says so" 0 '=== run plumbrule review a --against b\nx\n=== error\ny\n=== status 3\n'
  judge "JUnit with a clause" 0 '=== run plumbrule review a --against b\n<testcase name="1 x" classname="b"/>\n'
  judge "JUnit without a clause" 1 '=== run plumbrule review a --against b\n<testcase name="x" classname="submittal"/>\n'
  judge "another command" 0 '=== run plumbrule recite b\nx\n'
  sound=$((least - 1))
  judge "gone blind" 1 ''
  echo "no_empty_pass self-check: $failures failed"
  [[ $failures -eq 0 ]]
}

case ${1:-} in
  --self-check) self_check ;;
  *) check "$(realpath "${1:-$(dirname "${BASH_SOURCE[0]}")/../..}")" ;;
esac
