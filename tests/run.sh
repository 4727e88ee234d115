#!/usr/bin/env bash
# The tests, in two depths. Both end with the seconds of each step and the line `N passed, N failed`: tests, and one for
# each other step. Exit status 0 only when nothing failed.
#   tests/run.sh          release build, all its tests, clang-format: what to run before each commit
#   tests/run.sh --deep   also sanitizer build and tests, clang-tidy, packages, threads, fuzz targets, laws at length, SARIF and
#                         submittals against their schemas, HTML reports in a browser: what the integration runs
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

deep=no
for option in "$@"; do
  case $option in
    --deep) deep=yes ;;
    *) echo "usage: tests/run.sh [--deep]" >&2; exit 2 ;;
  esac
done

passed=0
failed=0
broken=()  # steps that went wrong, by name
spent=()   # seconds and name of each step

heading() { printf '\n== %s\n' "$*"; }

# step NAME COMMAND...: carries it out, and takes note of how it went and how long it took.
step() {
  local name=$1 begin=$SECONDS status=0
  shift
  heading "$name"
  "$@" || status=$?
  spent+=("$(printf '%5d s  %s' $((SECONDS - begin)) "$name")")
  if [[ $status -ne 0 ]]; then
    broken+=("$name")
  fi
  return $status
}

# check NAME COMMAND...: a step that counts as one test.
check() {
  if step "$@"; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
  fi
}

build() { cmake --preset "$1" -DBUILD_TESTING=ON && cmake --build --preset "$1"; }

# Runs the tests of a preset and adds ctest's counts to ours.
run_tests() {
  local log status=0 bad all
  log=$(mktemp)
  ctest --preset "$1" </dev/null 2>&1 | tee "$log" || status=$?
  # ctest closes with "98% tests passed, 1 tests failed out of 50".
  read -r bad all < <(sed -nE 's/^[0-9]+% tests passed, ([0-9]+) tests failed out of ([0-9]+)$/\1 \2/p' "$log") ||
    { bad=1 all=1 status=1; }
  rm -f "$log"
  passed=$((passed + all - bad))
  failed=$((failed + bad))
  return $status
}

# A preset that does not build has one failure, and no tests.
test_preset() {
  if step "$1: build" build "$1"; then
    step "$1: tests" run_tests "$1" || true
  else
    failed=$((failed + 1))
  fi
}

format() {
  find src grammar tests \( -name '*.cpp' -o -name '*.hpp' \) -print0 | sort -z |
    xargs -0 -r clang-format --dry-run -Werror
}

# Longer than as tests, with another seed.
long_laws() {
  local programs=.build/release/tests/property
  "$programs/differential" --runs 200000 --seed 2 --jobs 2 --folder .build/disagreements &&
    "$programs/window_scan" --trials 30000 --seed 2 &&
    RC_PARAMS="seed=2 max_success=5000" "$programs/laws" &&
    bash tests/sweep/in_full.sh .build/release/src/plumbrule 1200 2
}

# The checks against schemas and the browser need Node.js, whichever one the machine has.
node_there() { { command -v node && command -v npm; } >/dev/null || bash .ci/setup.sh node; }

if [[ $deep == yes ]]; then
  step "what is needed" bash .ci/setup.sh build test deep || failed=1
else
  step "what is needed" bash .ci/setup.sh build test || failed=1
fi
test_preset release
check "clang-format" format
if [[ $deep == yes ]]; then
  program=$PWD/.build/release/src/plumbrule
  test_preset sanitize
  check "clang-tidy" bash tests/tidy/run.sh
  check "clang-tidy: planted defects" bash tests/tidy/run.sh --planted
  check "packages" bash tests/package/run.sh .build/release
  check "two threads that review at once" bash tests/package/threads.sh
  check "fuzz targets, briefly" bash tests/fuzz/run.sh 15 2 1  # tests/fuzz/run.sh runs them at length
  check "laws at length" long_laws
  check "Node.js" node_there
  check "SARIF against its schema" bash tests/sarif/run.sh "$program"
  check "submittals against their schema" bash tests/schema/run.sh "$program"
  check "HTML reports in the browser" bash tests/browser/run.sh "$program"
else
  heading "left out, tests/run.sh --deep has them"
  echo "sanitizers, clang-tidy, packages, threads, fuzz targets, laws at length, SARIF and submittals against schemas, HTML in a browser"
fi

heading "summary"
printf '%s\n' "${spent[@]}"
for name in "${broken[@]}"; do
  echo "went wrong: $name"
done
echo "$passed passed, $failed failed"
[[ $failed -eq 0 && ${#broken[@]} -eq 0 && $passed -gt 0 ]]
