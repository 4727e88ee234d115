#!/usr/bin/env bash
# Every numbered section of grammar/language.md (x.y) has a conformance case that cites it, and every section that a
# case cites is there. Sections 1 (purpose) and 12 (grammar) have no numbered parts and need none: grammar_names.sh and
# the cases of all other sections hold them.
# Usage: sections.sh CASE_RUNNER [REPOSITORY]      or      sections.sh CASE_RUNNER --self-check
set -euo pipefail
export LC_ALL=C
usage="usage: sections.sh CASE_RUNNER [REPOSITORY] or sections.sh CASE_RUNNER --self-check"
runner=$(realpath "${1:?$usage}")

headings() { sed -nE 's/^### ([0-9]+\.[0-9]+) .*/\1/p' "$1/grammar/language.md" | sort; }

check() {
  local cited section violations=0
  cited=$("$runner" --root "$1" --list-sections "$1/tests/conformance" | cut -f 1 | sort -u)
  [[ -n $(headings "$1") ]] || { echo "sections: grammar/language.md has no numbered section"; return 1; }
  while read -r section; do
    echo "sections: no case under tests/conformance cites section $section"
    violations=$((violations + 1))
  done < <(comm -23 <(headings "$1") <(echo "$cited"))
  while read -r section; do
    echo "sections: a case cites section $section, which grammar/language.md does not have"
    violations=$((violations + 1))
  done < <(comm -13 <(headings "$1") <(echo "$cited"))
  while read -r section; do
    echo "sections: section $section stands twice in grammar/language.md"
    violations=$((violations + 1))
  done < <(headings "$1" | uniq -d)
  echo "sections: $(headings "$1" | wc -l) sections, $violations violations"
  [[ $violations -eq 0 ]]
}

# judge WORDS WANTED_STATUS PART LANGUAGE_TEXT: what the check says of one case that cites 2.1 and 2.2.
judge() {
  local status=0
  printf '%b' "$4" > "$work/grammar/language.md"
  (check "$work") > "$work/printed" 2>&1 || status=$?
  if [[ $status -ne $2 ]] || ! grep -qF -- "$3" "$work/printed"; then
    echo "FAILED: $1 (status $status, wanted $2 and: $3)"
    sed 's/^/    /' "$work/printed"
    failures=$((failures + 1))
  fi
}

self_check() {
  failures=0
  work=$(mktemp -d)
  trap 'rm -rf "$work"' EXIT
  mkdir -p "$work/grammar" "$work/tests/conformance"
  printf '%s\n' '# about: a stand-in' '# section: 2.1, 2.2' '=== run true' > "$work/tests/conformance/one.case"
  local both='## 1 Purpose\n## 2 Text\n### 2.1 One\n### 2.2 Two\n## 12 Grammar\n'
  judge "every section cited" 0 "2 sections, 0 violations" "$both"
  judge "a section without a case" 1 "cites section 2.3" "$both### 2.3 Three\n"
  judge "a cited section that is not there" 1 "cites section 2.2, which" "## 2 Text\n### 2.1 One\n"
  judge "a section twice" 1 "stands twice" "$both### 2.2 Two\n"
  judge "no section at all" 1 "has no numbered section" "## 1 Purpose\n"
  echo "sections self-check: $failures failed"
  [[ $failures -eq 0 ]]
}

case ${2:-} in
  --self-check) self_check ;;
  *) check "$(realpath "${2:-$(dirname "${BASH_SOURCE[0]}")/../..}")" ;;
esac
