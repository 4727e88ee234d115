# limits.tsv as a program for one of the rivals: -v as=jq | sql | schema | merged. Each program decides the forty limits
# and, but for the last, lets per clause be counted what failed and what was not shown. For sql, -v records=FILE.
BEGIN {
  FS = "\t"
  words["other"] = "light medium"; words["paved"] = "medium heavy"; words["light"] = "light"; words["heavy"] = "heavy"
  keyword["<="] = "maximum"; keyword["<"] = "exclusiveMaximum"; keyword[">="] = "minimum"; keyword[">"] = "exclusiveMinimum"
}
/^#/ { next }
{
  clauses++
  class[clauses] = $2; key[clauses] = $3; comparison[clauses] = $4; threshold[clauses] = $5
  if (!($3 in column)) { column[$3] = ++columns; heading[columns] = $3 }
}

# The words of a class, each in quotes, commas between.
function quoted(name, quote,    list, n, i, text) {
  n = split(words[name], list, " ")
  for (i = 1; i <= n; i++) text = text (i > 1 ? "," : "") quote list[i] quote
  return text
}

# jq: a line of forty digits a record: 0 met or not asked for, 1 failed, 2 not shown.
function to_jq(    i, test, any) {
  printf ".\"classes; traffic\" as $class"
  for (i = 1; i <= columns; i++) printf " | .\"%s\" as $v%d", heading[i], i
  printf " | ($class == \"heavy\") as $heavy | ($class == \"light\") as $light | ($class == \"medium\") as $medium\n| ["
  any["other"] = "($light or $medium)"; any["paved"] = "($medium or $heavy)"; any["light"] = "$light"; any["heavy"] = "$heavy"
  for (i = 1; i <= clauses; i++) {
    test = sprintf("if $v%d == null then 2 elif $v%d %s %s then 0 else 1 end", column[key[i]], column[key[i]], comparison[i], threshold[i])
    if (class[i] != "any") test = sprintf("if $class == null then 2 elif %s then %s else 0 end", any[class[i]], "(" test ")")
    printf "%s\n  (%s)", (i > 1 ? "," : ""), test
  }
  print "]"
}

# SQLite: a table with a column a heading, loaded from the lines by its own JSON functions; one CASE a clause, whose sum
# counts failures, and 100000000 times what is not shown.
function to_sql(    i, test) {
  print ".bail on\n.mode ascii\n.separator \"\\037\" \"\\n\"\nCREATE TABLE lines(line TEXT);\n.import " records " lines"
  printf "CREATE TABLE mixes AS SELECT line ->> '$.\"classes; traffic\"' AS class"
  for (i = 1; i <= columns; i++) printf ",\n  line ->> '$.\"%s\"' AS v%d", heading[i], i
  print " FROM lines;\n.mode list\n.separator \"\\t\" \"\\n\"\n.timer on"
  print "SELECT 'counts', count(*)"
  for (i = 1; i <= clauses; i++) {
    test = sprintf("CASE WHEN v%d %s %s THEN 0 WHEN v%d IS NULL THEN 100000000 ELSE 1 END", column[key[i]], comparison[i], threshold[i], column[key[i]])
    if (class[i] != "any") test = sprintf("CASE WHEN class IN (%s) THEN %s WHEN class IS NULL THEN 100000000 ELSE 0 END", quoted(class[i], "'"), test)
    printf ",\n  sum(%s)", test
  }
  print " FROM mixes;"
}

# JSON Schema 2020-12: one member of allOf a clause, and a last one for the class.
function to_schema(    i, demand) {
  print "{\"$schema\": \"https://json-schema.org/draft/2020-12/schema\", \"type\": \"object\", \"allOf\": ["
  for (i = 1; i <= clauses; i++) {
    demand = sprintf("{\"required\": [\"%s\"], \"properties\": {\"%s\": {\"type\": \"number\", \"%s\": %s}}}", key[i], key[i], keyword[comparison[i]], threshold[i])
    if (class[i] != "any") demand = sprintf("{\"if\": {\"required\": [\"classes; traffic\"], \"properties\": {\"classes; traffic\": {\"enum\": [%s]}}}, \"then\": %s}", quoted(class[i], "\""), demand)
    print "  " demand ","
  }
  print "  {\"required\": [\"classes; traffic\"]}\n]}"
}

# The limits of a value for one set of classes, as members of its schema.
function bounds_of(value, set,    i, text) {
  for (i = 1; i <= clauses; i++)
    if (key[i] == value && index(set, " " class[i] " ")) text = text sprintf(", \"%s\": %s", keyword[comparison[i]], threshold[i])
  return text
}

# The values that have limits for one set of classes, each with its schema.
function properties_of(set,    i, bounds, text) {
  for (i = 1; i <= columns; i++) {
    bounds = bounds_of(heading[i], set)
    if (bounds != "") text = text (text != "" ? ", " : "") sprintf("\"%s\": {\"type\": \"number\"%s}", heading[i], bounds)
  }
  return "\"properties\": {" text "}"
}

# JSON Schema again, merged by hand-like care: every value is named once a class, so that a record is decided with the
# fewest steps. It tells only whether a record is valid.
function to_merged(    i, n, list, sets) {
  printf "{\"$schema\": \"https://json-schema.org/draft/2020-12/schema\", \"type\": \"object\",\n\"required\": [\"classes; traffic\""
  for (i = 1; i <= columns; i++) printf ", \"%s\"", heading[i]
  printf "],\n%s,\n\"allOf\": [\n", properties_of(" any ")
  sets["light"] = " light other "; sets["medium"] = " other paved "; sets["heavy"] = " paved heavy "
  n = split("light medium heavy", list, " ")
  for (i = 1; i <= n; i++)
    printf "{\"if\": {\"properties\": {\"classes; traffic\": {\"const\": \"%s\"}}}, \"then\": {%s}}%s\n", list[i], properties_of(sets[list[i]]), (i < n ? "," : "")
  print "]}"
}

END {
  if (clauses != 40) { print "limits.awk: " clauses " limits, not 40" > "/dev/stderr"; exit 1 }
  if (as == "jq") to_jq()
  else if (as == "sql") to_sql()
  else if (as == "schema") to_schema()
  else if (as == "merged") to_merged()
  else { print "limits.awk: -v as=jq, sql, schema or merged" > "/dev/stderr"; exit 1 }
}
