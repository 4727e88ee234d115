#!/usr/bin/env bash
# Twelve errors are sown in examples/submittals/seeded.yaml, each on a line that a comment numbers: the audit finds those
# twelve, each with its code and on its line, and nothing else. In the clean twin it finds nothing.
# Usage: seeded.sh PLUMBRULE REPOSITORY
set -euo pipefail
plumbrule=$(realpath "$1")
cd "$2"

# findings SUBMITTAL: "LINE CODE" of each finding, in order.
findings() {
  "$plumbrule" review "examples/submittals/$1" --against examples/harrow/harrow_512.plumb --format json |
    sed -n '/^  "audit": \[/,/^  \]/p' |
    sed -nE 's/^ +"code": "([a-z.-]+)",$/\1/p; s/^ +"line": ([0-9]+),$/\1/p' | paste -d ' ' - - || true
}

# The line of the comment "# NUMBER:" in the seeded file.
line_of() { grep -nE "# $1: " examples/submittals/seeded.yaml | cut -d : -f 1; }

# Number 12 stands on the second of two equal specimens; 11 on the line of `tested`, the finding on the result above it.
wanted() {
  local codes=(age basis impossible material other-factor off-nominal swapped outlier unit arithmetic replicates
    duplicate) number line
  for number in $(seq 12); do
    line=$(line_of "$number")
    [[ $number -ne 11 ]] || line=$((line - 2))
    echo "audit.${codes[number - 1]} $line"
  done
}

status=0
if ! diff <(wanted) <(findings seeded.yaml); then
  echo "seeded: other findings than were sown (< sown, > found)"
  status=1
fi
if [[ -n $(findings clean_twin.yaml) ]]; then
  echo "seeded: findings in the clean twin:"
  findings clean_twin.yaml
  status=1
fi
clean=$("$plumbrule" review examples/submittals/clean_twin.yaml --against examples/harrow/harrow_512.plumb)
if ! grep -q '^Audit of the readings: nothing found (16 results recomputed' <<< "$clean"; then
  echo "seeded: the clean twin was not looked at as it should be"
  grep '^Audit' <<< "$clean" || true
  status=1
fi

# What only the audit reads changes no verdict and no reason, wherever it is left out.
verdicts() {
  "$plumbrule" review "$1" --against examples/harrow/harrow_512.plumb --format json |
    grep -E '^ +"(verdict|reason_code|outcome|value)": '
}
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
for submittal in seeded clean_twin; do
  sed -E '/^    (held|made|also|materials): /d' "examples/submittals/$submittal.yaml" > "$scratch/$submittal.yaml"
  if cmp -s "examples/submittals/$submittal.yaml" "$scratch/$submittal.yaml"; then
    echo "seeded: nothing was left out of $submittal.yaml"
    status=1
  fi
  if [[ $(verdicts "$scratch/$submittal.yaml" | wc -l) -lt 15 ]]; then
    echo "seeded: $submittal.yaml was not reviewed"
    status=1
  fi
  if ! diff <(verdicts "examples/submittals/$submittal.yaml") <(verdicts "$scratch/$submittal.yaml"); then
    echo "seeded: $submittal.yaml has other verdicts without what only the audit reads"
    status=1
  fi
done
exit $status
