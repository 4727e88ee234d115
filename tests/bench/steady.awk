# What one more record costs in archives of all sizes, from the rows of sweep.sh: records, CPU seconds, instructions
# (empty if they were not counted). The first row is the start, which is taken off.
BEGIN {
  FS = "\t"
  print "| records, behind the first | µs of CPU each | instructions each |"
  print "| --- | --- | --- |"
}
NR == 1 {
  first = $1
  seconds = $2
  instructions = $3
  next
}
{
  more = $1 - first
  time[NR] = 1e6 * ($2 - seconds) / more
  count[NR] = $3 == "" ? 0 : ($3 - instructions) / more
  counted = $3 == "" ? "–" : sprintf("%.0f", count[NR])
  printf "| %d | %.3f | %s |\n", more, time[NR], counted
}
function spread(of, at, low, high) {
  low = high = of[2]
  for (at in of) {
    low = of[at] < low ? of[at] : low
    high = of[at] > high ? of[at] : high
  }
  return NR > 2 && low > 0 ? sprintf("within %.1f %%", 100 * (high / low - 1)) : "not told"
}
END {
  printf "\nThe cost of a record in archives of these sizes is %s by CPU time", spread(time)
  printf ", %s by counted instructions.\n", spread(count)
}
