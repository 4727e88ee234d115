#!/usr/bin/env bash
# A sweep that is killed leaves no half-written file: the targets are as they were, and after a polite signal nothing
# stray stands beside them.
# Usage: interrupted.sh PLUMBRULE FOLDER_OF_BENCH_PROGRAMS
source "$(dirname "$0")/common.sh"

"$make_records" 20000 >"$work/archive.ndjson"

# The archive comes through a pipe that stays open, so that the sweep is under way for certain when the signal comes.
kill_midway() {
  local signal=$1 folder=$2 result=0 pid
  mkfifo "$work/pipe.$signal"
  "${sweep[@]}" - --verdicts "$folder/verdicts" --out "$folder/summary" <"$work/pipe.$signal" >"$work/out" 2>&1 &
  pid=$!
  children+=("$pid")
  exec 3>"$work/pipe.$signal"
  cat "$work/archive.ndjson" >&3 # returns when all but what a pipe holds was read
  sleep 0.5
  kill -0 "$pid" 2>/dev/null || fail "$signal: the sweep ended before its input did: $(cat "$work/out")"
  kill -s "$signal" "$pid"
  wait "$pid" 2>/dev/null || result=$?
  exec 3>&-
  [[ $result -gt 2 ]] || fail "$signal: exit status $result looks like a verdict"
}

for signal in TERM HUP KILL; do
  mkdir "$work/new.$signal" "$work/old.$signal"
  kill_midway "$signal" "$work/new.$signal"
  rm "$work/pipe.$signal"
  for target in verdicts summary; do
    [[ ! -e $work/new.$signal/$target ]] || fail "$signal: a half-written $target"
    echo "of last week" >"$work/old.$signal/$target"
  done
  kill_midway "$signal" "$work/old.$signal"
  for target in verdicts summary; do
    [[ $(cat "$work/old.$signal/$target") == "of last week" ]] || fail "$signal: $target of an earlier sweep is spoiled"
  done
  if [[ $signal != KILL ]]; then
    [[ -z $(ls -A "$work/new.$signal") ]] || fail "$signal: left behind: $(ls -A "$work/new.$signal")"
    [[ $(ls -A "$work/old.$signal" | wc -l) -eq 2 ]] || fail "$signal: left behind: $(ls -A "$work/old.$signal")"
  fi
done
exit $((failures > 0))
