#!/usr/bin/env bash
# The schema of a submittal in JSON, with a validator from the npm registry: every bundled submittal, transcribed, is
# valid; what is wrong by it is also refused by plumbrule, with an error that says why.
# Usage: tests/schema/run.sh PLUMBRULE
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
plumbrule=$1
work=$root/.build/schema
mkdir -p "$work"
cp "$here/package.json" "$here/package-lock.json" "$work/"
(cd "$work" && npm ci --no-audit --no-fund --silent)
rm -f "$work"/*.submittal.json "$work"/wrong-*.json "$work"/right-*.json
for submittal in "$root"/examples/submittals/*.yaml; do
  "$plumbrule" transcribe "$submittal" --format json --out "$work/$(basename "$submittal" .yaml).submittal.json"
done
node "$here/validate.mjs" "$work" "$root/grammar/submittal.schema.json" "$work"/*.submittal.json

# The same lists before plumbrule, one file each.
node -e '
const fs = require("fs"), [here, work] = process.argv.slice(1);
const read = (name) => JSON.parse(fs.readFileSync(`${here}/${name}`, "utf8"));
const write = (name, one) => fs.writeFileSync(`${work}/${name}.json`, JSON.stringify(one));
read("wrong.json").forEach((one, at) => write(`wrong-submittal-${at}`, one.submittal));
read("records.json").wrong.forEach((one, at) => write(`wrong-record-${at}`, one.record));
read("records.json").right.forEach((one, at) => write(`right-record-${at}`, one));' "$here" "$work"
passed=0
failed=0
for file in "$work"/wrong-*.json "$work"/right-*.json; do
  "$plumbrule" review "$file" --against "$root/examples/harrow/harrow_512.plumb" >/dev/null 2>"$work/errors" || true
  wrong=no
  grep -q ': error: ' "$work/errors" && wrong=yes
  expected=$([[ $(basename "$file") == wrong-* ]] && echo yes || echo no)
  if [[ $wrong == "$expected" ]]; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    echo "FAILED $(basename "$file"): an error was $([[ $expected == yes ]] && echo expected || echo not expected)"
    cat "$file" "$work/errors"
  fi
done
echo "before plumbrule: $passed passed, $failed failed"
[[ $failed -eq 0 && $passed -gt 0 ]]
