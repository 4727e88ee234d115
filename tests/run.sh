#!/usr/bin/env bash
# Every check there is: release build and tests, sanitizer build and tests, a short run of each fuzz target, SARIF
# and submittals against their schemas, HTML reports in a browser, clang-format, clang-tidy.
# Usage: tests/run.sh [--quick]     --quick leaves clang-tidy out (a third of the run), and says so
# The closing line adds up the tests of both builds; exit status 0 only when nothing failed.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

quick=no
for option in "$@"; do
  case $option in
    --quick) quick=yes ;;
    *) echo "usage: tests/run.sh [--quick]" >&2; exit 2 ;;
  esac
done

passed=0
failed=0
broken=()  # steps that went wrong, by name

heading() { printf '\n== %s\n' "$*"; }

# Configures, builds and tests one preset, and adds ctest's counts to ours.
test_preset() {
  local preset=$1 log
  heading "$preset: build"
  if ! { cmake --preset "$preset" -DBUILD_TESTING=ON && cmake --build --preset "$preset"; }; then
    broken+=("$preset build")
    return
  fi
  heading "$preset: tests"
  log=$(mktemp)
  ctest --preset "$preset" </dev/null 2>&1 | tee "$log" || broken+=("$preset tests")
  # ctest closes with "98% tests passed, 1 tests failed out of 50".
  local bad all
  read -r bad all < <(sed -nE 's/^[0-9]+% tests passed, ([0-9]+) tests failed out of ([0-9]+)$/\1 \2/p' "$log") ||
    { bad=0 all=0; }
  rm -f "$log"
  passed=$((passed + all - bad))
  failed=$((failed + bad))
}

tidy() {
  heading "clang-tidy"
  # GCC has flags that clang does not know, hence -Wno-unknown-warning-option.
  # The counts of suppressed warnings, mostly of system headers, tell nothing.
  find src -name '*.cpp' -print0 | sort -z |
    xargs -0 -r -n 1 -P 2 clang-tidy --quiet -p .build/release --extra-arg=-Wno-unknown-warning-option 2>&1 |
    sed -E '/^[0-9]+ warnings? generated\.$/d'
}

# The SARIF output against the published schema; needs Node.js, whichever one the machine has.
sarif() {
  heading "SARIF against its schema"
  command -v node >/dev/null && command -v npm >/dev/null || bash .ci/setup.sh node
  bash tests/sarif/run.sh "$PWD/.build/release/src/plumbrule"
}

# Submittals in JSON against grammar/submittal.schema.json.
schema() {
  heading "submittals against their schema"
  bash tests/schema/run.sh "$PWD/.build/release/src/plumbrule"
}

# The HTML reports in the distribution's browser.
browser() {
  heading "HTML reports in the browser"
  command -v node >/dev/null && command -v npm >/dev/null || bash .ci/setup.sh node
  bash tests/browser/run.sh "$PWD/.build/release/src/plumbrule"
}

# A short run of each fuzz target; tests/fuzz/run.sh runs them at length.
fuzz() {
  heading "fuzz targets, briefly"
  bash tests/fuzz/run.sh 15 2 1
}

format() {
  heading "clang-format"
  find src grammar tests \( -name '*.cpp' -o -name '*.hpp' \) -print0 | sort -z |
    xargs -0 -r clang-format --dry-run -Werror
}

heading "packages"
bash .ci/setup.sh build test

test_preset release
test_preset sanitize
if [[ $quick == yes ]]; then
  heading "clang-tidy: left out (--quick)"
elif [[ -f .build/release/compile_commands.json ]]; then
  tidy || broken+=("clang-tidy")
fi
format || broken+=("clang-format")
sarif || broken+=("SARIF")
schema || broken+=("schema")
browser || broken+=("browser")
fuzz || broken+=("fuzz")

heading "summary"
for step in "${broken[@]}"; do
  echo "went wrong: $step"
done
echo "$passed passed, $failed failed"
[[ ${#broken[@]} -eq 0 && $passed -gt 0 ]]
