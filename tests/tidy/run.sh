#!/usr/bin/env bash
# clang-tidy over src, a unit of the release build at a time: three times as quick as file by file, since headers are read
# once. The files of a unit are joined to one text, not included in one: the static analyzer and some checks look at
# nothing but the main file.
# Usage: tests/tidy/run.sh             what it finds, in the files' own lines; exit status 0 when that is nothing
#        tests/tidy/run.sh --planted   puts planted.cpp into a copy of a unit; each of its defects must be reported
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
here=$PWD/tests/tidy
release=$PWD/.build/release
work=$PWD/.build/tidy
rm -rf "$work"
mkdir -p "$work"

# join NAME FILE...: NAME.cpp with the text of the files, NAME.lines with the line at which each begins.
join() {
  local name=$1 at=1 file
  shift
  for file in "$@"; do
    cat "$file" >> "$work/$name.cpp"
    echo "$at ${file#"$PWD"/}" >> "$work/$name.lines"
    at=$((at + $(wc -l < "$file")))
  done
}

# Every unit that src is compiled as, with its options.
jq -r --arg src "$release/src/" --arg root "$PWD/src/" \
  '.[] | select((.file | startswith($src)) or (.file | startswith($root))) | .file' \
  "$release/compile_commands.json" > "$work/units"
while read -r unit; do
  name=$(basename "${unit%.*}")
  mapfile -t files < <(sed -nE 's/^#include "(.*\.cpp)"$/\1/p' "$unit" | grep "^$PWD/src/" || true)
  [[ ${#files[@]} -gt 0 ]] || files=("$unit")
  join "$name" "${files[@]}"
  jq --arg unit "$unit" --arg joined "$work/$name.cpp" \
    '.[] | select(.file == $unit) | .file = $joined | .command |= (split($unit) | join($joined))' \
    "$release/compile_commands.json" > "$work/$name.command"
done < "$work/units"
jq -s . "$work"/*.command > "$work/compile_commands.json"
if ! diff <(find src -name '*.cpp' | sort) <(cut -d ' ' -f 2 "$work"/*.lines | sort) > "$work/missing"; then
  echo "tidy: the units are not all of src (< in no unit)"
  cat "$work/missing"
  exit 1
fi

# GCC has flags that clang does not know. The counts of suppressed warnings, mostly of system headers, tell nothing.
tidy() {
  local name=$1 status=0
  clang-tidy --quiet -p "$work" --extra-arg=-Wno-unknown-warning-option "$work/$name.cpp" > "$work/$name.said" 2>&1 ||
    status=$?
  awk -v lines="$work/$name.lines" -v joined="$work/$name.cpp:" '
    BEGIN { while ((getline line < lines) > 0) { split(line, part, " "); begin[++count] = part[1]; file[count] = part[2] } }
    /^[0-9]+ warnings? generated\.$/ { next }
    index($0, joined) == 1 {
      rest = substr($0, length(joined) + 1)
      number = rest + 0
      for (at = count; begin[at] > number; --at) {}
      sub(/^[0-9]+/, number - begin[at] + 1, rest)
      $0 = file[at] ":" rest
    }
    { print }' "$work/$name.said"
  return "$status"
}
export -f tidy
export work

if [[ ${1:-} != --planted ]]; then
  # The largest first, so that both cores are busy to the end.
  find "$work" -name '*.cpp' -printf '%s %f\n' | sort -rn | sed 's/.* //; s/\.cpp$//' |
    xargs -P 2 -I NAME bash -c 'tidy NAME'
  echo "tidy: $(wc -l < "$work/units") units, $(find src -name '*.cpp' | wc -l) files, no findings"
  exit 0
fi

# Behind the first file of the smallest unit that has several, so that it stands in the middle.
unit=$(wc -l "$work"/*.lines | awk '$1 > 1 && $2 != "total" { print $2 }' | sed 's/\.lines$//' |
  while read -r one; do stat -c '%s %n' "$one.cpp"; done | sort -n | sed -n '1s/.* //p')
unit=$(basename "$unit" .cpp)
mapfile -t files < <(cut -d ' ' -f 2 "$work/$unit.lines")
join planted "${files[0]}" "$here/planted.cpp" "${files[@]:1}"
jq --arg unit "$work/$unit.cpp" --arg joined "$work/planted.cpp" \
  '. + [.[] | select(.file == $unit) | .file = $joined | .command |= (split($unit) | join($joined))]' \
  "$work/compile_commands.json" > "$work/both.json"
mv "$work/both.json" "$work/compile_commands.json"
tidy planted > "$work/reported" || true
failures=0
while IFS=: read -r line check; do
  if ! grep -E "^tests/tidy/planted\.cpp:$line:.*\[$check[],]" "$work/reported" > /dev/null; then
    echo "FAILED: $check is not reported in line $line of planted.cpp"
    failures=$((failures + 1))
  fi
done < <(sed -nE 's|^.*// plants (.*)$|\1|p;' "$here/planted.cpp" | paste -d : <(grep -n '// plants ' "$here/planted.cpp" | cut -d : -f 1) -)
planted=$(grep -c '// plants ' "$here/planted.cpp")
# Every family that .clang-tidy enables has a defect.
while read -r family; do
  if ! grep -q "// plants $family" "$here/planted.cpp"; then
    echo "FAILED: no defect is planted for $family"
    failures=$((failures + 1))
  fi
done < <(sed -nE 's/^  ([a-z][a-z-]*)-\*,?$/\1/p; s/^  ([a-z][a-z-]*[a-z]),$/\1/p' .clang-tidy)
[[ $failures -eq 0 ]] || cat "$work/reported"
echo "tidy: $planted defects planted in a copy of $unit, $failures failed"
[[ $failures -eq 0 ]]
