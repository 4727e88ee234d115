#!/usr/bin/env bash
# Holds grammar/language.md and the grammar's headers together:
#   - section 12 defines exactly the rules of items.hpp, phrases.hpp and tokens.hpp, the exempt ones left out;
#   - every rule that section 12 mentions is defined there, and every quoted word is one of section 2.3;
#   - the words of section 2.3 are those of words.hpp, and those of the keys and of `reserved` in tokens.hpp.
# Usage: grammar_names.sh [REPOSITORY]      or      grammar_names.sh --self-check
set -euo pipefail
export LC_ALL=C

# Structs that are no rule of the language, each with its reason. A struct k_* is a keyword: quoted in section 12.
declare -A exempt=(
  [key]="template: a word and its end" [word_end]="look-ahead: described in the introduction of section 12"
  [lead]="a clause's word, named for its action only" [clauses]="template: repetition and recovery"
  [item_opener]="list of words: section 2.3" [clause_opener]="list of words: section 2.3"
  [phrase_word]="list of words: section 2.3" [reserved]="list of words: section 2.3"
  [no_decimal_comma]="look-ahead: a remark at number" [no_exponent]="look-ahead: a remark at number"
  [call_ahead]="look-ahead, matches nothing itself" [statistic_ahead]="look-ahead, matches nothing itself"
  [assertion_ahead]="look-ahead, matches nothing itself"
  [conditions_term]="look-ahead: a remark at condition_or_term" [in_before_unit]="look-ahead: a remark at reading"
  [same_line]="look-ahead, matches nothing itself" [more_than_a_word]="look-ahead: a remark at one_word"
  [demand_ahead]="look-ahead, matches nothing itself" [class_ahead]="look-ahead, matches nothing itself"
  [no_second_class]="look-ahead: what follows a class is an error in any case" [no_or]="look-ahead, as no_second_class"
  [limit_by]="the word by, named for its message only" [row_colon]="a colon, named for its message only"
  [each_in_lot]="the word each, named for its message only"
  [misspelt_clause]="look-ahead: a remark at number_unit and one_word"
  [row_word]="look-ahead: a remark at unit_symbol" [refusal_reason]="a because_clause, named for its message only"
  [acceptance_reason]="a because_clause, named for its message only"
  [withdrawal_reason]="a because_clause, named for its message only"
  [any_token]="recovery after an error" [past_failure]="recovery after an error" [next_item]="recovery after an error"
  [stopped_here]="recovery after an error" [amendment_word]="recovery: what ends a requirement in an amendment"
  [amendment_opener]="recovery: where a clause may begin"
  [broken_clause]="recovery after an error" [broken_item]="recovery after an error"
  [broken_start]="recovery after an error" [unknown_clause]="reports an error" [unknown_item]="reports an error"
  [provenance_opener]="recovery: where a clause may begin" [measure_opener]="recovery: where a clause may begin"
  [table_opener]="recovery: where a clause may begin" [grading_opener]="recovery: where a clause may begin"
  [specification_opener]="recovery: where a clause may begin"
  [requirement_opener]="recovery: where a clause may begin" [example_opener]="recovery: where a clause may begin"
)

violations=0

violation() {
  echo "grammar names: $*"
  violations=$((violations + 1))
}

