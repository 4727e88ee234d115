# The rows of the table: one line a method from the figures of sweep.sh (name, threads, records, clock, CPU, peak in KiB;
# tabs between), beside what a sweep of one thread costs (-v own=CPU seconds a record).
BEGIN {
  FS = "\t"
  print "| method | threads | records | records/s | µs of CPU a record | peak MiB | cost in sweeps of one thread |"
  print "| --- | --- | --- | --- | --- | --- | --- |"
}
{
  printf "| %s | %s | %d | %d | %.3f | %s | %.2f |\n", $1, $2, $3, $3 / $4, 1e6 * $5 / $3, ($6 > 0 ? sprintf("%.1f", $6 / 1024) : "–"), $5 / $3 / own
}
