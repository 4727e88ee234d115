# Parts of the tests of `sweep`, which source it and give it their arguments: PLUMBRULE FOLDER_OF_BENCH_PROGRAMS.
# What these tests know about the outputs of a sweep stands here alone.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
plumbrule=$(realpath "$1")
make_records=$(realpath "$2")/make_records
work=$(mktemp -d)
children=()
trap 'for child in "${children[@]:-}"; do kill -9 "$child" 2>/dev/null || true; done; rm -rf "$work"' EXIT
sweep=("$plumbrule" sweep --against "$root/tests/bench/forty.plumb" --format json)
failures=0

fail() {
  echo "$(basename "$0"): $*"
  failures=$((failures + 1))
}

# swept COMMAND...: runs it; anything but a verdict (0 to 2) is a failure of the test.
swept() {
  local result=0
  "$@" >"$work/swept.out" 2>"$work/swept.err" || result=$?
  if [[ $result -gt 2 ]]; then
    fail "exit status $result of: $*"
    head -5 "$work/swept.err"
  fi
}

# The numbers of the lines with which something is wrong, by a file of verdicts, in its order: no submittal at all, or
# one that is judged but has errors.
bad_lines() { jq -r 'select(.outcome == "unreadable" or .errors > 0) | .record | sub(".*:"; "")' "$1"; }

# The verdicts of records alone: no summary behind them, no name of the archive.
bare() { sed -E '/^\{"summary":/d; s/^\{"record":"[^"]*:([0-9]+)"/{"record":"\1"/' "$1"; }

# Counts that have to add up: records, and those of them with which something is wrong.
totals() { jq -r '"\(.records) \(.unreadable + .with_errors)"' "$1"; }

# Everything that a summary counts.
counts() { jq -S '[.records, .unreadable, .with_errors, .blank_lines, (.specifications[] | [.name, .outcomes, .clauses])]' "$1"; }

# merge SUMMARY...: one summary of several, on standard output.
merge() {
  local summary options=()
  for summary in "$@"; do options+=(--add-up "$summary"); done
  "$plumbrule" sweep "${options[@]}" --format json
}