# section HEADING: the lines of a section of language.md that stand in fences.
fenced() {
  awk -v heading="$1" '
    /^##/ { inside = index($0, heading) == 1; next }
    /^```/ { fence = !fence; next }
    inside && fence' grammar/language.md
}

# The lines of section 12 as NAME = RIGHT SIDE, without remarks.
rules() { fenced "## 12 " | sed -E 's/ +-- .*//'; }
defined_rules() { rules | sed -nE 's/^([a-z_]+) += .*/\1/p'; }
mentioned_rules() { rules | sed -E 's/^[a-z_]+ += //; s/"[^"]*"//g; s/<[^>]*>//g' | grep -oE '[a-z_]+' | sort -u; }
quoted_words() { rules | grep -oE '"[a-z]+"' | tr -d '"' | sort -u; }
header_structs() { sed -nE 's/^struct ([a-z_]+)( |$|;).*/\1/p' grammar/{tokens,phrases,items}.hpp | sort -u; }

# documented_words LINE: the words below a line of section 2.3.
documented_words() {
  fenced "### 2.3 " | awk -v line="$1" '/:$/ { inside = $0 == line; next } inside' | tr -s ' ' '\n' | sed '/^$/d' | sort
}
header_words() { awk -v array="$1{" 'index($0, array) { inside = 1 } inside; /};/ { inside = 0 }' grammar/words.hpp |
  grep -oE '"[a-z]+"' | tr -d '"' | sort; }

# The words of the keys k_* that a struct of tokens.hpp lists, or of all keys.
all_keys() { sed -nE 's/^PLUMBRULE_KEY\((k_[a-z_]+), "([a-z]+)"\);/\1 \2/p' grammar/tokens.hpp | sort; }
keys_of() {
  local listed
  listed=$(awk -v struct="struct $1 " 'index($0 " ", struct) == 1 { inside = 1 } inside; /\{\};/ { inside = 0 }' \
    grammar/tokens.hpp | grep -oE 'k_[a-z_]+' | sort)
  join <(echo "$listed") <(all_keys) | cut -d ' ' -f 2 | sort
}

# differ WHAT_THE_FIRST_HAS WHAT_THE_SECOND_HAS FIRST SECOND: lists of one word a line.
differ() {
  local name
  while read -r name; do
    [[ -z $name ]] || violation "\`$name\` $1"
  done < <(comm -23 <(sort -u <<< "$3") <(sort -u <<< "$4"))
  while read -r name; do
    [[ -z $name ]] || violation "\`$name\` $2"
  done < <(comm -13 <(sort -u <<< "$3") <(sort -u <<< "$4"))
}

check_rules() {
  local structs exempted defined name
  structs=$(header_structs | grep -v '^k_')
  exempted=$(printf '%s\n' "${!exempt[@]}" | sort)
  while read -r name; do
    violation "\`$name\` is exempt (${exempt[$name]}), but no header declares it"
  done < <(comm -13 <(echo "$structs") <(echo "$exempted"))
  structs=$(comm -23 <(echo "$structs") <(echo "$exempted"))
  defined=$(defined_rules)
  differ "is a struct of the headers and not defined in section 12" \
    "is defined in section 12 and no struct of the headers" "$structs" "$defined"
  while read -r name; do
    violation "\`$name\` is defined twice in section 12"
  done < <(sort <<< "$defined" | uniq -d)
  while read -r name; do
    violation "section 12 mentions \`$name\` and does not define it"
  done < <(comm -23 <(mentioned_rules) <(sort -u <<< "$defined"))
}

check_words() {
  local kind opens documented reserved='' plain name
  for kind in item:item_opener:"open an item" clause:clause_opener:"open a clause" \
    phrase:phrase_word:"words inside a phrase"; do
    opens=${kind##*:}
    [[ $opens == words* ]] || opens="words that $opens"
    documented=$(documented_words "$opens:")
    [[ -n $documented ]] || violation "section 2.3 has no list \`$opens:\`"
    differ "is a word of section 2.3 ($opens) and not of words.hpp" "is a word of words.hpp and not of section 2.3 ($opens)" \
      "$documented" "$(header_words "${kind%%:*}_words")"
    name=${kind#*:} name=${name%%:*}
    differ "is a word of section 2.3 ($opens) and not of $name in tokens.hpp" \
      "is a word of $name in tokens.hpp and not of section 2.3 ($opens)" "$documented" "$(keys_of "$name")"
    reserved+=$documented$'\n'
  done
  plain=$(documented_words "words that are not reserved:")
  differ "is a key of tokens.hpp and not a word of section 2.3" "is a word of section 2.3 and not a key of tokens.hpp" \
    "$(all_keys | cut -d ' ' -f 2)" "$(printf '%s%s' "$reserved" "$plain")"
  while read -r name; do
    violation "section 12 quotes \`$name\`, which is not a word of section 2.3"
  done < <(comm -23 <(quoted_words) <(printf '%s%s\n' "$reserved" "$plain" | sort -u))
}

check() {
  cd "$1"
  check_rules
  check_words
  echo "grammar names: $(defined_rules | wc -l) rules, $(all_keys | wc -l) words, $violations violations"
  [[ $violations -eq 0 ]]
}

# seed WORDS FILE SED_SCRIPT PART: the check must fail on the seeded copy, say the part, and the seed must change it.
seed() {
  local copy=$work/copy printed=$work/printed status=0
  rm -rf "$copy"
  mkdir -p "$copy"
  cp -r "$repository/grammar" "$copy/grammar"
  sed -i -E "$3" "$copy/grammar/$2"
  if cmp -s "$repository/grammar/$2" "$copy/grammar/$2"; then
    echo "FAILED: $1 (the seed changes nothing)"
    failures=$((failures + 1))
    return
  fi
  bash "$script" "$copy" > "$printed" 2>&1 || status=$?
  if [[ $status -eq 0 ]] || ! grep -qF -- "$4" "$printed"; then
    echo "FAILED: $1 (status $status, expected a violation with: $4)"
    sed 's/^/    /' "$printed"
    failures=$((failures + 1))
  fi
}

self_check() {
  failures=0
  work=$(mktemp -d)
  trap 'rm -rf "$work"' EXIT
  script=$(realpath "${BASH_SOURCE[0]}")
  repository=$(realpath "$(dirname "$script")/../..")
  bash "$script" "$repository" || failures=1
  seed "a rule missing in section 12" language.md '/^band_or_none +=/d' '`band_or_none` is a struct'
  seed "a rule too many in section 12" language.md 's/^(band +=.*)/\1\nstripe = "no"/' '`stripe` is defined in section 12'
  seed "a struct that is not described" phrases.hpp 's/^struct comma .*/&\nstruct half_comma : comma {};/' '`half_comma` is a struct'
  seed "a struct over two lines" items.hpp 's/^struct condition_item$/struct condition_thing/' '`condition_thing` is a struct'
  seed "a struct taken away" items.hpp '/^struct cite_clause /d' '`cite_clause` is defined in section 12'
  seed "a needless exemption" tokens.hpp 's/^struct reserved /struct reserved_word /' '`reserved` is exempt'
  seed "a rule mentioned and not defined" language.md 's/^(comma +=).*/\1 stop/' 'mentions `stop`'
  seed "a word missing in section 2.3" language.md 's/^(  vocabulary category) condition/\1/' '`condition` is a word of words.hpp'
  seed "a word too many in section 2.3" language.md 's/^  ties above/  tie ties above/' '`tie` is a word of section 2.3'
  seed "a word missing in words.hpp" words.hpp 's/"mend", //' '`mend` is a word of section 2.3'
  seed "a key that is not reserved" tokens.hpp 's/k_mend, k_given, /k_given, /' '`mend` is a word of section 2.3'
  seed "a new key" tokens.hpp 's/^(PLUMBRULE_KEY)\(k_no, .*/&\n\1(k_yes, "yes");/' '`yes` is a key of tokens.hpp'
  seed "a word that is not reserved left out" language.md 's/ designation no limit / designation limit /' '`no` is a key'
  seed "a quoted word that is none" language.md 's/^(note_clause +=) "note"/\1 "remark"/' 'quotes `remark`'
  echo "grammar names self-check: $failures failed"
  [[ $failures -eq 0 ]]
}

case ${1:-} in
  --self-check) self_check ;;
  *) check "${1:-$(dirname "${BASH_SOURCE[0]}")/../..}" ;;
esac
