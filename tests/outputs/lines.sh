#!/usr/bin/env bash
# Prints command lines, one a line, that make every output of every command from the bundled files. They run in the
# repository's folder.
# Usage: lines.sh [REPOSITORY]
set -euo pipefail
cd "${1:-$(dirname "${BASH_SOURCE[0]}")/../..}"

submittals=(examples/submittals/*.yaml)
specifications=(specs/*.plumb)
harrow=examples/harrow/harrow_512.plumb
amendment=examples/harrow/harrow_sp_14.plumb
mixes=examples/sheets/mixes.csv

say() { printf '%s\n' "$*"; }

reviews() {
  local submittal rules form
  for submittal in "${submittals[@]}"; do
    for rules in "$harrow" "${specifications[@]}"; do
      for form in text json; do
        say review "$submittal" --against "$rules" --format "$form"
      done
    done
    for form in html markdown sarif junit; do
      say review "$submittal" --against "$harrow" --against specs/ohio_421_2010.plumb --format "$form"
      say review "$submittal" --against "$harrow" --with "$amendment" --on 2026-04-01 --format "$form"
    done
    for form in text json html markdown; do
      say review "$submittal" --against specs --against examples/harrow --matrix --format "$form"
    done
    say review "$submittal" --against "$harrow" --detail short
    say review "$submittal" --against "$harrow" --explain 512.3.2
    say review "$submittal" --against "$harrow" --explain 512.3.2 --format json
    say review "$submittal" --against "$harrow" --with "$amendment" --on 2020-01-01
  done
  for form in 1 HX-2 mix=HX-2 9; do
    say review "$mixes" --record "$form" --against "$harrow"
  done
  say review "$mixes" --against "$harrow"
  say review missing.yaml --against "$harrow"
  say review "${submittals[0]}" --against missing.plumb
  say review "${submittals[0]}" --against "$harrow" --explain 999
}

windows() {
  local submittal form
  for submittal in "${submittals[@]}"; do
    for form in text json html; do
      say window "$submittal" --against "$harrow" --tolerance 0.2% --format "$form"
      say window "$submittal" --against specs --curve parabola --format "$form"
    done
    say window "$submittal" --against "$harrow" --detail short
    say window "$submittal" --against "$harrow" --explain 512.3.1
    say window "$submittal" --against "$harrow" --vary residual_binder --on 2026-04-01
  done
  say window "${submittals[0]}" --against "$harrow" --vary nothing
}

followups() {
  local form before after
  for form in text json html markdown; do
    for before in fails incomplete trials; do
      for after in resubmitted complies seeded clean_twin; do
        say follow-up examples/submittals/$before.yaml examples/submittals/$after.yaml --against "$harrow" --format "$form"
      done
    done
    say follow-up examples/submittals/fails.yaml examples/submittals/resubmitted.yaml --against specs --format "$form"
  done
}

rules() {
  local file form other
  for file in "$harrow" "${specifications[@]}"; do
    for form in text markdown html; do
      say recite "$file" --format "$form"
    done
    say recite "$file" --units customary
    say recite "$file" --units metric
    say tidy --check "$file"
    say tidy - --input "$file"
    for form in text json html markdown; do
      say contrast "$file" specs/issa_a143_2010.plumb --format "$form"
      say contrast "$harrow" "$file" --archive examples --format "$form"
    done
  done
  for form in text json html markdown; do
    say contrast "$harrow" --with "$amendment" --archive examples/submittals --format "$form"
  done
  for form in text json markdown rules; do
    say envelope specs/issa_a143_2010.plumb specs/ohio_421_2010.plumb --class course=surface --class aggregate_type=type_III --format "$form"
    say envelope specs --format "$form"
    say envelope "$harrow" specs/issa_a143_2010.plumb --format "$form"
    say envelope specs examples/harrow/harrow_512.plumb --class aggregate_type=type_II --format "$form"
  done
  for form in text json sarif junit; do
    say proof specs examples --format "$form"
    say proof specs examples --remarks --format "$form"
    say proof "$amendment" --format "$form"
  done
  say proof examples/submittals
  say recite specs
}

archives() {
  local rules
  for rules in "$harrow" "${specifications[@]}" specs; do
    say sweep examples/sheets examples/submittals --against "$rules"
    say sweep examples/sheets examples/submittals --against "$rules" --in-full --format json
    say sweep examples/sheets examples/submittals --against "$rules" --verdicts - --digests
    say sweep examples/sheets examples/submittals --against "$rules" --verdicts - --verdicts-as csv --threads 1
  done
  local submittal form
  for submittal in "${submittals[@]}" "$mixes"; do
    for form in yaml json csv; do
      say transcribe "$submittal" --format "$form"
      say transcribe "$submittal" --record HX-2 --format "$form"
    done
  done
  for form in man bash zsh fish; do
    say manual --form "$form"
  done
  for form in review window follow-up proof recite contrast envelope tidy transcribe sweep manual; do
    say "$form" --help
  done
  say --help
  say --version
}

reviews
windows
followups
rules
archives
