# Parts of the tests of `sweep`, which source it and give it their arguments: PLUMBRULE FOLDER_OF_BENCH_PROGRAMS.
# What these tests know about the outputs of a sweep stands here alone.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
plumbrule=$(realpath "$1")
make_records=$(realpath "$2")/make_records
work=$(mktemp -d)
children=()
trap 'for child in "${children[@]:-}"; do kill -9 "$child" 2>/dev/null || true; done; rm -rf "$work"' EXIT
sweep=("$plumbrule" sweep --against "$root/tests/bench/forty.plumb")
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
bad_lines() { jq -r 'select(.unreadable or .faulty) | .line' "$1"; }

# Counts that have to add up: records, and those of them with which something is wrong.
totals() { jq -r '"\(.records) \(.unreadable + .faulty)"' "$1"; }

# Everything of a summary that may be added over parts, in an order of its own.
counts() { jq -S '[.records, .unreadable, .faulty, (.against[] | [.specification, .outcomes, (.clauses[] | [.clause, .complies, .fails, .not_shown, .does_not_apply])])]' "$1"; }

# merge SUMMARY...: one summary of several, on standard output.
merge() { "$plumbrule" sweep --merge "$@"; }
