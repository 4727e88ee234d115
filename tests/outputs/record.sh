#!/usr/bin/env bash
# Writes into a folder what the program gives for every line of lines.sh: output, errors and exit status, a file a line.
# Two programs mean the same where their folders do (diff -r). Each program runs in the repository that it was built in,
# since it finds the shipped vocabularies there; the lines are those of the repository that this script stands in.
# Usage: record.sh PLUMBRULE REPOSITORY FOLDER
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
plumbrule=$(realpath "$1")
repository=$(realpath "$2")
mkdir -p "$3"
folder=$(realpath "$3")
lines=$(mktemp)
trap 'rm -f "$lines"' EXIT
bash "$here/lines.sh" "$repository" >"$lines"

export plumbrule folder
one() {
  local number=${1%%	*} line=${1#*	} input=/dev/null status=0
  if [[ $line == *' --input '* ]]; then
    input=${line##* --input }
    line=${line% --input *}
  fi
  read -r -a words <<<"$line"
  {
    echo "\$ plumbrule $line"
    "$plumbrule" "${words[@]}" <"$input" 2>"$folder/$number.errors" || status=$?
    echo "[errors]"
    cat "$folder/$number.errors"
    echo "[status $status]"
  } >"$folder/$number.txt"
  rm -f "$folder/$number.errors"
}
export -f one
cd "$repository"
nl -ba -w4 -nrz -s'	' "$lines" | xargs -d '\n' -P 2 -I{} bash -c 'one "$1"' _ {}
echo "$(wc -l <"$lines") outputs in $folder"
