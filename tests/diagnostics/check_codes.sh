#!/usr/bin/env bash
# Every code of src/base/diagnose/code.hpp must be printed by a case of this folder, and no case may print a code that
# code.hpp does not have.
# Usage: check_codes.sh [REPOSITORY]      or      check_codes.sh --self-check
set -euo pipefail

violations=0

violation() {
  echo "codes: $*"
  violations=$((violations + 1))
}

# The texts between `code_texts{` and `};`.
codes_known() {
  sed -n '/code_texts{/,/};/p' src/base/diagnose/code.hpp | grep -oE '"[^"]+"' | tr -d '"' | sort -u
}

# "place: error: message [code]" at the start of a printed diagnostic; the excerpt below it is indented. A finding of
# the audit stands in its section of the report, indented by two blanks: "  place: message [audit.code]".
codes_printed() {
  find tests/diagnostics -name '*.case' -exec cat {} + |
    sed -nE 's/^([^ ].*: )?(error|warning|note): .* \[([a-z.-]+)\]$/\3/p
             s/^  [^ ]+:[0-9]+:[0-9]+: .* \[(audit\.[a-z-]+)\]$/\1/p' | sort -u
}

check_all() {
  local code
  if [[ -z $(codes_known) ]]; then
    violation "src/base/diagnose/code.hpp: no codes found in code_texts"
  fi
  while read -r code; do
    violation "$code: no case under tests/diagnostics prints it"
  done < <(comm -23 <(codes_known) <(codes_printed))
  while read -r code; do
    violation "$code: printed by a case, but not a code of src/base/diagnose/code.hpp"
  done < <(comm -13 <(codes_known) <(codes_printed))
}

# A small repository in which every code is printed.
lay_out_sound() {
  mkdir -p "$1"/{src/base/diagnose,tests/diagnostics/rules}
  cd "$1"
  printf 'enum class Code { unit_unknown, file_unreadable };\n' > src/base/diagnose/code.hpp
  printf 'constexpr std::array code_texts{\n    "unit.unknown",\n    "file.unreadable",\n};\n' >> src/base/diagnose/code.hpp
  printf '=== error\na.plumb:1:2: error: found `x` [unit.unknown]\n  1 | x\n' > tests/diagnostics/rules/unit.case
  printf '=== error\nerror: cannot read `x` [file.unreadable]\n' > tests/diagnostics/rules/file.case
}

# catches NAME COMMAND: after the command the small repository must be refused.
catches() {
  local name=$1 place
  place=$(mktemp -d "$scratch/XXXXXX")
  shift
  if (lay_out_sound "$place/root" && eval "$*" && check_all >/dev/null && [[ $violations -eq 0 ]]); then
    echo "codes self-check: not caught: $name"
    missed=$((missed + 1))
  fi
}

self_check() {
  missed=0
  scratch=$(mktemp -d)
  trap 'rm -rf "$scratch"' EXIT
  if ! (lay_out_sound "$scratch/sound" && check_all && [[ $violations -eq 0 ]]); then
    echo "codes self-check: a sound repository is refused"
    missed=1
  fi
  catches "a code that no case prints" 'sed -i "s/^};/    \"unit.dimension\",\n};/" src/base/diagnose/code.hpp'
  catches "a code whose case is gone" 'rm tests/diagnostics/rules/unit.case'
  catches "a code that only a comment of a case names" 'sed -i "s/^a.plumb.*/# about: [unit.unknown]/" tests/diagnostics/rules/unit.case'
  catches "a code that only an excerpt shows" 'sed -i "s/^a.plumb.*/  1 | error: x [unit.unknown]/" tests/diagnostics/rules/unit.case'
  catches "a printed code that does not exist" 'echo "error: found it [unit.invented]" >> tests/diagnostics/rules/file.case'
  catches "a list of codes that cannot be found" 'sed -i "s/code_texts/texts/" src/base/diagnose/code.hpp && rm tests/diagnostics/rules/*'
  echo "codes self-check: $missed not caught"
  [[ $missed -eq 0 ]]
}

if [[ ${1:-} == --self-check ]]; then
  self_check
else
  cd "${1:-$(dirname "${BASH_SOURCE[0]}")/../..}"
  check_all
  echo "codes: $violations violations"
  [[ $violations -eq 0 ]]
fi
