#!/usr/bin/env bash
# The programs that judge most records of an archive against the evaluator that judges a review: the same bytes, for
# records of many kinds against every shipped specification, whatever came before them: sheets and objects of one archive,
# columns that stay empty for the first records and for stretches behind them, one thread and several.
#   tests/sweep/in_full.sh PLUMBRULE [RECORDS] [SEED]
# The records are invented; values lie near the limits of the trade, so that both verdicts are common.
set -euo pipefail
plumbrule=$(realpath "$1")
records=${2:-1200}
seed=${3:-1}
root=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

make() { # FORM LATE: ndjson or csv; 1: with columns that come late
  awk -v n="$records" -v seed="$seed" -v form="$1" -v late="$2" '
    function pick(list,   parts, count) { count = split(list, parts, "|"); return parts[1 + int(rand() * count)] }
    function near(middle, spread, decimals) { return sprintf("%." decimals "f", middle + spread * (rand() * 2 - 1)) }
    function add(heading, value, is_text) {
      names[++columns] = heading; values[columns] = value; texts[columns] = is_text
    }
    function record(row) {
      columns = 0
      add("mix", (rand() < 0.01 ? pick(" |  |\t") : "") (rand() < 0.01 ? "" : "M-" row), 1)
      add("classes; traffic", rand() < 0.02 ? "heavie" : pick("light|medium|heavy"), 1)
      add("classes; course", pick("surface|levelling|surface"), 1)
      add("date", rand() < 0.01 ? "2026-02-30" : "2026-03-20", 1)
      add("abrasion_loss; soak 1 h (g/m2)", near(500, 90, int(rand() * 4)), 0)
      add("abrasion_loss; soak 6 d (g/m2)", near(750, 150, int(rand() * 2)), 0)
      add("abrasion_loss_by_foot; soak 1 h (g/ft2)", near(50, 8, 1), 0)
      add("cohesion; cure 30 min (kg-cm)", near(12, 2, 1), 0)
      add("cohesion; cure 60 min (kg-cm)", near(20, 2, 2), 0)
      add("cohesion; cure 60 min; replicates", rand() < 0.01 ? 1 : 3, 0)
      add("sand_adhesion (g/m2)", near(538, 60, int(rand() * 3)), 0)
      add("sand_adhesion; result 2 (g/m2)", near(538, 60, int(rand() * 3)), 0)
      add("sand_adhesion; tested", rand() < 0.01 ? "2025-03-09" : "2026-03-09", 1)
      add("lateral_displacement; rolling 1000 cycles (%)", near(5, 1, 2), 0)
      add("vertical_displacement; rolling 1000 cycles (%)", near(10, 2, 1), 0)
      add("mix_time; temperature 25 degC (s)", rand() < 0.1 ? "180 or more" : near(180, 60, 0), 0)
      add("wet_stripping (%)", near(90, 5, 0), 0)
      add("sand_equivalent", near(62, 8, 0), 0)
      add("passing; sieve No. 4 (%)", near(80, 12, 1), 0)
      add("passing; sieve No. 8 (%)", near(57, 14, 1), 0)
      add("passing; sieve No. 16 (%)", near(39, 13, 1), 0)
      add("passing; sieve No. 200 (%)", near(10, 5, 1), 0)
      add("job_mix; residual_binder (% of dry aggregate)", rand() < 0.02 ? near(7.5, 2, 2) : 7.5, 0)
      add("residual_binder (% of dry aggregate)", near(7.5, 2, 2), 0)
      add("mineral_filler (% of dry aggregate)", near(1.5, 1.7, 2), 0)
      add("specimen_note", "", 1)
      if (rand() < 0.01) values[1 + int(rand() * columns)] = pick("-3|1e3|007|12,5|0.0|1234567890123|x")
    }
    function quoted(value) { gsub(/"/, "\\\"", value); gsub(/\t/, "\\t", value); return "\"" value "\"" }
    BEGIN {
      srand(seed)
      for (row = 1; row <= n; row++) {
        record(row)
        line = ""
        for (at = 1; late && row % 200 == 1 && at < columns; at++) {
          begin[at] = row + (rand() < 0.4 ? int(rand() * 200) : rand() < 0.1 ? 200 : 0)
        }
        for (at = 1; at < columns; at++) {
          given = rand() >= (names[at] ~ /classes|date|job_mix/ ? 0.003 : names[at] ~ /replicates|tested|result 2/ ? 0.3 : 0.03)
          given = given && !(late && row < begin[at])
          number = !texts[at] && values[at] ~ /^-?[0-9.]+$/
          if (form == "csv") {
            if (row == 1) heading = heading (at > 1 ? "," : "") names[at]
            line = line (at > 1 ? "," : "") (given ? values[at] : "")
          } else if (given || rand() < 0.5) {
            line = line (line == "" ? "" : ",") "\"" names[at] "\":" (given ? (number ? values[at] : quoted(values[at])) : "null")
          }
        }
        if (form == "ndjson" && rand() < 0.1) line = line ",\"note\":\"x\""
        if (form == "csv" && rand() < 0.003) line = line ",5"
        if (form == "csv" && row == 1) print (late ? "\n \n" : "") heading
        print form == "csv" ? line : "{" line "}"
      }
    }'
}

mkdir "$work/archive"
for form in csv ndjson; do
  make "$form" 0 >"$work/archive/1.$form"
  make "$form" 1 >"$work/archive/2.$form"
done

# sweep_as NAME OPTION...
sweep_as() {
  local name=$1 status=0
  shift
  (cd "$work" && "$plumbrule" sweep archive --against "$root/$against" --format json "$@" --verdicts "$name.verdicts" \
    --out "$name.summary" 2>"$name.errors") || status=$?
  if [[ $status -gt 2 ]]; then
    echo "sweep, $name: status $status: $(head -3 "$work/$name.errors")"
    exit 1
  fi
}

failed=0
for against in specs specs/issa_a143_2010.plumb; do
  sweep_as full --in-full
  for threads in 1 3; do
    sweep_as quick --threads "$threads"
    for output in verdicts summary errors; do
      if ! cmp "$work/quick.$output" "$work/full.$output"; then
        diff "$work/quick.$output" "$work/full.$output" | head -4 | cut -c 1-400
        failed=1
      fi
    done
  done
  echo "$against: $(grep -c '"specification"' "$work/quick.verdicts") verdicts, $(grep -c . "$work/quick.errors") lines of" \
    "errors, compared"
  [[ $(grep -c '"fails":\["' "$work/quick.verdicts") -gt 100 ]] || { echo "too few failures to tell anything"; failed=1; }
done
exit "$failed"
