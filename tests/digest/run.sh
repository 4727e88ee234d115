#!/usr/bin/env bash
# The digests that reports carry: those of the files as `sha256sum` has them, of every file that entered, and the same
# bytes for the same review from another folder.
# Usage: tests/digest/run.sh PLUMBRULE REPOSITORY        Prints `N passed, N failed`.
set -euo pipefail

plumbrule=$(realpath "$1")
root=$(realpath "$2")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

expect() {
  local words=$1
  shift
  if "$@" > "$work/said" 2>&1; then
    passed=$((passed + 1))
  else
    echo "FAILED: $words"
    sed 's/^/    /' "$work/said"
    failed=$((failed + 1))
  fi
}

for place in one "another place"; do
  mkdir -p "$work/$place"
  cp -r "$root/specs" "$root/examples" "$work/$place/"
  # Beside the specification, so that the same path is found on every machine.
  cp -r "$root/specs/vocabulary" "$work/$place/examples/harrow/"
done
harrow=examples/harrow/harrow_512.plumb
amendment=examples/harrow/harrow_sp_14.plumb
trial=examples/submittals/trials.yaml

# holds WORDS COUNT COMMAND...: the report names so many files, each with its digest; twice the same bytes, and from the
# other folder.
holds() {
  local words=$1 count=$2 digest path
  shift 2
  (cd "$work/one" && "$plumbrule" "$@" > "$work/first") 2> /dev/null || true
  (cd "$work/one" && "$plumbrule" "$@" > "$work/second") 2> /dev/null || true
  (cd "$work/another place" && "$plumbrule" "$@" > "$work/third") 2> /dev/null || true
  expect "$words: twice" cmp "$work/first" "$work/second"
  expect "$words: from another folder" cmp "$work/first" "$work/third"
  grep -oE '[0-9a-f]{64}' "$work/first" | sort > "$work/digests"
  expect "$words: $(wc -l < "$work/digests") digests, wanted $count" test "$(wc -l < "$work/digests")" -eq "$count"
  (cd "$work/one" && find . -type f -exec sha256sum {} +) | cut -d ' ' -f 1 | sort -u > "$work/known"
  expect "$words: digests of files" test -z "$(comm -23 <(sort -u "$work/digests") "$work/known")"
  grep -q 'plumbrule' "$work/first" && expect "$words: the version" grep -qE '[0-9]+\.[0-9]+\.[0-9]+' "$work/first"
  for path in "${named[@]}"; do
    digest=$(sha256sum "$work/one/$path" | cut -d ' ' -f 1)
    expect "$words: $path" grep -q "$digest" "$work/first"
  done
}

# What cases mask (tests/cases/masks.hpp) stands in the reports as it should.
version="plumbrule $(sed -nE 's/^project\(plumbrule VERSION ([0-9.]+) .*/\1/p' "$root/CMakeLists.txt")"
caution='The contract documents and local codes govern, and the engineer in responsible charge decides. Limits marked '
caution+='unverified or demonstration must be checked against the current document.'
expect "--version" test "$("$plumbrule" --version)" = "$version"
for format in text json markdown html junit sarif; do
  (cd "$work/one" && "$plumbrule" review $trial --against $harrow --format $format > "$work/first") 2> /dev/null || true
  expect "$format: the caution" grep -qF "$caution" "$work/first"
  if [[ $format == sarif ]]; then
    expect "sarif: the version" grep -qF "\"version\": \"${version#plumbrule }\"" "$work/first"
  else
    expect "$format: the version" grep -qF "$version" "$work/first"
  fi
done

vocabulary=examples/harrow/vocabulary/cold_mix.plumb
named=("$trial" "$harrow" "$vocabulary" "$amendment")
for format in text json sarif junit; do
  holds "review as $format" 4 review "$trial" --against $harrow --with $amendment --format $format
done
holds "review as matrix" 4 review "$trial" --against $harrow --with $amendment --matrix --format markdown
holds "one clause" 4 review "$trial" --against $harrow --with $amendment --explain 512.3.1
for format in text json; do
  holds "window as $format" 4 window "$trial" --against $harrow --with $amendment --format $format
done
named=("$harrow" "$vocabulary" "$amendment")
for format in text markdown; do
  holds "recite as $format" 3 recite $harrow --with $amendment --format $format
done
for format in text markdown json; do
  holds "contrast as $format" 3 contrast $harrow --with $amendment --format $format
done
named=("$harrow" "$vocabulary" "$amendment" "$trial" examples/submittals/fails.yaml)
holds "contrast with an archive" $((3 + $(ls "$root"/examples/submittals/*.yaml | wc -l))) \
  contrast $harrow --with $amendment --archive examples/submittals
named=("$harrow" "$vocabulary" specs/ohio_421_2010.plumb)
for format in text markdown json rules; do
  holds "envelope as $format" 4 envelope $harrow specs/ohio_421_2010.plumb --class course=surface --format $format
done

# Bytes as they lie on the disk: a byte order mark, line ends and comments all count.
cd "$work/one"
before=$("$plumbrule" review "$trial" --against $harrow | grep -E '^  submittal ' || true)
printf '# a comment\r\n' >> "$trial"
after=$("$plumbrule" review "$trial" --against $harrow | grep -E '^  submittal ' || true)
expect "a comment changes the digest" test "$before" != "$after"
expect "to that of the new bytes" grep -q "$(sha256sum "$trial" | cut -d ' ' -f 1)" <<< "$after"

echo "$passed passed, $failed failed"
[[ $failed -eq 0 && $passed -gt 0 ]]
