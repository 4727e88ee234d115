#!/usr/bin/env bash
# How much memory a page of very many clauses takes: a made specification (invented limits) of so many requirements, a
# bundled submittal, and for each form the size of the report and the most memory, in MiB.
# Usage: many_clauses.sh PLUMBRULE [CLAUSES]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
plumbrule=$(realpath "$1")
clauses=${2:-10000}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
awk -v n="$clauses" 'BEGIN {
  print "plumbrule 1\nspecification many \"Many clauses (invented)\"\n  edition 2026-01-01\n  agency \"Nobody (invented)\""
  print "  uses cold_mix\n  compare by the rounding method, ties to even\n  status demonstration \"invented\""
  for (at = 1; at <= n; ++at) {
    if (at % 100 == 1) printf "section %d \"Part %d\"\n", int(at / 100) + 1, int(at / 100) + 1
    printf "requirement %d.%d \"Abrasion, clause %d\"\n", int((at - 1) / 100) + 1, at, at
    printf "  abrasion_loss under soak 1 h shall be at most %d g/m2\n", 300 + at % 400
  }
}' >"$work/many.plumb"
printf '%-10s %10s %10s\n' form "page MiB" "peak MiB"
for form in text markdown json html; do
  status=0
  command time -f %M -o "$work/peak" "$plumbrule" review examples/submittals/complies.yaml --against "$work/many.plumb" \
    --library specs --format "$form" --out "$work/page" || status=$?
  if [[ $status -gt 2 ]]; then
    echo "many_clauses: exit status $status" >&2
    exit 1
  fi
  awk -v form="$form" -v size="$(stat -c %s "$work/page")" -v peak="$(tail -n 1 "$work/peak")" \
    'BEGIN { printf "%-10s %10.1f %10.1f\n", form, size / 1048576, peak / 1024 }'
done
