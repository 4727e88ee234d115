#!/usr/bin/env bash
# Holds specs/README.md and the shipped specifications together: the table between the marks `index: begin` and
# `index: end` is what `recite` says of each file, and the list below names for each file what is missing.
# Usage: library_index.sh PLUMBRULE [REPOSITORY]              check
#        library_index.sh PLUMBRULE REPOSITORY --write        write the table anew
#        library_index.sh --self-check
set -euo pipefail
export LC_ALL=C
usage="usage: library_index.sh PLUMBRULE [REPOSITORY [--write]] or library_index.sh --self-check"
here=$(realpath "$(dirname "${BASH_SOURCE[0]}")")
begin='<!-- index: begin' end='<!-- index: end -->'

# row FILE: title, edition, number of clauses and their statuses, from `recite`.
row() {
  "$plumbrule" recite "$1" --format markdown | awk -F ' *[|] *' -v file="$(basename "$1")" '
    /^# / && title == "" { title = substr($0, 3) }
    /^- edition / { edition = $3; split($0, words, /[ ,]+/); edition = words[3] }
    /^\| / && $7 ~ /^verified/ { verified++ }
    /^\| / && $7 ~ /^unverified/ { unverified++ }
    /^\| / && $7 ~ /^demonstration/ { demonstration++ }
    END {
      sure = verified ? verified " verified" : ""
      if (unverified) sure = sure (sure == "" ? "" : ", ") unverified " unverified"
      if (demonstration) sure = sure (sure == "" ? "" : ", ") demonstration " demonstration"
      printf "| [%s](%s) | %s | %s | %d | %s |\n", file, file, title, edition,
             verified + unverified + demonstration, sure
    }'
}

table() {
  echo "| file | document | edition | clauses | how sure |"
  echo "| --- | --- | --- | --- | --- |"
  local file
  for file in "$1"/specs/*.plumb; do
    row "$file"
  done
}

printed() { awk -v begin="$begin" -v end="$end" 'index($0, end) == 1 { inside = 0 } inside
                                                 index($0, begin) == 1 { inside = 1 }' "$1/specs/README.md"; }

write() {
  table "$1" > "$1/specs/README.index"
  awk -v begin="$begin" -v end="$end" -v table="$1/specs/README.index" '
    index($0, end) == 1 { inside = 0 }
    !inside
    index($0, begin) == 1 { inside = 1; while ((getline line < table) > 0) print line }' \
    "$1/specs/README.md" > "$1/specs/README.new"
  rm "$1/specs/README.index"
  mv "$1/specs/README.new" "$1/specs/README.md"
}

check() {
  local violations=0 file name
  if ! diff <(printed "$1") <(table "$1"); then
    echo "library index: specs/README.md is not up to date; run library_index.sh PLUMBRULE REPOSITORY --write"
    violations=1
  fi
  for file in "$1"/specs/*.plumb; do
    name=$(basename "$file" .plumb)
    if ! grep -qF -- "- **$name**" "$1/specs/README.md"; then
      echo "library index: specs/README.md does not say what is missing in $name"
      violations=$((violations + 1))
    fi
  done
  echo "library index: $(printed "$1" | grep -c '\.plumb') specifications, $violations violations"
  [[ $violations -eq 0 ]]
}

# judge WORDS WANTED_STATUS PART README_LINE...: what the check says of one file and a README of those lines.
judge() {
  local words=$1 wanted=$2 part=$3 status=0
  shift 3
  printf '%s\n' "$@" > "$work/specs/README.md"
  (check "$work") > "$work/printed" 2>&1 || status=$?
  if [[ $status -ne $wanted ]] || ! grep -qF -- "$part" "$work/printed"; then
    echo "FAILED: $words (status $status, wanted $wanted and: $part)"
    sed 's/^/    /' "$work/printed"
    failures=$((failures + 1))
  fi
}

self_check() {
  failures=0
  work=$(mktemp -d)
  trap 'rm -rf "$work"' EXIT
  mkdir -p "$work/specs"
  touch "$work/specs/one.plumb"
  printf '%s\n' '#!/bin/sh' 'cat <<TEXT' '# One' '- edition 2026, An agency' \
    '| Clause | Property | For | Limit | Rounded | Status | Cited |' '| A Heading |  |  |  |  |  |  |' \
    '| A-1 | loss |  | at most 1 g | every digit | verified, refer | p. 1 |' \
    '|  | loss | traffic heavy | at most 2 g | every digit |  | p. 1 |' \
    '| A-2 | loss |  | at most 3 g | every digit | unverified | p. 2 |' 'TEXT' > "$work/stand_in"
  chmod +x "$work/stand_in"
  plumbrule=$work/stand_in
  local head='| file | document | edition | clauses | how sure |' line='| --- | --- | --- | --- | --- |'
  local right='| [one.plumb](one.plumb) | One | 2026 | 2 | 1 verified, 1 unverified |'
  judge "up to date" 0 "1 specifications, 0 violations" "$begin -->" "$head" "$line" "$right" "$end" '- **one**: a gap'
  judge "another number" 1 "not up to date" "$begin -->" "$head" "$line" "${right/ 2 |/ 3 |}" "$end" '- **one**: a gap'
  judge "no row" 1 "not up to date" "$begin -->" "$head" "$line" "$end" '- **one**: a gap'
  judge "no marks" 1 "not up to date" "$head" "$line" "$right" '- **one**: a gap'
  judge "gaps not said" 1 "what is missing in one" "$begin -->" "$head" "$line" "$right" "$end"
  printf '%s\n' above "$begin -->" old "$end" below '- **one**: a gap' > "$work/specs/README.md"
  write "$work"
  judge "written anew" 0 "0 violations" "$(cat "$work/specs/README.md")"
  grep -qx below "$work/specs/README.md" || failures=$((failures + 1))
  echo "library index self-check: $failures failed"
  [[ $failures -eq 0 ]]
}

if [[ ${1:?$usage} == --self-check ]]; then
  self_check
  exit
fi
plumbrule=$(realpath "$1")
root=$(realpath "${2:-$here/../..}")
case ${3:-} in
  --write) write "$root" ;;
  "") check "$root" ;;
  *) echo "$usage" >&2; exit 4 ;;
esac
