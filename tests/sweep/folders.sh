#!/usr/bin/env bash
# A folder is swept whole: linked folders once each, links that lead nowhere reported, and what cannot be read is an error.
# Usage: folders.sh PLUMBRULE FOLDER_OF_BENCH_PROGRAMS
source "$(dirname "$0")/common.sh"

mkdir -p "$work/archive/below" "$work/elsewhere"
"$make_records" 10 >"$work/archive/below/ten.ndjson"
"$make_records" 5 >"$work/elsewhere/five.ndjson"
ln -s .. "$work/archive/below/up"
ln -s "$work/elsewhere" "$work/archive/linked"
ln -s "$work/elsewhere" "$work/archive/linked_again"

# holds STATUS RECORDS UNREADABLE: what a sweep of the folder must say; standard error is left in $work/err.
holds() {
  local result=0
  "${sweep[@]}" "$work/archive" >"$work/out" 2>"$work/err" || result=$?
  [[ $result -eq $1 ]] || fail "exit status $result, not $1: $(cat "$work/err")"
  [[ $(jq -r '"\(.records) \(.unreadable)"' "$work/out") == "$2 $3" ]] || fail "not $2 records, $3 of them unreadable"
}

holds 1 15 0
ln -s nowhere.ndjson "$work/archive/gone.ndjson"
holds 1 16 1
grep -q "gone.ndjson" "$work/err" || fail "a link that leads nowhere was not reported"

# A pipe would be waited for.
rm "$work/archive/gone.ndjson"
mkfifo "$work/archive/pipe.ndjson"
result=0
timeout 20 "${sweep[@]}" "$work/archive" >"$work/out" 2>"$work/err" || result=$?
[[ $result -eq 4 ]] || fail "a pipe in the folder: exit status $result, not 4"
grep -q "neither file nor folder" "$work/err" || fail "a pipe in the folder was not reported"
rm "$work/archive/pipe.ndjson"

# Rights do not bind root.
mkdir "$work/archive/shut"
chmod 000 "$work/archive/shut"
if ls "$work/archive/shut" >/dev/null 2>&1; then
  echo "folders: this user may read everything; the folder without rights was left out"
else
  result=0
  "${sweep[@]}" "$work/archive" >"$work/out" 2>"$work/err" || result=$?
  [[ $result -eq 4 ]] || fail "a folder without rights: exit status $result, not 4"
  grep -q "cannot read the folder" "$work/err" || fail "a folder without rights was not reported"
fi
chmod 700 "$work/archive/shut"
exit $((failures > 0))
