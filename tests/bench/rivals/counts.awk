# The output of a rival as counts: `records N`, then clause, failed, not shown; tabs between. -v from=jq | sql
BEGIN { FS = from == "jq" ? "[][,]" : "\t" }
from == "jq" {
  records++
  for (i = 1; i <= 40; i++) if ($(i + 1) == 1) failed[i]++; else if ($(i + 1) == 2) not_shown[i]++
}
from == "sql" && $1 == "counts" {
  records = $2
  for (i = 1; i <= 40; i++) { failed[i] = $(i + 2) % 100000000; not_shown[i] = int($(i + 2) / 100000000) }
}
END {
  print "records\t" records + 0
  for (i = 1; i <= 40; i++) printf "%d\t%d\t%d\n", i, failed[i], not_shown[i]
}
