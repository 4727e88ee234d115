#!/usr/bin/env bash
# One line in a hundred is spoiled in ten ways: each is reported with its line, the others are judged as if it were not
# there, and the counts add up.
# Usage: spoiled.sh PLUMBRULE FOLDER_OF_BENCH_PROGRAMS [RECORDS]
source "$(dirname "$0")/common.sh"
records=${3:-20000}

"$make_records" "$records" --spoil "$work/list" >"$work/spoiled.ndjson"
"$make_records" "$records" >"$work/whole.ndjson"
cut -f 1 "$work/list" >"$work/wanted"
spoiled=$(wc -l <"$work/wanted")
[[ $(cut -f 2 "$work/list" | sort -u | wc -l) -eq 10 ]] || fail "not every way to spoil a line is in this archive"

swept "${sweep[@]}" "$work/spoiled.ndjson" --verdicts "$work/verdicts" --out "$work/summary"
bad_lines "$work/verdicts" >"$work/found"
diff "$work/wanted" "$work/found" >"$work/difference" ||
  fail "other lines are reported than were spoiled (< spoiled, > reported): $(head -5 "$work/difference")"
grep -oE 'spoiled\.ndjson:[0-9]+' "$work/swept.err" | cut -d : -f 2 | uniq >"$work/said"
diff "$work/wanted" "$work/said" >"$work/difference" ||
  fail "standard error names other lines than were spoiled (< spoiled, > named): $(head -5 "$work/difference")"
[[ $(totals "$work/summary") == "$records $spoiled" ]] ||
  fail "the counts do not add up: $(totals "$work/summary"), of $records records $spoiled are spoiled"

# The lines that were left whole: the same bytes of verdicts as in an archive without a spoiled line.
swept "${sweep[@]}" "$work/whole.ndjson" --verdicts "$work/all"
[[ -z $(bad_lines "$work/all") ]] || fail "errors in an archive without a spoiled line"
whole_lines() { bare "$1" | awk -F '\t' 'NR == FNR { gone[$1]; next } !(FNR in gone)' "$work/list" -; }
[[ $(bare "$work/verdicts" | wc -l) -eq $records ]] || fail "$(bare "$work/verdicts" | wc -l) verdicts of $records records"
cmp <(whole_lines "$work/all") <(whole_lines "$work/verdicts") || fail "spoiled lines changed the verdicts of others"
exit $((failures > 0))
