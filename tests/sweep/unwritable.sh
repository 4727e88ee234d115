#!/usr/bin/env bash
# A full disk and a closed pipe are reported with exit status 4, and a sweep whose reader has gone stops.
# Usage: unwritable.sh PLUMBRULE FOLDER_OF_BENCH_PROGRAMS
source "$(dirname "$0")/common.sh"

"$make_records" 5000 >"$work/archive.ndjson"

# refused WHAT RESULT: status 4, and a word about it on standard error ($work/err).
refused() {
  [[ $2 -eq 4 ]] || fail "$1: exit status $2, not 4"
  [[ -s $work/err ]] || fail "$1: nothing was reported"
}

for option in --verdicts --out; do
  result=0
  "${sweep[@]}" "$work/archive.ndjson" "$option" /dev/full 2>"$work/err" >"$work/out" || result=$?
  refused "full disk, $option" "$result"
  grep -q "No space left" "$work/err" || fail "full disk, $option: not said: $(cat "$work/err")"
done
result=0
"${sweep[@]}" "$work/archive.ndjson" --verdicts - >/dev/full 2>"$work/err" || result=$?
refused "full disk, standard output" "$result"
[[ -c /dev/full ]] || fail "/dev/full was replaced by a file"

# A small disk of our own, where a mount in a name space of our own is allowed: the file that does not fit is taken away.
small_disk='mount -t tmpfs -o size=64k tmpfs "$1" && shift && folder=$1 && shift && { "$@"; result=$?; ls -A "$folder"; exit $result; }'
mkdir "$work/disk"
if unshare --mount --map-root-user bash -c 'mount -t tmpfs -o size=64k tmpfs "$1"' _ "$work/disk" 2>/dev/null; then
  result=0
  unshare --mount --map-root-user bash -c "$small_disk" _ "$work/disk" "$work/disk" \
    "${sweep[@]}" "$work/archive.ndjson" --verdicts "$work/disk/verdicts" >"$work/left" 2>"$work/err" || result=$?
  refused "small disk" "$result"
  grep -q verdicts "$work/left" && fail "small disk: left behind: $(cat "$work/left")"
else
  echo "unwritable: no mount is allowed here; the small disk was left out"
fi

# An endless archive and a reader that takes one line: the sweep must stop by itself.
first=$("$make_records" 1)
set +e
yes "$first" 2>/dev/null | timeout 60 "${sweep[@]}" - --verdicts - 2>"$work/err" | head -n 1 >"$work/line"
result=${PIPESTATUS[1]}
set -e
refused "closed pipe" "$result"
[[ -s $work/line ]] || fail "closed pipe: the reader got nothing"
exit $((failures > 0))
