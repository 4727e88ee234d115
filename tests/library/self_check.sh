# Sourced by compare.sh: shows on copies of one rule file and its rows that compare.sh catches each kind of mistake.
# Uses $plumbrule, $here, recited and compare of that file.
# shellcheck shell=bash
# Backticks are part of the messages and $ of the sed scripts; `here` is set by compare.sh.
# shellcheck disable=SC2016,SC2154

sample=ohio_421_2010

# fresh: an unchanged copy of the sample and its rows, which agree.
fresh() {
  rm -rf "$work/specs"
  mkdir -p "$work/specs"
  cp -r "$here/../../specs/vocabulary" "$here/../../specs/$sample.plumb" "$work/specs/"
  awk -F '\t' -v name="$sample" 'NR == 1 || $1 == name' "$here/published.tsv" > "$work/published.tsv"
}

# judge WORDS WANTED_STATUS PART: what the comparison says of the copies as they are now.
judge() {
  local status=0
  checked=$((checked + 1))
  recited "$work/specs" > "$work/recited"
  compare "$work/published.tsv" "$work/recited" > "$work/printed" 2>&1 || status=$?
  if [[ $status -ne $2 ]] || ! grep -qF -- "$3" "$work/printed"; then
    echo "FAILED: $1 (status $status, wanted $2 and: $3)"
    sed 's/^/    /' "$work/printed"
    failures=$((failures + 1))
  fi
}

# changed WORDS PART FILE SED_SCRIPT: with FILE changed by the script the comparison fails and says PART.
changed() {
  fresh
  cp "$work/$3" "$work/before"
  sed -i -E "$4" "$work/$3"
  if cmp -s "$work/before" "$work/$3"; then
    echo "FAILED: $1 (the script changed nothing)"
    failures=$((failures + 1))
  fi
  judge "$1" 1 "$2"
}

in_rule_files() {
  local file=specs/$sample.plumb
  changed "another number" '421-9: wet-track abrasion loss, soak 1 h: the rule file says `at most 451 g/m2`' \
    "$file" 's|(abrasion_loss under soak 1 h shall be at most) 450|\1 451|'
  changed "another number on a sieve" '421-2: percent passing, sieve No. 200 [ohio gradation B]: the rule file says' \
    "$file" 's|^(  sieve No\. 200 +5 % to +)18 %|\115 %|'
  changed "the other direction" 'says `at least 3 g`, published is `at most 3 g`' "$file" 's|at most 3 g$|at least 3 g|'
  changed "another unit" 'says `at most 650 g/ft2`, published is' "$file" 's|at most 650 g/m2$|at most 650 g/ft2|'
  changed "another condition" 'mix time, temperature 40 degC: published `at least 35 s` is not in the rule file' \
    "$file" 's|(shall be at least) 35 s|\1 35 s|; s|(mix_time under temperature) 40 degC shall|\1 41 degC shall|'
  changed "another class" 'residual binder content [course rut fill]: published' \
    "$file" 's|where course is rut_fill|where course is surface|'
  changed "a dropped limit" 'abrasion loss of the compatibility pill: published `at most 3 g` is not in the rule' \
    "$file" '/^requirement 421-11 /,/^requirement 421-12 /{/^requirement 421-12 /!d}'
  changed "a dropped alternative" '`spin, solid spin` in place of wet cohesion torque, cure 60 min is not in the' \
    "$file" 's/^  either (cohesion)/  \1/; /^ +or .*mode/d'
  changed "an added limit" '421-99: sand equivalent: the rule file says `at least 45`, which is not published so' \
    "$file" '$a\\nrequirement 421-99 "Invented"\n  sand_equivalent shall be at least 45'
  changed "a sieve without a limit gets one" 'which is not published so (no limit)' \
    "$file" 's|^  sieve No\. 100 +no limit|  sieve No. 100 7 % to 18 %|'
  changed "a recalled figure" 'says unverified, the mark is FOUND' \
    "$file" '/^requirement 421-9 /,/^example/s|^  status +verified|  status unverified|'
}

in_table() {
  local table=published.tsv
  changed "a row out of the table" 'which is not published so' "$table" '/compatibility pill/d'
  changed "a row twice" 'the table of published figures has this twice' "$table" '/compatibility pill/p'
  changed "a figure recalled with low confidence" 'the row is not well formed' "$table" 's|\tFOUND\t|\tMEMORY-L\t|'
  changed "a recalled figure called verified" 'says verified, the mark is MEMORY-H' \
    "$table" '/compatibility pill/s|\tFOUND\t|\tMEMORY-H\t|'
  changed "a figure left out that is there" '(left out: not sure)' "$table" '/compatibility pill/s|\t\t$|\tnot sure\t|'
  changed "a settled dispute" 'settled, so take the words out' "$table" '/compatibility pill/s|\t\t$|\t\tthree grams|'
  changed "other columns" 'it does not name the columns' "$table" '1s|measured|property|'
  fresh
  sed -i -E '/compatibility pill/s|\t3\tg\t(.*)\t$|\t4\tg\t\1\tsays 3|' "$work/$table"
  judge "a known difference" 0 'known difference: ohio_421_2010, 421-11'
  fresh
  rm "$work/specs/$sample.plumb"
  cp "$here/../../specs/kansas_mastic_treatment.plumb" "$work/specs/"
  judge "no rule file" 1 'ohio_421_2010: rule file: there is no such rule file'
  judge "no rows" 1 'kansas_mastic_treatment: rule file: the table of published figures has no row of it'
}

self_check() {
  failures=0
  checked=0
  work=$(mktemp -d)
  trap 'rm -rf "$work"' EXIT
  fresh
  judge "unchanged" 0 ' 0 known differences, 0 differences'
  in_rule_files
  in_table
  echo "library figures self-check: $checked changes, $failures failed"
  [[ $failures -eq 0 ]]
}
