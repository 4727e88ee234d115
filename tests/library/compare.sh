#!/usr/bin/env bash
# Holds the shipped limits to an independent table: published.tsv was transcribed from the published figures, not from
# the rule files. Each row must have exactly one limit with the same numbers, unit, conditions and class, and each limit
# a row; `verified` needs a figure that was seen. README.md beside this file describes the columns.
# Usage: compare.sh PLUMBRULE [REPOSITORY]        or        compare.sh PLUMBRULE --self-check
set -euo pipefail
export LC_ALL=C
usage="usage: compare.sh PLUMBRULE [REPOSITORY] or compare.sh PLUMBRULE --self-check"
here=$(realpath "$(dirname "${BASH_SOURCE[0]}")")

# recited FOLDER: every rule file of the folder as `recite` prints it, each after a line with its name.
recited() {
  local file
  for file in "$1"/*.plumb; do
    echo "@ $(basename "$file" .plumb)"
    "$plumbrule" recite "$file" --format markdown
  done
}

# compare TABLE RECITED
compare() { awk -F '\t' -f "$here/compare.awk" "$1" "$2"; }

if [[ $# -lt 1 || $# -gt 2 ]]; then
  echo "$usage" >&2
  exit 4
fi
plumbrule=$(realpath "$1")
if [[ ${2:-} == --self-check ]]; then
  # shellcheck source=tests/library/self_check.sh
  source "$here/self_check.sh"
  self_check
  exit
fi
root=$(realpath "${2:-$here/../..}")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
recited "$root/specs" > "$work/recited"
compare "$here/published.tsv" "$work/recited"
