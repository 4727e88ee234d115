#!/usr/bin/env bash
# Proves that run_blocks.sh refuses documents that are not true, with a stand-in for the program.
set -euo pipefail
run_blocks=$(realpath "$(dirname "${BASH_SOURCE[0]}")/run_blocks.sh")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$work/root/grammar"
cat > "$work/stand_in" <<'STAND_IN'
#!/bin/sh
case $1 in
  proof) grep -q '^plumbrule 1$' "$2" && [ "$3 $4" = '--library specs' ] || exit 3 ;;
  *) echo "$1"; [ "$1" = complies ] || exit 1 ;;
esac
STAND_IN
chmod +x "$work/stand_in"

failures=0

# judge WORDS STATUS TEXT...: run_blocks.sh must end with the status on a README.md of that text.
judge() {
  local words=$1 wanted=$2 status=0
  shift 2
  printf '%s\n' "$@" > "$work/root/README.md"
  bash "$run_blocks" "$work/stand_in" "$work/root" > "$work/printed" 2>&1 || status=$?
  if [[ $status -ne $wanted ]]; then
    echo "FAILED: $words (status $status, wanted $wanted)"
    sed 's/^/    /' "$work/printed"
    failures=$((failures + 1))
  fi
}

run='```sh run' end='```'
judge "a block that succeeds" 0 "$run" 'plumbrule complies' "$end"
judge "a block that fails" 1 "$run" 'plumbrule fails' "$end"
judge "a line that fails before one that succeeds" 1 "$run" 'plumbrule fails' 'plumbrule complies' "$end"
judge "a block that fails as stated" 0 '```sh run status=1' 'plumbrule fails' "$end"
judge "a block that should fail and does not" 1 '```sh run status=1' 'plumbrule complies' "$end"
judge "output as shown" 0 "$run" 'plumbrule complies' "$end" '```text output' 'complies' "$end"
judge "output other than shown" 1 "$run" 'plumbrule complies' "$end" '```text output' 'fails' "$end"
judge "sound rules" 0 '```plumb check' 'plumbrule 1' "$end"
judge "broken rules" 1 '```plumb check' 'plumbrule one' "$end"
judge "rules broken as stated" 0 '```plumb check status=3' 'plumbrule one' "$end"
judge "an indented block" 0 '1. Do this:' "   $run" '   plumbrule complies' "   $end"
judge "no block that is run" 1 '```sh' 'plumbrule complies' "$end"
judge "a block that is not closed" 1 "$run" 'plumbrule complies'
printf '%s\n' "$run" 'plumbrule fails' "$end" > "$work/root/grammar/language.md"
judge "a false block of another document" 1 "$run" 'plumbrule complies' "$end"

echo "docs self-test: $failures failed"
[[ $failures -eq 0 ]]
