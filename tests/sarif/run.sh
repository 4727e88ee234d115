#!/usr/bin/env bash
# Validates `proof --format sarif` against the published schema, with a validator from the npm registry.
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
node "$here/validate.mjs" "$work" "$work/bad.sarif" "$work/good.sarif"
