#!/usr/bin/env bash
# Holds the layout of the repository: what stands at the top, which folder of src may include which (rooms.pl), the
# longest file, and the one file that may see each awkward library.
# Usage: check_layout.sh [REPOSITORY]      or      check_layout.sh --self-check
set -euo pipefail

rooms=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)/rooms.pl
top=(CMakeLists.txt CMakePresets.json README.md DEVELOPERS.md LICENSE src grammar specs tests examples)
longest_file=500

violations=0

violation() {
  echo "layout: $*"
  violations=$((violations + 1))
}

code_files() {
  find src grammar \( -name '*.cpp' -o -name '*.hpp' \) -type f 2>/dev/null | sort
}

check_top() {
  local entry
  while read -r entry; do
    if [[ $entry != .* && " ${top[*]} " != *" $entry "* ]]; then
      violation "$entry: not an agreed entry at the top (agreed: ${top[*]}, and names that start with a point)"
    fi
  done < <(ls -A)
}

check_lengths() {
  local file length
  while read -r length file; do
    violation "$file: $length lines; at most $longest_file are allowed"
  done < <(code_files | xargs -r awk -v most="$longest_file" 'FNR > most { ++over[FILENAME] }
    END { for (name in over) print over[name] + most, name }' | sort -k 2)
}

check_rooms() {
  local line
  while read -r line; do
    violation "${line#layout: }"
  done < <(perl "$rooms" || true)
}

# only_in LIBRARY PATTERN FILE: includes that match stand in that file alone.
only_in() {
  local file
  while read -r file; do
    if [[ $file != "$3" ]]; then
      violation "$file: includes $1, which only $3 may"
    fi
  done < <(code_files | xargs -r grep -lE "^[[:space:]]*#[[:space:]]*include[[:space:]]*[<\"]$2" || true)
}

# Headers of grammar/ through which PEGTL is reached, directly or by way of each other, as a pattern of include lines.
pegtl_pattern() {
  local start='^[[:space:]]*#[[:space:]]*include[[:space:]]*[<"]' reached='tao/pegtl' before='' header
  while [[ $reached != "$before" ]]; do
    before=$reached
    reached='tao/pegtl'
    while read -r header; do
      reached+="|(grammar/)?${header#grammar/}[>\"]"
    done < <(find grammar -name '*.hpp' -type f -exec grep -lE "$start($before)" {} + | sort || true)
  done
  echo "$start($reached)"
}

# PEGTL is slow to compile: its headers reach one .cpp, by way of the headers of grammar/.
check_pegtl() {
  local pattern header users
  pattern=$(pegtl_pattern)
  while read -r header; do
    violation "$header: includes PEGTL or a header that does; only headers of grammar/ may"
  done < <(find src -name '*.hpp' -type f -exec grep -lE "$pattern" {} + | sort || true)
  users=$(find src grammar -name '*.cpp' -type f -exec grep -lE "$pattern" {} + | sort || true)
  if [[ $(grep -c . <<< "$users") -ne 1 ]]; then
    violation "PEGTL must be compiled in exactly one .cpp; found: ${users:-none}"
  fi
}

# HTML that nobody escaped comes from the picture stage alone.
check_drawings() {
  local file
  while read -r file; do
    case $file in
      src/show/report/*markup.hpp | src/show/report/*html.cpp | src/show/report/*page_parts.cpp) ;;
      *) violation "$file: makes Markup of_drawing; only the parts of pages that place pictures may" ;;
    esac
  done < <(code_files | xargs -r grep -l 'of_drawing' || true)
}

check_all() {
  check_top
  check_lengths
  check_rooms
  check_pegtl
  only_in "the decimal library" 'bid_' src/base/quantity/decimal.cpp
  only_in "yaml-cpp" 'yaml-cpp/' src/judge/evidence/yaml.cpp
  only_in "libmd" '(sha2|sha256)\.h' src/base/source/digest.cpp
  only_in "Boost" 'boost/' src/judge/audit/outlier.cpp
  check_drawings
}

# A small repository without a violation.
lay_out_sound() {
  mkdir -p "$1"/{src/{base/{source,quantity},language/syntax,judge/evidence,apply/{review,window},doors/command},grammar,.build}
  cd "$1"
  touch README.md LICENSE .gitignore src/base/source/source.hpp src/language/syntax/tree.hpp
  printf '#include <tao/pegtl.hpp>\n' > grammar/rules.hpp
  printf '#include "grammar/rules.hpp"\n' > grammar/messages.hpp
  printf '#include "grammar/messages.hpp"\n#include "base/source/source.hpp"\n' > src/language/syntax/parse.cpp
  printf '#include "base/quantity/unit.hpp"\n#include <bid_functions.h>\n' > src/base/quantity/decimal.cpp
  printf '#include "base/source/source.hpp"\n' > src/base/quantity/unit.hpp
  printf '#include <yaml-cpp/yaml.h>\n#include "base/quantity/unit.hpp"\n' > src/judge/evidence/yaml.cpp
  printf '#include "judge/evidence/yaml.hpp"\n' > src/doors/command/main.cpp
  touch src/judge/evidence/yaml.hpp src/apply/review/review.hpp src/apply/window/window.hpp
}

# catches NAME COMMAND: after the command, which must succeed, the small repository must be refused.
catches() {
  local name=$1 place
  place=$(mktemp -d "$scratch/XXXXXX")
  shift
  if ! (lay_out_sound "$place/root" && eval "$*"); then
    echo "layout self-check: could not be planted: $name"
    missed=$((missed + 1))
  elif (cd "$place/root" && check_all >/dev/null && [[ $violations -eq 0 ]]); then
    echo "layout self-check: not caught: $name"
    missed=$((missed + 1))
  fi
}

self_check() {
  missed=0
  scratch=$(mktemp -d)
  trap 'rm -rf "$scratch"' EXIT
  if ! (lay_out_sound "$scratch/sound" && check_all && [[ $violations -eq 0 ]]); then
    echo "layout self-check: a sound layout is refused"
    missed=1
  fi
  catches "an extra entry at the top" 'touch notes.txt'
  catches "a room that is none" 'mkdir src/helpers'
  catches "a folder that is not in its room" 'mkdir src/judge/helpers'
  catches "a room that includes one above it" 'echo "#include \"language/syntax/tree.hpp\"" >> src/base/quantity/unit.hpp'
  catches "a folder that includes a later one of its room" 'echo "#include \"base/quantity/unit.hpp\"" >> src/base/source/source.hpp'
  catches "siblings" 'echo "#include \"apply/review/review.hpp\"" >> src/apply/window/window.hpp'
  catches "grammar that includes a room above" 'echo "#include \"judge/evidence/yaml.hpp\"" >> grammar/rules.hpp'
  catches "an include of nothing known" 'echo "#include \"other/thing.hpp\"" >> src/base/quantity/unit.hpp'
  catches "an include of a missing file" 'echo "#include \"base/source/gone.hpp\"" >> src/base/quantity/unit.hpp'
  catches "a file that is too long" 'seq -f "// line %g" 501 > src/base/source/long.cpp'
  catches "PEGTL in a second file" 'cp src/language/syntax/parse.cpp src/language/syntax/again.cpp'
  catches "PEGTL in a header of src" 'echo "#include \"grammar/rules.hpp\"" >> src/language/syntax/tree.hpp'
  catches "PEGTL nowhere" 'rm src/language/syntax/parse.cpp'
  catches "the decimal library elsewhere" 'echo "#include <bid_functions.h>" >> src/base/quantity/unit.hpp'
  catches "yaml-cpp elsewhere" 'echo "#include <yaml-cpp/yaml.h>" >> src/base/quantity/decimal.cpp'
  catches "unescaped HTML elsewhere" 'mkdir -p src/show/report && echo "Markup::of_drawing(text)" > src/show/report/other.cpp'
  echo "layout self-check: $missed not caught"
  [[ $missed -eq 0 ]]
}

if [[ ${1:-} == --self-check ]]; then
  self_check
else
  cd "${1:-$(dirname "${BASH_SOURCE[0]}")/../..}"
  check_all
  echo "layout: $violations violations"
  [[ $violations -eq 0 ]]
fi
