#!/usr/bin/env bash
# Holds the layout of the repository: what stands at the top, which folder of src may include which, the longest
# file, and the one file that may see each awkward library.
# Usage: check_layout.sh [REPOSITORY]      or      check_layout.sh --self-check
set -euo pipefail

stages=(source diagnose quantity syntax check plan evidence evaluate explain audit window contrast followup sweep picture report command)
top=(CMakeLists.txt CMakePresets.json README.md DEVELOPERS.md LICENSE src grammar specs tests examples)
longest_file=500

violations=0

violation() {
  echo "layout: $*"
  violations=$((violations + 1))
}

# The place of a stage in the pipeline; nothing for any other word.
stage_number() {
  local at
  for at in "${!stages[@]}"; do
    if [[ ${stages[at]} == "$1" ]]; then
      echo "$at"
      return
    fi
  done
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
  while read -r file; do
    length=$(wc -l < "$file")
    if [[ $length -gt $longest_file ]]; then
      violation "$file: $length lines; at most $longest_file are allowed"
    fi
  done < <(code_files)
}

check_stage_folders() {
  local folder
  while read -r folder; do
    if [[ -z $(stage_number "$folder") ]]; then
      violation "src/$folder: not a stage (stages: ${stages[*]})"
    fi
  done < <(find src -mindepth 1 -maxdepth 1 -type d -printf '%f\n' | sort)
}

# Quoted includes name a stage's file ("quantity/unit.hpp"), a neighbour's, or one of grammar/. Code of grammar/ belongs
# to the syntax stage; files right in src/ (the program's main) stand after every stage.
check_order() {
  local file line included own other own_number
  while IFS=: read -r file line included; do
    included=$(sed -E 's/^[^"]*"([^"]*)".*/\1/' <<< "$included")
    own=$(sed -nE 's|^src/([^/]+)/.*|\1|p; s|^grammar/.*|syntax|p' <<< "$file")
    own_number=$(stage_number "$own")
    other=$(stage_number "${included%%/*}")
    if [[ $included == */* && -n $other ]]; then
      if [[ ! -f src/$included ]]; then
        violation "$file:$line: includes \"$included\", which is not there"
      elif [[ $other -gt ${own_number:-${#stages[@]}} ]]; then
        violation "$file:$line: $own includes ${included%%/*}, a later stage"
      fi
    elif [[ ! -f grammar/${included#grammar/} && ! -f $(dirname "$file")/$included ]]; then
      violation "$file:$line: includes \"$included\", which is in no stage and not in grammar/"
    fi
  done < <(code_files | xargs -r grep -HnE '^[[:space:]]*#[[:space:]]*include[[:space:]]*"' || true)
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
      src/report/markup.hpp | src/report/html.cpp | src/report/page_parts.cpp) ;;
      *) violation "$file: makes Markup of_drawing; only the parts of pages that place pictures may" ;;
    esac
  done < <(code_files | xargs -r grep -l 'of_drawing' || true)
}

check_all() {
  check_top
  check_stage_folders
  check_lengths
  check_order
  check_pegtl
  only_in "the decimal library" 'bid_' src/quantity/decimal.cpp
  only_in "yaml-cpp" 'yaml-cpp/' src/evidence/yaml.cpp
  only_in "OpenSSL" 'openssl/' src/source/digest.cpp
  only_in "Boost" 'boost/' src/audit/outlier.cpp
  check_drawings
}

# A small repository without a violation.
lay_out_sound() {
  mkdir -p "$1"/{src/{source,quantity,syntax,evidence},grammar,.build}
  cd "$1"
  touch README.md LICENSE .gitignore src/source/source.hpp src/syntax/tree.hpp
  printf '#include <tao/pegtl.hpp>\n' > grammar/rules.hpp
  printf '#include "grammar/rules.hpp"\n' > grammar/messages.hpp
  printf '#include "grammar/messages.hpp"\n#include "source/source.hpp"\n' > src/syntax/parse.cpp
  printf '#include "quantity/unit.hpp"\n#include <bid_functions.h>\n' > src/quantity/decimal.cpp
  printf '#include "source/source.hpp"\n' > src/quantity/unit.hpp
  printf '#include <yaml-cpp/yaml.h>\n#include "quantity/unit.hpp"\n' > src/evidence/yaml.cpp
  printf '#include "evidence/yaml.hpp"\n' > src/main.cpp
  touch src/evidence/yaml.hpp
}

# catches NAME COMMAND: after the command the small repository must be refused.
catches() {
  local name=$1 place
  place=$(mktemp -d "$scratch/XXXXXX")
  shift
  if (lay_out_sound "$place/root" && eval "$*" && check_all >/dev/null && [[ $violations -eq 0 ]]); then
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
  catches "a folder that is no stage" 'mkdir src/helpers'
  catches "a stage that includes a later one" 'echo "#include \"syntax/tree.hpp\"" >> src/quantity/unit.hpp'
  catches "grammar that includes a later stage" 'echo "#include \"evidence/yaml.hpp\"" >> grammar/rules.hpp'
  catches "an include of nothing known" 'echo "#include \"other/thing.hpp\"" >> src/quantity/unit.hpp'
  catches "an include of a missing file" 'echo "#include \"source/gone.hpp\"" >> src/quantity/unit.hpp'
  catches "a file that is too long" 'yes "// line" | head -n 501 > src/source/long.cpp'
  catches "PEGTL in a second file" 'cp src/syntax/parse.cpp src/syntax/again.cpp'
  catches "PEGTL in a header of src" 'echo "#include \"rules.hpp\"" >> src/syntax/tree.hpp'
  catches "PEGTL nowhere" 'rm src/syntax/parse.cpp'
  catches "the decimal library elsewhere" 'echo "#include <bid_functions.h>" >> src/quantity/unit.hpp'
  catches "yaml-cpp elsewhere" 'echo "#include <yaml-cpp/yaml.h>" >> src/quantity/decimal.cpp'
  catches "unescaped HTML elsewhere" 'mkdir src/report && echo "Markup::of_drawing(text)" > src/report/other.cpp'
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
