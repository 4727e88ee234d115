#!/usr/bin/env bash
# Writes the seed corpora and the dictionary into a folder: shipped rules, bundled submittals, and the texts of all
# cases. Usage: make_seeds.sh FOLDER
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
out=$1
mkdir -p "$out/rules" "$out/submittals" "$out/forms"
cp "$root"/specs/*.plumb "$root"/specs/*/*.plumb "$root"/examples/*/*.plumb "$out/rules/"
cp "$root"/examples/submittals/*.yaml "$out/submittals/"
find "$root/tests" -name '*.case' -print0 | sort -z | while IFS= read -r -d '' case; do
  awk -v rules="$out/rules/" -v forms="$out/forms/" -v submittals="$out/submittals/" -v name="$(basename "$case" .case)" '
    /^=== / { target = ""
              file = $3; gsub(/[^A-Za-z0-9._-]/, "_", file)
              if ($2 == "file" && file ~ /\.plumb$/) target = rules name "-" file
              if ($2 == "file" && file ~ /\.yaml$/) target = submittals name "-" file
              if ($2 == "file" && file ~ /\.(json|csv)$/) target = forms name "-" file
              next }
    target != "" { print > target }' "$case"
done
sed -n 's/^ *"\([a-z]*\)".*/\1/p; s/, *"\([a-z]*\)"/\n\1\n/gp' "$root/grammar/words.hpp" |
  grep -oE '^[a-z]+$' | sort -u | sed 's/.*/"&"/' >"$out/words.dict"
printf '%s\n' '"g/m2"' '"g/ft2"' '"kg-cm"' '"N.m"' '"degC"' '"% of dry_aggregate"' '"No. 4"' '"538"' '"under soak 1 h"' \
  '"shall be at most"' '"plumbrule 1"' '"submittal: 1"' '"results:"' '"- measure:"' '"specimens:"' '"series:"' \
  '"reported:"' '"under:"' '"job_mix:"' '"180 s or more"' '"by value in g in points"' '"at most 0.7 g: 4"' \
  '"otherwise: 0"' '"; specimen 1"' '"; soak 1 h"' '"; row 1; "' '"job_mix; "' '"; result 2"' '"\\u00e9"' \
  '"; at "' '"; clock cure; begin"' '"material 1; "' >>"$out/words.dict"
