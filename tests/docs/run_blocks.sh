#!/usr/bin/env bash
# Runs the code blocks of the documents, so that what they show is true. The words after the opening fence decide:
#   ```sh run             is run in the repository with plumbrule on the PATH; every line must succeed
#   ```sh run status=1    the same, and the block must end with that exit status
#   ```text output        right after a run block: what it printed on standard output, exactly
#   ```plumb check        is a rule file that `plumbrule proof` accepts, with the library specs/
#   ```plumb check status=3
# Any other block is only read by people.
# Usage: run_blocks.sh PLUMBRULE REPOSITORY
# A document that is not there is passed over, but README.md must be there and must have a block that is run.
set -euo pipefail

program=$(realpath "${1:?usage: run_blocks.sh PLUMBRULE REPOSITORY}")
cd "${2:?usage: run_blocks.sh PLUMBRULE REPOSITORY}"

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/bin"
ln -s "$program" "$work/bin/plumbrule"
export PATH="$work/bin:$PATH" LC_ALL=C
unset NO_COLOR PLUMBRULE_SPECS
longest=60 # seconds that a block may take

run_count=0
failures=0

failure() {
  echo "$1"
  shift
  [[ $# -eq 0 ]] || sed 's/^/    /' "$@"
  failures=$((failures + 1))
}

# What the info words ask for: the number of `status=N`, else 0.
wanted_status() {
  local word
  for word in $1; do
    [[ $word == status=* ]] && { echo "${word#status=}"; return; }
  done
  echo 0
}

# judge_block PLACE INFO: carries out $work/block.
judge_block() {
  local place=$1 info=$2 wanted status=0
  wanted=$(wanted_status "$info")
  case "$info " in
    "sh run "*)
      timeout "$longest" sh -eu "$work/block" < /dev/null > "$work/out" 2> "$work/err" || status=$?
      ;;
    "plumb check "*)
      cp "$work/block" "$work/block.plumb"
      timeout "$longest" plumbrule proof "$work/block.plumb" --library specs \
        < /dev/null > "$work/out" 2> "$work/err" || status=$?
      ;;
    "text output "*)
      if ! diff -u "$work/block" "$work/out" > "$work/difference"; then
        failure "$place: the block before prints something else (- shown, + printed)" "$work/difference"
      fi
      return
      ;;
    *) return ;;
  esac
  run_count=$((run_count + 1))
  if [[ $status -ne $wanted ]]; then
    failure "$place: exit status $status, stated is $wanted" "$work/block" "$work/out" "$work/err"
  fi
}

# Cuts a document into its fenced blocks and judges each.
run_document() {
  local document=$1 line number=0 opened=0 info='' indent='' before=$run_count
  : > "$work/out"
  while IFS= read -r line || [[ -n $line ]]; do
    number=$((number + 1))
    if [[ $opened -eq 0 && $line =~ ^(\ *)\`\`\`([^\`]*)$ ]]; then
      indent=${BASH_REMATCH[1]} info=${BASH_REMATCH[2]} opened=$number
      : > "$work/block"
    elif [[ $opened -ne 0 && $line =~ ^\ *\`\`\`\ *$ ]]; then
      judge_block "$document:$opened" "$info"
      opened=0
    elif [[ $opened -ne 0 ]]; then
      printf '%s\n' "${line#"$indent"}" >> "$work/block"
    fi
  done < "$document"
  [[ $opened -eq 0 ]] || failure "$document:$opened: the block is not closed"
  echo "$document: $((run_count - before)) blocks run"
}

for document in README.md DEVELOPERS.md grammar/*.md; do
  [[ ! -f $document ]] || run_document "$document"
  if [[ $document == README.md && $run_count -eq 0 ]]; then
    failure "README.md: no block is run; mark one with \`sh run\` or \`plumb check\`"
  fi
done
echo "$((run_count)) blocks run, $failures failed"
[[ $failures -eq 0 ]]
