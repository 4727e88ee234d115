#!/usr/bin/env bash
# The parts of the benchmark are right, on few records: the same records every time, and the same counts of forty
# clauses from `sweep`, from comparisons by hand, from jq and from SQLite.
# Usage: agree.sh PLUMBRULE FOLDER_OF_BENCH_PROGRAMS [RECORDS]      without `sweep` in PLUMBRULE, the rivals alone
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
plumbrule=$(realpath "$1")
built=$(realpath "$2")
records=${3:-1000}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
source "$root/tests/bench/parts.sh"

fail() {
  echo "agree: $*"
  exit 1
}

archive=$work/archive.ndjson
"$built/make_records" "$records" >"$archive"
"$built/make_records" $((records * 2)) >"$work/longer"
head -n "$records" "$work/longer" | cmp - "$archive" ||
  fail "a longer archive does not begin with the shorter one"
"$built/make_records" "$records" --seed 2 | cmp -s - "$archive" && fail "another seed gives the same records"
# Computed here. Another sum: the records are no longer those that figures were measured on.
[[ $("$built/make_records" 1000 | sha256sum) == "$(cat "$root/tests/bench/records/thousand.sha256")" ]] ||
  fail "the first thousand records are others than they were"

"$built/rivals" compare "$archive" >"$work/hand"
"$built/rivals" compare-only "$archive" >"$work/structs" 2>"$work/seconds"
[[ $(awk -F '\t' '$1 ~ /^[0-9]+$/ { n += ($2 > 0) + ($3 > 0) } END { print n }' "$work/hand") -ge 70 ]] ||
  fail "so few clauses fail or are not shown that equal counts would mean little"
agree "the array of structs" "$work/structs" "$work/hand"
limits_as jq
jq -c -f "$work/limits.jq" "$archive" >"$work/jq.out"
agree jq <(counts_from jq "$work/jq.out") "$work/hand"
limits_as sql "$archive"
sqlite3 :memory: <"$work/limits.sql" >"$work/sql.out"
agree SQLite <(counts_from sql "$work/sql.out") "$work/hand"

# The comparison itself finds a difference.
if agree "a wrong count" <(sed '5s/$/0/' "$work/hand") "$work/hand" >"$work/said"; then
  fail "a wrong count was not seen"
fi

if "$plumbrule" sweep --help >/dev/null 2>&1; then
  sweep_as "$archive" 1
  "${sweep[@]}" >"$work/sweep.out" || [[ $? -le 2 ]] || fail "the sweep went wrong"
  agree sweep <(sweep_counts "$work/sweep.json") "$work/hand"
else
  echo "- sweep: not in this program"
fi
