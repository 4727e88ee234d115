#!/usr/bin/env bash
# Figures that a source outside the project prints: every example of tests/conformance/reference has directly above it
#   # source: WHAT; FOUND http...      read at that address
#   # source: WHAT; MEMORY-H           recalled with high (H) or medium (M) confidence, to be verified
#   # computed here: WHAT              a counter-example of our own, which is not counted
# Each case proves all its examples as expected, and at least 40 of them have a source.
# Usage: count_sources.sh [REPOSITORY]      or      count_sources.sh --self-check
set -euo pipefail
export LC_ALL=C
least=40

# The examples of one case, a line each: `found`, `memory`, `own` or `none`, and the number of the line.
examples() {
  awk '/^=== / { in_file = /^=== file / }
       in_file && /^[ \t]*example / {
         mark = "none"
         if (above ~ /^# source: .+; FOUND https?:[^ ]+$/) mark = "found"
         if (above ~ /^# source: .+; MEMORY-[HM]$/) mark = "memory"
         if (above ~ /^# computed here: ./) mark = "own"
         print mark, FNR
       }
       { above = $0 }' "$1"
}

# How many examples the recorded proofs of a case found as expected.
proved() { sed -nE 's/^[^ ]+: .* ([0-9]+) examples?, as expected.*/\1/p' "$1" | awk '{ sum += $1 } END { print sum + 0 }'; }

check() {
  local file mark line all found=0 memory=0 own=0 violations=0
  while read -r file; do
    all=0
    while read -r mark line; do
      all=$((all + 1))
      case $mark in
        found) found=$((found + 1)) ;;
        memory) memory=$((memory + 1)) ;;
        own) own=$((own + 1)) ;;
        none)
          echo "count_sources: ${file#"$1"/}:$line: the example has no source with its mark directly above it"
          violations=$((violations + 1))
          ;;
      esac
    done < <(examples "$file")
    if [[ $all -ne $(proved "$file") ]]; then
      echo "count_sources: ${file#"$1"/}: $all examples, $(proved "$file") recorded as expected"
      violations=$((violations + 1))
    fi
  done < <(find "$1/tests/conformance/reference" -name '*.case' | sort)
  if [[ $((found + memory)) -lt $least ]]; then
    echo "count_sources: at least $least examples shall have a source"
    violations=$((violations + 1))
  fi
  echo "count_sources: $((found + memory)) figures with a source ($found found, $memory from memory), $own of our own," \
    "$violations violations"
  [[ $violations -eq 0 ]]
}

# write_case COUNT LINE PROOF: a case of 39 sound examples and COUNT - 39 below LINE, whose proof prints PROOF.
write_case() {
  local at
  printf '%s\n' '# about: a stand-in' '# section: 11.2' '=== file figures.plumb' 'plumbrule 1'
  for ((at = 1; at <= 39; at++)); do
    printf '%s\n' '# source: a book, table 1; MEMORY-H' 'example "x" for m given m 1 g expect value 1 g'
  done
  for ((at = 40; at <= $1; at++)); do
    printf '%b\n' "$2" 'example "x" for m given m 1 g expect value 1 g'
  done
  printf '%s\n' '=== run plumbrule proof figures.plumb' "$3"
}

# judge WORDS WANTED_STATUS PART, and what write_case takes.
judge() {
  local status=0
  write_case "$4" "$5" "$6" > "$work/tests/conformance/reference/one.case"
  (check "$work") > "$work/printed" 2>&1 || status=$?
  if [[ $status -ne $2 ]] || ! grep -qF -- "$3" "$work/printed"; then
    echo "FAILED: $1 (status $status, wanted $2 and: $3)"
    sed 's/^/    /' "$work/printed"
    failures=$((failures + 1))
  fi
}

self_check() {
  failures=0
  work=$(mktemp -d)
  trap 'rm -rf "$work"' EXIT
  mkdir -p "$work/tests/conformance/reference"
  local proof40='figures.plumb: 1 measure, 40 examples, as expected'
  local address='https://example.org/page'
  judge "an address" 0 "40 figures with a source (1 found, 39 from memory)" 40 "# source: a page; FOUND $address" "$proof40"
  judge "memory" 0 "(0 found, 40 from memory)" 40 "# source: a page; MEMORY-M" "$proof40"
  judge "one too few" 1 "at least 40" 39 "" 'figures.plumb: 1 measure, 39 examples, as expected'
  judge "our own figure counts for nothing" 1 "39 figures" 40 "# computed here: beyond the limit" "$proof40"
  judge "no address" 1 "no source with its mark" 40 "# source: a page; FOUND" "$proof40"
  judge "low confidence" 1 "no source with its mark" 40 "# source: a page; MEMORY-L" "$proof40"
  judge "no mark" 1 "no source with its mark" 40 "# source: a page" "$proof40"
  judge "a line between" 1 "no source with its mark" 40 "# source: a page; MEMORY-H\n" "$proof40"
  judge "an example that is not as expected" 1 "40 examples, 0 recorded" 40 "# source: a page; MEMORY-H" \
    'figures.plumb: 1 measure, 40 examples, 1 not as expected'
  judge "an example that is not proved" 1 "40 examples, 39 recorded" 40 "# source: a page; MEMORY-H" \
    'figures.plumb: 1 measure, 39 examples, as expected'
  echo "count_sources self-check: $failures failed"
  [[ $failures -eq 0 ]]
}

case ${1:-} in
  --self-check) self_check ;;
  *) check "$(realpath "${1:-$(dirname "${BASH_SOURCE[0]}")/../..}")" ;;
esac
