#!/usr/bin/env bash
# An archive split and swept in parts by a general-purpose tool, the summaries merged: the same counts as in one run,
# and the verdicts of the parts in a row are those of one run but for the numbers of the lines.
# Usage: merged.sh PLUMBRULE FOLDER_OF_BENCH_PROGRAMS
source "$(dirname "$0")/common.sh"

"$make_records" 20000 --spoil "$work/list" >"$work/archive.ndjson"
swept "${sweep[@]}" "$work/archive.ndjson" --out "$work/whole"
mkdir "$work/parts"
split --lines 3000 --suffix-length 3 --additional-suffix .ndjson "$work/archive.ndjson" "$work/parts/part-"
export work
find "$work/parts" -name 'part-*' | sort |
  xargs -P 3 -I '{}' bash -c '"${@:2}" "$1" --threads 1 --out "$1.summary" || [[ $? -le 2 ]]' _ '{}' "${sweep[@]}" \
    >"$work/out" 2>&1 || fail "a part could not be swept: $(head -3 "$work/out")"
[[ $(find "$work/parts" -name '*.summary' | wc -l) -eq 7 ]] || fail "not every part has a summary"
merge "$work"/parts/*.summary >"$work/merged" || [[ $? -le 2 ]] || fail "the summaries could not be merged"
diff <(counts "$work/whole") <(counts "$work/merged") || fail "merged counts are others than those of one run"
diff -q <(counts "$work/whole") <(counts "$work/parts/part-aaa.ndjson.summary") >/dev/null &&
  fail "a part counts as much as the whole: the comparison sees nothing"

# With digests: those of the bytes, of the parts one after the other, and no part counts twice.
parts=("$work"/parts/part-aa[ab].ndjson)
for part in "${parts[@]}"; do swept "${sweep[@]}" "$part" --digests --out "$part.digested"; done
digests() { jq -r '.files[] | select(.kind == "archive") | "\(.sha256)  \(.path)"' "$1"; }
merge "${parts[0]}.digested" "${parts[1]}.digested" >"$work/digested" || [[ $? -le 2 ]] || fail "digested parts do not add up"
diff <(sha256sum "${parts[@]}") <(digests "$work/digested") || fail "other digests than those of the files"
cp "${parts[0]}.digested" "$work/again"
merge "${parts[0]}.digested" "$work/again" >"$work/twice" 2>"$work/err" && fail "a part was counted twice"
grep -q "another part counts too" "$work/err" || fail "not said that a part was there before: $(cat "$work/err")"
merge "${parts[0]}.digested" "${parts[1]}.summary" >"$work/half" 2>"$work/err" && fail "half of the digests passed for all"
grep -q "some do not" "$work/err" || fail "not said that digests are missing: $(cat "$work/err")"
swept "${sweep[@]}" - --digests --out "$work/piped" <"${parts[0]}"
[[ $(digests "$work/piped") == "$(sha256sum <"${parts[0]}" | cut -d ' ' -f 1)  standard input" ]] || fail "piped: another digest"
swept "${sweep[@]}" "${parts[0]}" --out "$work/plain"
[[ -z $(digests "$work/plain") ]] || fail "digests that nobody asked for"
exit $((failures > 0))
