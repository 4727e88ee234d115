#!/usr/bin/env bash
# Every bundled submittal, transcribed to each form and from there to each form again, stays the same; and the review of
# each form says the same but for places and the name of the file.
# Usage: round_trip.sh PLUMBRULE REPOSITORY
set -euo pipefail
plumbrule=$(realpath "$1")
cd "$2"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
compared=0
failed=0

fail() {
  echo "FAILED: $*"
  failed=$((failed + 1))
}

# A review without what tells one form from another: the file and its digest, the places in it, and what is written there. The text
# of a step of an explanation stays.
review() {
  local status=0
  "$plumbrule" review "$1" --against examples/harrow/harrow_512.plumb --against specs/ohio_421_2010.plumb \
    --format json >"$work/report" 2>"$work/errors" || status=$?
  awk '/^ *"(submittal|place|line|path|sha256)": / || (/^ *"text": / && !step) { next } { step = /^ *"depth": /; print }' "$work/report"
  echo "status $status, $(grep -cE ': (error|warning): ' "$work/errors" || true) diagnostics"
}

for submittal in examples/submittals/*.yaml; do
  name=$(basename "$submittal" .yaml)
  review "$submittal" >"$work/expected"
  for form in yaml json csv; do
    "$plumbrule" transcribe "$submittal" --format "$form" --out "$work/$name.$form" || fail "$submittal to $form"
    review "$work/$name.$form" >"$work/found"
    cmp -s "$work/expected" "$work/found" || fail "the review of $submittal as $form is another"
    compared=$((compared + 1))
  done
  for from in yaml json csv; do
    for to in yaml json csv; do
      "$plumbrule" transcribe "$work/$name.$from" --format "$to" >"$work/again" || fail "$name: $from to $to"
      cmp -s "$work/again" "$work/$name.$to" || fail "$name: $from to $to says something else"
      compared=$((compared + 1))
    done
  done
done

# It would see a difference: another number, and a result that is left out.
submittal=examples/submittals/complies.yaml
review "$submittal" >"$work/expected"
sed 's/786\.8 g/700.0 g/' "$submittal" >"$work/other.yaml"
review "$work/other.yaml" >"$work/found"
cmp -s "$work/expected" "$work/found" && fail "another reading is not noticed"
grep -v 'wet_stripping,' "$submittal" >"$work/less.yaml"
review "$work/less.yaml" >"$work/found"
cmp -s "$work/expected" "$work/found" && fail "a result that is left out is not noticed"

echo "round trip: $compared compared, $failed failed"
[[ $failed -eq 0 && $compared -gt 0 ]]
