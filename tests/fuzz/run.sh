#!/usr/bin/env bash
# Builds the fuzz targets with clang and runs them.
#   tests/fuzz/run.sh [SECONDS_EACH] [JOBS] [SEED]   default: 600 seconds each, 2 at a time, a new seed each time;
#   CI runs it with 15 seconds and seed 1, so that its inputs are the same from run to run as far as time allows
# A finding stops its target, is printed and kept under .build/fuzz/findings; exit status 1 then.
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
seconds=${1:-600}
jobs=${2:-2}
seed=${3:-0}
build=$root/.build/fuzz
mkdir -p "$build"
if ! { cmake --preset fuzz -S "$root" && cmake --build "$build" --target fuzz_targets; } >"$build/build.log" 2>&1; then
  echo "the targets did not build:"
  tail -n 40 "$build/build.log"
  exit 1
fi
"$root/tests/fuzz/make_seeds.sh" "$build/seeds"
mkdir -p "$build/findings"

run_target() {
  local name=$1 seeds=$2
  mkdir -p "$build/corpus/$name"
  if "$build/tests/fuzz/fuzz_$name" -seed="$seed" -max_total_time="$seconds" -timeout=30 -rss_limit_mb=4096 -max_len=65536 \
    -dict="$build/seeds/words.dict" -artifact_prefix="$build/findings/$name-" -print_final_stats=1 \
    "$build/corpus/$name" "$build/seeds/$seeds" >"$build/$name.log" 2>&1; then
    echo "$name: no finding, $(sed -n 's/^stat::number_of_executed_units: *//p' "$build/$name.log") runs in $seconds s"
  else
    echo "$name: FINDING, see $build/$name.log"
    tail -n 30 "$build/$name.log"
    return 1
  fi
}
export -f run_target
export build seconds seed
printf '%s\n' 'parse rules' 'tidy rules' 'check rules' 'submittal submittals' 'forms forms' 'oracle submittals' |
  while read -r name seeds; do [ -x "$build/tests/fuzz/fuzz_$name" ] && echo "$name $seeds"; done |
  xargs -P "$jobs" -L 1 bash -c 'run_target "$0" "$1"'
