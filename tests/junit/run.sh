#!/usr/bin/env bash
# `review` and `proof` as JUnit XML: well-formed, of the common form (form.xsd), with counts that are right, and with a
# failure or an error exactly where the exit status is not 0.
# Usage: tests/junit/run.sh PLUMBRULE REPOSITORY        Prints `N passed, N failed`.
set -euo pipefail

plumbrule=$(realpath "$1")
root=$(realpath "$2")
form=$root/tests/junit/form.xsd
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

expect() {
  local words=$1
  shift
  if "$@" > "$work/said" 2>&1; then
    passed=$((passed + 1))
  else
    echo "FAILED: $words"
    sed 's/^/    /' "$work/said"
    failed=$((failed + 1))
  fi
}

value() { xmllint --xpath "string($2)" "$1"; }

# check WORDS WANTED_STATUS COMMAND...: what the command writes on standard output.
check() {
  local words=$1 wanted=$2 status=0 xml=$work/out.xml
  shift 2
  "$@" > "$xml" 2> /dev/null || status=$?
  expect "$words: exit status $status, wanted $wanted" test "$status" -eq "$wanted"
  expect "$words: of the form" xmllint --noout --schema "$form" "$xml"
  local unmet
  unmet=$(value "$xml" 'count(//failure | //error)')
  expect "$words: exit status $status with $unmet failures and errors" \
    test "$([[ $status -eq 0 ]] && echo 0)" = "$([[ $unmet -eq 0 ]] && echo 0)"
  local kind
  for kind in failure:failures error:errors skipped:skipped testcase:tests; do
    expect "$words: the count of ${kind#*:}" test "$(value "$xml" "count(//${kind%:*})")" = \
      "$(value "$xml" "/testsuites/@${kind#*:}")"
    expect "$words: the sum of ${kind#*:}" test "$(value "$xml" "count(//${kind%:*})")" = \
      "$(value "$xml" "sum(//testsuite/@${kind#*:})")"
  done
}

cd "$root"
harrow=examples/harrow/harrow_512.plumb
check "complies" 0 "$plumbrule" review examples/submittals/complies.yaml --against $harrow --format junit
check "fails" 1 "$plumbrule" review examples/submittals/fails.yaml --against $harrow --format junit
expect "five clauses fail" test "$(value "$work/out.xml" '/testsuites/@failures')" = 5
check "incomplete" 2 "$plumbrule" review examples/submittals/incomplete.yaml --against $harrow --format junit
expect "not shown is an error, none a pass" test "$(value "$work/out.xml" 'count(//error[@type="not shown"])')" -gt 0
check "seeded" 2 "$plumbrule" review examples/submittals/seeded.yaml --against $harrow --format junit
check "all documents" 1 "$plumbrule" review examples/submittals/complies.yaml --against specs --format junit
check "shipped rules" 0 "$plumbrule" proof specs examples --format junit

# Markup and control characters in names and texts, nothing that complies, advice and optional tests that are not met.
cd "$work"
cat > mix.plumb <<'RULES'
plumbrule 1
vocabulary mix "Words"
measure wear "wear <of> & 'test'" in g/m2
measure other "other" in g/m2
RULES
head='plumbrule 1
specification spec "Rules & <more> ]]> 100 %" edition 2026 uses mix
  compare by the rounding method, ties to even'
printf '%s\nrequirement 1 "a <b> & c ]]>" wear shall be at most 5 g/m2 cite "<&>"\n' "$head" > 'sp ec & <1>.plumb'
printf '%s\nrequirement 1 "wear" wear shall be at most 5 g/m2 cite "x"\nrequirement 2 "said" severity advise wear shall be at most 1 g/m2 cite "x"\nrequirement 3 "may lack" optional other shall be at most 1 g/m2 cite "x"\n' "$head" > advice.plumb
printf '%s\nrequirement 2 "said" severity advise wear shall be at most 9 g/m2 cite "x"\n' "$head" > nothing.plumb
record='submittal: 1
mix: "m <&>\u0001\u001b[31m\uFFFE\u202E"
results:
  - {measure: wear, reported: 4 g/m2}'
printf '%s\n' "$record" > 'tri al "&" <1>.yaml'
printf '%s\nresultz: 1\n' "$record" > faulty.yaml
check "markup in names" 0 "$plumbrule" review 'tri al "&" <1>.yaml' --against 'sp ec & <1>.plumb' --format junit
check "advice and optional tests" 0 "$plumbrule" review 'tri al "&" <1>.yaml' --against advice.plumb --format junit
expect "advice that fails is skipped and said" grep -q '<skipped message="advice only, fails: 4 g/m2 against' out.xml
expect "advice that fails is neither failure nor pass" test "$(value out.xml '/testsuites/@skipped')" = 2
expect "an optional test that is not shown is skipped" grep -q 'skipped message="optional test, not shown' out.xml
check "nothing complies" 2 "$plumbrule" review 'tri al "&" <1>.yaml' --against nothing.plumb --format junit
check "an error of the submittal" 2 "$plumbrule" review faulty.yaml --against advice.plumb --format junit
printf '%s\nrequirement 1 "x" wear shall be at most 5 kg cite "x\n' "$head" > broken.plumb
check "broken rules" 3 "$plumbrule" proof broken.plumb --format junit
printf '%s\nrequirement 1 "x" wear shall be at most 5 g/m2 cite "x"\nexample "wrong & <so>" for 1 given wear 6 g/m2 expect complies\n' \
  "$head" > wrong.plumb
check "an example that is wrong" 3 "$plumbrule" proof wrong.plumb --format junit
expect "it is a failure of its case" test "$(value out.xml 'count(//testcase[@name="1 wrong & <so>"]/failure)')" = 1

# A refused value, of a specimen and as reported, is named by its place.
cat > refusing.plumb <<'RULES'
plumbrule 1
vocabulary refusing "Words"
measure wear "wear" in g/m2 refused when wear < 0 g/m2 because "nothing is gained"
measure loss "loss" in g from before in g, after in g computed as before - after
  refused when after > before because "nothing is gained"
RULES
printf '%s\nrequirement 1 "wear" wear shall be at most 5 g/m2\nrequirement 2 "loss" loss, mean of at least 2 specimens, shall be at most 5 g\n' \
  "${head/uses mix/uses refusing}" > refused.plumb
cat > refused.yaml <<'RECORD'
submittal: 1
results:
  - {measure: wear, reported: -4 g/m2}
  - measure: loss
    specimens:
      - {before: 9 g, after: 8 g}
      - {before: 8 g, after: 9 g}
RECORD
check "refused values" 2 "$plumbrule" review refused.yaml --against refused.plumb --format junit
expect "the place of a refused specimen" grep -q '^place: refused.yaml:7:9$' out.xml
expect "the place of a refused value" grep -q '^place: refused.yaml:3:31$' out.xml
"$plumbrule" review refused.yaml --against refused.plumb --format json > out.json || true
expect "both places in the actions of JSON" test "$(jq -r '[.actions[] | select(.clauses != []) | .place][:2] | join(" ")' out.json)" = \
  "refused.yaml:3:31 refused.yaml:7:9"

# The pipeline takes every form of submittal, and a folder without one is an error.
export PATH=${plumbrule%/*}:$PATH
mkdir forms none
"$plumbrule" transcribe "$root/examples/submittals/complies.yaml" --format csv > forms/same.csv
"$plumbrule" transcribe "$root/examples/submittals/complies.yaml" --format json > forms/same.json
cp "$root/examples/submittals/complies.yaml" forms/same.yml
echo "words" > forms/README.md
# piped WORDS WANTED_STATUS FOLDER WANTED_REPORTS
piped() {
  local status=0
  "$root/examples/pipeline.sh" "$root/examples/harrow" "$3" reports > piped.txt 2>&1 || status=$?
  expect "pipeline, $1: exit status $status, wanted $2" test "$status" -eq "$2"
  expect "pipeline, $1: $4 reports" test "$(find reports -name '*.txt' | wc -l)" -eq "$4"
}
piped "every form" 0 forms 3
expect "what is no submittal is said" grep -q 'README.md: no submittal, passed over' piped.txt
piped "no submittal" 4 none 0
expect "and said" grep -q '^none: no submittal to review' piped.txt
cp "$root/examples/submittals/fails.yaml" forms/worse.yml
piped "a submittal that fails, *.yml" 1 forms 4

# The form refuses what is broken on purpose.
"$plumbrule" review refused.yaml --against refused.plumb --format junit > out.xml || true
sed 's/<testcase /<testcase time="1" /' out.xml > other.xml
expect "a form that is broken on purpose is refused" bash -c '! xmllint --noout --schema "$0" other.xml' "$form"

# Filed whole.
"$plumbrule" review faulty.yaml --against advice.plumb --format junit > out.xml 2> /dev/null || true
"$plumbrule" review faulty.yaml --against advice.plumb --format junit --out filed.xml 2> /dev/null || true
expect "--out gives the same" cmp out.xml filed.xml

echo "$passed passed, $failed failed"
[[ $failed -eq 0 && $passed -gt 0 ]]
