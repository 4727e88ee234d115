#!/usr/bin/env bash
# What sweeping an archive costs, beside other ways to the same verdicts on the same records: one command, one run, one
# machine. Prints Markdown. Exit status 1 if the counts of any two methods differ; the figures themselves pass or fail
# nothing. Needs jq, sqlite3, Node.js with npm (the validator comes from the registry), and 3 GB of disk.
#
#   tests/bench/sweep.sh [RECORDS...]          default: 10000 100000 1000000
#
# Every command runs three times (RUNS); clock and CPU are medians, memory the greatest. Costs are compared by CPU time,
# which other work on the machine disturbs least. SQLite and the validator get at most 100,000 records, jq 10,000.
# Whether a record costs the same in archives of all sizes is told twice: by the least CPU time of many runs, and, if
# valgrind is installed, by counted instructions, which no other work disturbs.
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
plumbrule=${PLUMBRULE:-$root/.build/release/src/plumbrule}
built=${BENCH:-$root/.build/release/tests/bench}
runs=${RUNS:-3}
work=$root/.build/bench
mkdir -p "$work/node"
source "$root/tests/bench/parts.sh"
sizes=("$@")
[[ $# -gt 0 ]] || sizes=(10000 100000 1000000)
greatest=${sizes[-1]}
figures=$work/figures.tsv
notes=$work/notes.md
steady=$work/steady.tsv  # CPU seconds and instructions of sweeps of one thread, by records
: >"$figures"
: >"$notes"
: >"$steady"
wrong=0

archive() { echo "$work/records-$1.ndjson"; }
at_most() { echo $((greatest < $1 ? greatest : $1)); }

# make SIZE: an archive, unless it is there, and the counts of the comparisons by hand.
make() {
  [[ -s $(archive "$1") ]] || "$built/make_records" "$1" >"$(archive "$1")"
  "$built/rivals" compare "$(archive "$1")" >"$work/hand.$1"
}

# cost COMMAND...: sets clock, cpu (seconds) and peak (KiB). Exit statuses up to 2 are verdicts. The output of the last
# run is left in $work/out.
cost() {
  local run status
  : >"$work/runs"
  for ((run = 0; run < runs; run++)); do
    "$built/measure" "$work/out" "$@" 2>"$work/said" | tee -a "$work/runs" | cut -f 4 >"$work/status"
    status=$(cat "$work/status")
    if [[ $status -gt 2 ]]; then
      echo "sweep.sh: exit status $status of: $*" >&2
      cat "$work/said" >&2
      exit 1
    fi
  done
  clock=$(median 1)
  cpu=$(median 2)
  peak=$(cut -f 3 "$work/runs" | sort -n | tail -1)
}

median() { cut -f "$1" "$work/runs" | sort -n | sed -n "$(((runs + 1) / 2))p"; }

row() { printf '%s\t%s\t%s\t%s\t%s\t%s\n' "$1" "$2" "$3" "${4:-$clock}" "${5:-$cpu}" "${6:-$peak}" >>"$figures"; }

check() { agree "$@" >>"$notes" || wrong=1; }

# instructions COMMAND...: how many it carries out, or nothing without valgrind.
instructions() {
  command -v valgrind >/dev/null || return 0
  valgrind --tool=callgrind --callgrind-out-file=/dev/null "$@" 2>&1 | sed -n 's/.*Collected : //p'
}

# Rows of $steady, of one thread. The sizes take turns, as the machine is slower at some times than at others, and their
# archives are written anew one after the other: the system copies a file that has lain in memory for long up to twice as
# slowly as one that was just written, which would be taken for a cost of the sweep.
turns=12
measure_steady() {
  local size turn
  local runs
  for size in "$few" "${sizes[@]}"; do
    cat "$(archive "$size")" >"$work/level-$size.ndjson"
    : >"$work/level.$size"
  done
  for ((turn = 0; turn < turns; turn++)); do
    for size in "$few" "${sizes[@]}"; do
      runs=9
      [[ $size -lt 100000 ]] || runs=5
      [[ $size -lt 1000000 ]] || runs=1
      sweep_as "$work/level-$size.ndjson" 1
      cost "${sweep[@]}"
      cut -f 2 "$work/runs" >>"$work/level.$size"
    done
  done
  for size in "$few" "${sizes[@]}"; do
    sweep_as "$work/level-$size.ndjson" 1
    printf '%s\t%s\t%s\n' "$size" "$(sort -n "$work/level.$size" | head -1)" "$(instructions "${sweep[@]}")" >>"$steady"
    rm "$work/level-$size.ndjson"
  done
}

# What a sweep costs once: a sweep of a few records, by which the programs of all kinds of record are made; the rarest
# kind is one record in a hundred, and is made ready when it comes for the second time.
few=1000
measure_start() {
  make "$few"
  sweep_as "$(archive "$few")" 1
  cost "${sweep[@]}"
  row "sweep, the start and the kinds of record made ready" 1 "$few"
}

measure_sweep() {
  local size threads
  for size in "${sizes[@]}"; do
    make "$size"
    for threads in 1 2; do
      sweep_as "$(archive "$size")" "$threads"
      cost "${sweep[@]}"
      row sweep "$threads" "$size"
      check "sweep, $threads thread(s)" <(sweep_counts "$work/sweep.json") "$work/hand.$size"
    done
  done
}

measure_own_rivals() {
  local file
  file=$(archive "$greatest")
  cost "$built/rivals" parse "$file"
  row "(a) simdjson on demand, only reading every value" 1 "$greatest"
  cost "$built/rivals" parse-dom "$file"
  row "(a) simdjson tree, only reading every value" 1 "$greatest"
  cost "$built/rivals" compare "$file"
  check "(b) reading and comparing" "$work/out" "$work/hand.$greatest"
  row "(b) simdjson into doubles, 40 comparisons by hand" 1 "$greatest"
  cost "$built/rivals" compare-only "$file"
  check "(b) comparing alone" "$work/out" "$work/hand.$greatest"
  row "(b) the comparisons alone, over an array of structs" 1 "$greatest" "$(cat "$work/said")" "$(cat "$work/said")" 0
}

measure_jq() {
  local size
  size=$(at_most 10000)
  make "$size"
  limits_as jq
  cost jq -c -f "$work/limits.jq" "$(archive "$size")"
  check "(c) jq" <(counts_from jq "$work/out") "$work/hand.$size"
  row "(c) jq" 1 "$size"
}

# SQLite's own timer tells the query; the rest of the run is the loading.
measure_sqlite() {
  local size query
  size=$(at_most 100000)
  make "$size"
  limits_as sql "$(archive "$size")"
  cost sqlite3 :memory: ".read $work/limits.sql"
  check "(d) SQLite" <(counts_from sql "$work/out") "$work/hand.$size"
  row "(d) SQLite in memory, load and query" 1 "$size"
  query=$(sed -n 's/^Run Time: real \([0-9.]*\).*/\1/p' "$work/out")
  row "(d) SQLite in memory, the query alone" 1 "$size" "$query" "$query" 0
}

measure_validator() {
  local size file
  size=$(at_most 100000)
  file=$(archive "$size")
  cp "$rivals/package.json" "$rivals/package-lock.json" "$work/node/"
  (cd "$work/node" && npm ci --no-audit --no-fund --silent)
  limits_as schema
  limits_as merged
  cost node "$rivals/validate.mjs" "$work/node" parse "$file"
  row "(e) Node, JSON.parse alone" 1 "$size"
  cost node "$rivals/validate.mjs" "$work/node" first "$file" "$work/limits.merged"
  [[ $(grep complying "$work/out") == "$(grep complying "$work/hand.$size")" ]] || wrong=1
  echo "- (e) Node, compiled JSON Schema: $(sed -n 's/complying\t//p' "$work/out") valid records," \
    "$(sed -n 's/complying\t//p' "$work/hand.$size") by hand" >>"$notes"
  row "(e) Node, parse and compiled JSON Schema, valid or not" 1 "$size"
  cost node "$rivals/validate.mjs" "$work/node" all "$file" "$work/limits.schema"
  check "(e) Node, compiled JSON Schema, every error" "$work/out" "$work/hand.$size"
  row "(e) Node, parse and compiled JSON Schema, every error" 1 "$size"
}

# CPU seconds a record of a sweep of one thread of SIZE.
own() { awk -F '\t' -v size="$1" '$1 == "sweep" && $2 == 1 && $3 == size { print $5 / $3 }' "$figures"; }

report() {
  echo "Measured $(date -u '+%Y-%m-%d %H:%M') UTC on $(sed -n 's/^model name\s*: //p' /proc/cpuinfo | head -1)," \
    "$(nproc) cores, load $(cut -d ' ' -f 1 /proc/loadavg); $(wc -c <"$(archive "$greatest")") bytes in $greatest records."
  echo
  awk -v own="$(own "$greatest")" -f "$root/tests/bench/lines.awk" "$figures"
  echo
  awk -f "$root/tests/bench/steady.awk" "$steady"
  echo
  cat "$notes"
}

measure_start
measure_sweep
measure_steady
measure_own_rivals
measure_jq
measure_sqlite
measure_validator
report
if [[ $wrong -ne 0 ]]; then
  echo
  echo "THE COUNTS DIFFER: the figures compare different things."
  exit 1
fi
