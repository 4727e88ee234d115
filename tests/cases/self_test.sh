#!/usr/bin/env bash
# Proves that the case runner catches what it is there to catch, with a stand-in for the program under test.
# Usage: self_test.sh CASE_RUNNER
set -euo pipefail

runner=$(realpath "${1:?usage: self_test.sh CASE_RUNNER}")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$work/root/specs" "$work/root/examples" "$work/root/tests"
cases=$work/root/tests

cat > "$work/stand_in" <<'STAND_IN'
#!/bin/sh
case $1 in
  say) shift; printf '%s\n' "$*" ;;
  fail) echo 'something fails'; echo 'on the second channel' >&2; exit 1 ;;
  crash) kill -SEGV $$ ;;
  hang) sleep 600 ;;
  size) wc -c < "$2" ;;
  bare) printf 'no line end' ;;
  odd) printf '=== run\n\\ back\n\\=== both\n\033[1m \377\n' ;;
esac
STAND_IN
chmod +x "$work/stand_in"

failures=0
checks=0

run_cases() { "$runner" --plumbrule "$work/stand_in" --root "$work/root" --limit 3000 "$@" > "$work/printed" 2>&1; }

# check WORDS STATUS ARGUMENT...: the runner must end with the status.
check() {
  local words=$1 wanted=$2 status=0
  shift 2
  run_cases "$@" || status=$?
  checks=$((checks + 1))
  if [[ $status -ne $wanted ]]; then
    echo "FAILED: $words (status $status, wanted $wanted)"
    sed 's/^/    /' "$work/printed"
    failures=$((failures + 1))
  fi
}

# says WORDS TEXT: what the last run printed must have the text in it.
says() {
  checks=$((checks + 1))
  if ! grep -qF -- "$2" "$work/printed"; then
    echo "FAILED: $1 (nothing says: $2)"
    sed 's/^/    /' "$work/printed"
    failures=$((failures + 1))
  fi
}

# same WORDS FILE FILE
same() {
  checks=$((checks + 1))
  if ! cmp -s "$2" "$3"; then
    echo "FAILED: $1"
    diff "$2" "$3" | sed 's/^/    /' || true
    failures=$((failures + 1))
  fi
}

cat > "$cases/good.case" <<'CASE'
# about: a case that holds, with two runs, files and names for paths
# section: 4.2, 11.1
=== file sub/rules.plumb
plumbrule 1
\=== not a heading
=== note
Words for the reader.
=== run plumbrule say $specs/a.plumb $examples $PWD ${NO_COLOR-none} ${PLUMBRULE_SPECS-none}; cat sub/rules.plumb
<specs>/a.plumb <examples> <here> none none
plumbrule 1
\=== not a heading
=== status 0

# Words between two runs.

=== run plumbrule fail
something fails
=== error
on the second channel
=== status 1
CASE
check "a case that holds passes" 0 "$cases/good.case"
says "the closing line counts" "1 passed, 0 failed"
cp "$cases/good.case" "$work/before"
check "recording a case that holds passes" 0 --record "$cases/good.case"
same "recording a case that holds changes nothing" "$work/before" "$cases/good.case"
check "sections are listed" 0 --list-sections "$cases"
says "a cited section is listed with its case" "$(printf '11.1\ttests/good.case')"

# One wrong expectation a file; each must fail, become right by recording, and then stay as it is.
head='# about: a wrong expectation'
printf '%s\n=== run plumbrule say yes\nno\n' "$head" > "$cases/wrong_output.case"
printf '%s\n=== run plumbrule fail\nsomething fails\n=== status 1\n' "$head" > "$cases/wrong_error.case"
printf '%s\n=== run plumbrule say yes\nyes\n=== status 1\n' "$head" > "$cases/wrong_status.case"
printf '%s\n=== run plumbrule bare\nno line end\n' "$head" > "$cases/wrong_end.case"
printf '%s\n=== run plumbrule odd\n' "$head" > "$cases/wrong_odd.case"
printf '%s\n=== generate big.yaml repeat 3 "[\\n" + bytes ff 00 + line 2 "a" + series 2 "#," + text "+" + empty\n' \
  "$head" > "$cases/wrong_size.case"
