#!/usr/bin/env bash
# Validates `proof --format sarif` and `review --format sarif` against the published schema, with a validator from the npm registry.
# Usage: tests/sarif/run.sh PLUMBRULE
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
plumbrule=$1
work=$root/.build/sarif
mkdir -p "$work"
cp "$here/package.json" "$here/package-lock.json" "$work/"
(cd "$work" && npm ci --no-audit --no-fund --silent)
cat >"$work/bad.plumb" <<'RULES'
plumbrule 1
specification bad "Bad rules, with Ünïcode before the fault" edition 2026 uses cold_mix
  compare by the rounding method, ties to even
requirement 1 "Loss ≤" abrasion_loss under soak 1 h shall be at most 538 kg-cm
requirement 1 "twice" abrasion_loss under soak 1 h shall be at most 538 g/m2
  cit "x"
RULES
"$plumbrule" proof --format sarif "$work/bad.plumb" >"$work/bad.sarif" || [ $? -eq 3 ]
"$plumbrule" proof --format sarif "$root/specs" >"$work/good.sarif"
# Reviews: from a folder with names that a URI does not allow, with errors of the submittal and an amendment.
mkdir -p "$work/re view"
cp "$root"/examples/harrow/*.plumb "$work/re view/"
cp "$root/examples/submittals/seeded.yaml" "$work/re view/100 % & é.yaml"
{ cat "$root/examples/submittals/fails.yaml"; echo 'resultz: 1'; } >"$work/re view/faulty.yaml"
review() { "$plumbrule" review "$1" "${@:3}" --format sarif >"$2" 2>/dev/null || [ $? -le 2 ]; }
(
  cd "$work/re view"
  review "100 % & é.yaml" "$work/seeded.sarif" --against harrow_512.plumb
  review faulty.yaml "$work/faulty.sarif" --against harrow_512.plumb --with harrow_sp_14.plumb
)
review "$root/examples/submittals/complies.yaml" "$work/many.sarif" --against "$root/specs"
node "$here/validate.mjs" "$work" "$work"/{bad,good,seeded,faulty,many}.sarif
# What stops a server stands at a place of the submittal, with the requirement beside it; digests are those of the files.
node "$here/review.mjs" "$work/seeded.sarif" "$work/faulty.sarif" "$work/re view"
