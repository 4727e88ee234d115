# What one more record costs, from each size of archive to the next, from the rows of sweep.sh: records, CPU seconds,
# instructions (empty if they were not counted). The first row is the start.
BEGIN {
  FS = "\t"
  print "| records | µs of CPU each | instructions each |"
  print "| --- | --- | --- |"
}
NR > 1 {
  more = $1 - records
  time[NR] = 1e6 * ($2 - seconds) / more
  count[NR] = $3 == "" ? 0 : ($3 - instructions) / more
  counted = $3 == "" ? "–" : sprintf("%.0f", count[NR])
  printf "| from %d to %d | %.3f | %s |\n", records, $1, time[NR], counted
}
{
  records = $1
  seconds = $2
  instructions = $3
}
# Of the steps from step `begin` on.
function spread(of, begin, at, low, high) {
  low = high = of[begin]
  for (at = begin; at <= NR; ++at) {
    low = of[at] < low ? of[at] : low
    high = of[at] > high ? of[at] : high
  }
  return NR > begin && low > 0 ? sprintf("within %.1f %%", 100 * (high / low - 1)) : "not told"
}
END {
  printf "\nThe cost of one more record: by counted instructions %s in all steps; by CPU time\n", spread(count, 2)
  printf "%s in all steps, and %s without the first.\n", spread(time, 2), spread(time, 3)
}