printf '=== run plumbrule size big.yaml\n0\n' >> "$cases/wrong_size.case"
for wrong in "$cases"/wrong_*.case; do
  name=$(basename "$wrong")
  check "$name fails" 1 "$wrong"
  says "$name is named as failed" "FAILED tests/$name"
  check "$name can be recorded" 0 --record "$wrong"
  says "$name is named as recorded" "recorded tests/$name"
  check "$name passes once recorded" 0 "$wrong"
  cp "$wrong" "$work/before"
  check "$name can be recorded again" 0 --record "$wrong"
  same "recording $name again changes nothing" "$work/before" "$wrong"
done
same "what was not expected is kept" <(head -n 1 "$cases/wrong_output.case") <(echo "$head")
check "the generated file has the bytes of its recipe" 0 "$cases/wrong_size.case"
says "the generated file has the bytes of its recipe" "1 passed"
grep -qx 16 "$cases/wrong_size.case" || { echo "FAILED: a generated file of 16 bytes"; failures=$((failures + 1)); }
check "a folder passes when all its cases do" 0 "$cases"
says "a folder counts its cases" "7 passed, 0 failed"

# What must fail even when recording, and leave the file alone.
mkdir "$work/bad"
printf '%s\n=== run plumbrule crash\n=== status 139\n' "$head" > "$work/bad/crash.case"
printf '%s\n=== run plumbrule hang\n' "$head" > "$work/bad/hang.case"
printf '=== run plumbrule say\n' > "$work/bad/no_about.case"
printf '%s\n=== file ../out\n=== run true\n' "$head" > "$work/bad/outside.case"
printf '%s\n=== file nothing_runs\n' "$head" > "$work/bad/no_run.case"
printf '%s\n=== rum plumbrule say\n' "$head" > "$work/bad/misspelt.case"
printf '%s\n=== run true\n\\x\n' "$head" > "$work/bad/mark.case"
printf '%s\n=== generate a repeat "a"\n=== run true\n' "$head" > "$work/bad/recipe.case"
cp -r "$work/bad" "$work/kept"
for bad in "$work"/bad/*.case; do
  check "$(basename "$bad") fails even when recording" 1 --record "$bad"
  same "$(basename "$bad") is left alone" "$work/kept/$(basename "$bad")" "$bad"
done
check "a folder without a case is no success" 2 "$work/root/specs"

# Digests are masked where the program writes them, and only there.
digest=$(printf 'a%.0s' {1..64})
printf '%s\n=== run plumbrule say sha256:%s %s "\\"sha256\\": \\"%s" sha256:%s1 sha256:abc\n' "$head" $digest $digest $digest \
  "$digest" > "$work/masked.case"
check "a case with digests can be recorded" 0 --record "$work/masked.case"
expected="sha256:<digest> $digest \"sha256\": \"<digest> sha256:<digest>1 sha256:abc"
grep -qxF "$expected" "$work/masked.case" || { echo "FAILED: digests are masked"; failures=$((failures + 1)); }
checks=$((checks + 1))

# So are the version behind the program's name and the caution, on one line or several; what stands beside them is not.
printf '%s\n' 'The contract documents and local codes govern, and the engineer in responsible charge decides. Limits marked' \
  'unverified or demonstration must be checked against the current document.' > "$work/caution"
sed -i "s|^  say)|  caution) cat '$work/caution' ;;\n&|" "$work/stand_in"
printf '%s\n=== run plumbrule say by plumbrule 1.20.3, plumbrule 1.2, 1.2.3\n=== run plumbrule caution\n' "$head" \
  > "$work/passing.case"
check "a case with the version and the caution can be recorded" 0 --record "$work/passing.case"
for expected in 'by plumbrule <version>, plumbrule 1.2, 1.2.3' '<caution>'; do
  checks=$((checks + 1))
  grep -qxF "$expected" "$work/passing.case" || { echo "FAILED: recorded is not: $expected"; failures=$((failures + 1)); }
done
sed -i 's/1\.20\.3/9.9.9/' "$work/passing.case"
check "another version passes" 0 "$work/passing.case"
sed -i 's/say by plumbrule/say By plumbrule/' "$work/passing.case"
check "another word beside the version fails" 1 "$work/passing.case"
sed -i 's/say By plumbrule/say by plumbrule/' "$work/passing.case"
sed -i 's/responsible charge/charge/' "$work/caution"
check "another caution fails" 1 "$work/passing.case"
check "a count that is none is refused" 2 --jobs 0 "$cases"
check "an unknown option is refused" 2 --quiet "$cases"

echo "$((checks - failures)) passed, $failures failed"
[[ $failures -eq 0 ]]
