#!/usr/bin/env bash
# CPU time of whole processes: a review of a bundled submittal against two specifications, beside `plumbrule --version`
# (start-up alone). Prints milliseconds for each and their ratio; it is a measurement, not a test. Needs GNU time's
# resolution beaten, so each figure is the mean over many runs.
#
#   tests/bench/review_cpu.sh [RUNS]
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
runs=${1:-200}
plumbrule=${PLUMBRULE:-$root/.build/release/src/plumbrule}
cd "$root"

cpu_ms() { # mean CPU milliseconds of a command over all runs, by the shell's own accounting of its children
  bash -c '
    runs=$1; shift
    for ((i = 0; i < runs; i++)); do "$@" >/dev/null 2>&1 || true; done
    times' _ "$runs" "$@" | awk -v runs="$runs" 'NR == 2 {
      split($1, u, /[ms]/); split($2, s, /[ms]/)
      printf "%.2f\n", 1000 * (60 * u[1] + u[2] + 60 * s[1] + s[2]) / runs }'
}

start=$(cpu_ms "$plumbrule" --version)
review=$(cpu_ms "$plumbrule" review examples/submittals/complies.yaml \
  --against specs/issa_a143_2010.plumb --against specs/ohio_421_2010.plumb)
echo "start-up alone:                       $start ms CPU"
echo "review against two specifications:    $review ms CPU ($runs runs)"
awk -v a="$review" -v b="$start" 'BEGIN { printf "ratio: %.1f\n", a / b }'
