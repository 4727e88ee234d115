#!/usr/bin/env bash
# The man page and the completions: without faults, complete, and of use.
# Usage: tests/manual/run.sh PLUMBRULE        Prints `N passed, N failed`.
set -euo pipefail

plumbrule=$(realpath "${1:?usage: run.sh PLUMBRULE}")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

# expect WORDS COMMAND...: the command must succeed.
expect() {
  local words=$1
  shift
  if "$@"; then
    passed=$((passed + 1))
  else
    echo "FAILED: $words"
    failed=$((failed + 1))
  fi
}

for form in man bash zsh fish; do
  "$plumbrule" manual --form "$form" > "$work/$form"
  "$plumbrule" manual --form "$form" --out "$work/$form.filed"
  expect "$form: --out gives the same" cmp -s "$work/$form" "$work/$form.filed"
done

# The man page: no warning of any kind.
groff -man -Tutf8 -ww -P-c -P-b -P-o -P-u "$work/man" > "$work/page" 2> "$work/warnings"
expect "groff warns: $(head -n 3 "$work/warnings")" test ! -s "$work/warnings"
printf '.TH X 1\n.nosuchrequest\n' | groff -man -Tutf8 -ww > /dev/null 2> "$work/warnings"
expect "groff would warn of a faulty page" test -s "$work/warnings"

# part FORM COMMAND: what the form says about the command.
part() {
  case $1 in
    man) awk -v command="$2" '/^   [a-z-]+ *$/ { on = $1 == command } on' "$work/page" ;;
    bash | zsh) awk -v command="$2)" '/^    [^ ]+\)$/ { on = $1 == command } on' "$work/$1" ;;
    fish) grep -- "_from $2'" "$work/fish" | sed -E 's/ -l ([a-z-]+)/ --\1/' ;;
  esac
}

# Every command of the help, and every option and word of its own help, in each form.
commands=$("$plumbrule" --help | sed -n '/^Subcommands:/,/^$/p' | sed -nE 's/^  ([a-z-]+) .*/\1/p')
expect "the help lists commands" test "$(wc -w <<< "$commands")" -ge 8
for command in $commands; do
  "$plumbrule" "$command" --help > "$work/help"
  options=$(grep -oE '^  (-h,)?--[a-z-]+' "$work/help" | sed 's/.*--/--/')
  words=$(grep -oE -- '^  --[a-z-]+ [a-z]+(\|[a-z]+)+' "$work/help" | sed 's/.* //' | tr '|' '\n' || true)
  expect "$command has options" test -n "$options"
  for form in man bash zsh fish; do
    part "$form" "$command" > "$work/part"
    for word in $options $words; do
      expect "$form: $command $word" grep -qE -- "(^|[^a-z-])$word([^a-z-]|$)" "$work/part"
    done
  done
done

# bash: the words that are offered for what is typed.
bash -n "$work/bash"
mkdir -p "$work/here/folder"
cd "$work/here"
touch a.plumb b.plumb trial.yaml notes.txt "folder/c d.plumb"
# offered WORD...: the last word is the one being typed. One offer a line, sorted.
offered() {
  bash -c 'source "$1"; shift; COMP_WORDS=(plumbrule "$@"); COMP_CWORD=$#; COMPREPLY=(); _plumbrule
           printf "%s\n" "${COMPREPLY[@]}" | sort | paste -sd" "' - "$work/bash" "$@"
}
# offers WANTED WORD...
offers() {
  local wanted=$1 found
  shift
  found=$(offered "$@")
  expect "bash: after \`$*\` found \`$found\`, wanted \`$wanted\`" test "$found" = "$wanted"
}
offers "review" rev
offers "--version" --v
offers "contrast" c
offers "text" review trial.yaml --format t
offers "json junit" review trial.yaml --format = j
offers "folder trial.yaml" review ''
offers "trial.yaml" review --against a.plumb -- t
offers "a.plumb b.plumb folder" review trial.yaml --against ''
offers "folder/c d.plumb" review trial.yaml --against folder/
offers "folder" review trial.yaml --library ''
offers "a.plumb b.plumb folder" proof a.plumb ''
offers "--explain" review trial.yaml --e
offers "--with" recite --w
offers "" review trial.yaml --on ''
offers "a.plumb b.plumb folder notes.txt trial.yaml" review trial.yaml --out ''
offers "bash" manual --form b
offers "" manual ''

# The other shells check what is for them, where they are on the machine.
for shell in zsh fish; do
  if command -v "$shell" > /dev/null; then
    expect "$shell refuses its completion" "$shell" -n "$work/$shell"
  else
    echo "$shell is not on this machine: its completion was not parsed"
  fi
done

echo "$passed passed, $failed failed"
[[ $failed -eq 0 && $passed -gt 0 ]]
