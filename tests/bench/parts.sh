# Parts of sweep.sh and agree.sh, which source it. They set: root, plumbrule, built (the folder of make_records, rivals
# and measure), work (a folder of their own).
rivals=$root/tests/bench/rivals
rules=$root/tests/bench/forty.plumb

# sweep_as RECORDS THREADS: the command in the array `sweep`; its summary goes to $work/sweep.json.
sweep_as() {
  sweep=("$plumbrule" sweep "$1" --against "$rules" --threads "$2" --format json --out "$work/sweep.json")
}

# sweep_counts SUMMARY: its counts in the form in which the rivals print theirs: `records N`, then clause, failed, not
# shown; tabs between.
sweep_counts() {
  jq -r '"records\t\(.records)", (.specifications[0].clauses[] | "\(.number)\t\(.fails)\t\(.not_shown)")' "$1"
}

# limits_as KIND [RECORDS]: forty.plumb for a rival, into $work/limits.KIND.
limits_as() {
  awk -v as="$1" -v records="${2:-}" -f "$rivals/limits.awk" "$rivals/limits.tsv" >"$work/limits.$1"
}

# agree NAME COUNTS HAND: the counts of a rival against those of the comparisons by hand on the same records.
agree() {
  local records
  records=$(sed -n 's/^records\t//p' "$3")
  if [[ $records -gt 0 ]] && diff <(grep -v complying "$2") <(grep -v complying "$3") >"$work/difference"; then
    echo "- $1: the same counts of forty clauses on $records records"
  else
    echo "- $1: OTHER COUNTS on $records records (< $1, > comparisons by hand):"
    cat "$work/difference"
    return 1
  fi
}

counts_from() { awk -v from="$1" -f "$rivals/counts.awk" "$2"; }
