#!/usr/bin/env bash
# The bytes of verdicts and summary do not depend on the number of threads, nor on whether the archive is a file or
# comes through standard input, and not on the run.
# Usage: same_bytes.sh PLUMBRULE FOLDER_OF_BENCH_PROGRAMS [RECORDS]
source "$(dirname "$0")/common.sh"

"$make_records" "${3:-20000}" --spoil "$work/list" >"$work/archive.ndjson"

# run NAME THREADS ARCHIVE
run() {
  mkdir "$work/$1"
  swept "${sweep[@]}" "$3" --threads "$2" --verdicts "$work/$1/verdicts" --out "$work/$1/summary"
}

# Verdicts and summary name the archive, which standard input has none of.
nameless() { sed "s#$work/archive.ndjson#standard input#g" "$1"; }

run reference 1 "$work/archive.ndjson"
[[ -s $work/reference/verdicts && -s $work/reference/summary ]] || fail "nothing was written"
for threads in 1 2 5; do
  run "file.$threads" "$threads" "$work/archive.ndjson"
  diff -rq "$work/reference" "$work/file.$threads" || fail "$threads threads give other bytes"
  run "input.$threads" "$threads" - <"$work/archive.ndjson"
  for output in verdicts summary; do
    cmp <(nameless "$work/reference/$output") <(nameless "$work/input.$threads/$output") ||
      fail "standard input gives other $output with $threads threads"
  done
done
exit $((failures > 0))
