# The published figures against the limits that `plumbrule recite --format markdown` prints; compare.sh calls it.
# Read in this order: published.tsv (fields parted by tabs), then for each document a line `@ DOCUMENT` and its table.
# One difference a line; at the end a count, and status 1 if there was a difference.

BEGIN { columns = "document measured condition class alternative_to kind low high unit mark source left_out disputed" }

function differs(document, clause, property, class, words) {
  differences++
  print "library figures: " document (clause == "" ? "" : ", " clause) ": " property \
        (class == "" ? "" : " [" class "]") ": " words
}

function key_of(document, property, class, alternative) {
  return document "\t" property "\t" class "\t" alternative
}

# ---- The table of published figures.

# What the property cell of `recite` must say: measure and conditions; a condition in brackets is only for the reader.
function property_of(measured, conditions,    parts, count, i) {
  gsub(/\([^)]*\)/, "", conditions)
  count = split(conditions, parts, /; */)
  for (i = 1; i <= count; i++)
    if (parts[i] != "")
      measured = measured ", " parts[i]
  return measured
}

function shown(kind, low, high, unit) {
  if (unit != "")
    unit = " " unit
  if (kind == "min")
    return "at least " low unit
  if (kind == "max")
    return "at most " high unit
  if (kind == "within")
    return "within " low unit
  if (kind == "between")
    return "between " low " and " high unit
  return kind == "word" ? low : kind
}

function is_number(text) { return text ~ /^-?[0-9]+([.][0-9]+)?$/ }

function well_formed(kind, low, high, mark) {
  if (mark !~ /^(FOUND|FOLLOWS|MEMORY-[HM])/ || $11 == "")
    return 0
  if (kind == "min" || kind == "within")
    return is_number(low) && high == ""
  if (kind == "max")
    return low == "" && is_number(high)
  if (kind == "between")
    return is_number(low) && is_number(high) && low + 0 <= high + 0
  return kind == "no limit" || (kind == "word" && low != "") || (kind == "target" && $12 != "")
}

function read_published(    key) {
  if (NF != 13 || !well_formed($6, $7, $8, $10)) {
    differs("published.tsv", "line " FNR, $2, $4, "the row is not well formed")
    return
  }
  documents[$1] = 1
  key = key_of($1, property_of($2, $3), $4, $5)
  if (key in row_of) {
    differs($1, "", property_of($2, $3), $4, "the table of published figures has this twice")
    return
  }
  row_of[key] = ++rows
  key_at[rows] = key
  kind[key] = $6; low[key] = $7; high[key] = $8; unit[key] = $9
  mark[key] = $10; place[key] = $11; left_out[key] = $12; disputed[key] = $13
}

# ---- The limits of a rule file.

# Sets found_kind, found_low, found_high, found_unit.
function read_limit(text,    parts) {
  found_kind = "word"; found_low = text; found_high = ""; found_unit = ""
  sub(/^one of /, "", found_low)
  if (text ~ /^at least [0-9]/) {
    take_number("min", substr(text, 10))
  } else if (text ~ /^at most [0-9]/) {
    take_number("max", substr(text, 9))
  } else if (text ~ /^within [0-9].* from the job mix$/) {
    sub(/ from the job mix$/, "", text)
    take_number("within", substr(text, 8))
  } else if (text ~ /^between [0-9].* and [0-9]/) {
    split(substr(text, 9), parts, / and /)
    take_range(parts[1], parts[2])
  } else if (text ~ /^[0-9][^ ]* [^ ]+ to [0-9]/) {
    split(text, parts, / to /)
    take_range(parts[1], parts[2])
  } else if (text ~ /^[0-9]/) {
    take_range(text, text)
  }
}

function number_in(text) { sub(/ .*/, "", text); return text }
function unit_in(text) { return index(text, " ") ? substr(text, index(text, " ") + 1) : "" }

function take_number(kind_found, text) {
  found_kind = kind_found; found_unit = unit_in(text)
  found_low = kind_found == "max" ? "" : number_in(text)
  found_high = kind_found == "max" ? number_in(text) : ""
}

function take_range(from, to,    first) {
  found_kind = "between"; found_low = number_in(from); found_high = number_in(to); found_unit = unit_in(to)
  first = unit_in(from)
  if (first != "" && index(found_unit, first) != 1)
    found_unit = first " and " found_unit  # two units that disagree: equal to none
}

function same_number(one, other) {
  return is_number(one) && is_number(other) ? one + 0 == other + 0 : one == other
}

function read_recited(    cells, property, alternative, key) {
  gsub(/\\/, "")
  split($0, cells, / *[|] */)
  if (cells[2] ~ /^(Clause|---)/ || (cells[3] == "" && cells[5] == ""))
    return
  if (cells[2] != "") {
    clause = cells[2]
    status = cells[7]
    sub(/,.*/, "", status)
  }
  property = cells[3]
  alternative = ""
  if (sub(/^or /, "", property))
    alternative = parent
  else
    parent = property
  if (property ~ /^sieve /)
    property = "percent passing, " property
  limits++
  key = key_of(document, property, cells[4], alternative)
  if (key in seen) {
    differs(document, clause, property, cells[4], "the rule file limits this twice")
    return
  }
  seen[key] = 1
  judge(key, property, cells[4], cells[5])
}

function judge(key, property, class, text,    wanted, difference) {
  if (!(key in row_of) || left_out[key] != "" || kind[key] == "no limit") {
    differs(document, clause, property, class, "the rule file says `" text "`, which is not published so" \
            (key in row_of ? " (" (left_out[key] == "" ? "no limit" : "left out: " left_out[key]) ")" : ""))
    return
  }
  read_limit(text)
  difference = ""
  if (found_kind != kind[key] || !same_number(found_low, low[key]) || !same_number(found_high, high[key]) ||
      found_unit != unit[key])
    difference = "the rule file says `" text "`, published is `" \
                 shown(kind[key], low[key], high[key], unit[key]) "` (" place[key] ")"
  wanted = mark[key] ~ /^MEMORY/ ? "unverified" : "verified"
  if (status != wanted)
    difference = difference (difference == "" ? "" : "; ") "the rule file says " status ", the mark is " mark[key]
  report(key, property, class, difference)
}

function report(key, property, class, difference) {
  if (disputed[key] == "" && difference != "") {
    differs(document, clause, property, class, difference)
  } else if (disputed[key] != "" && difference == "") {
    differs(document, clause, property, class, "settled, so take the words out of column `disputed`: " disputed[key])
  } else if (disputed[key] != "") {
    disputes++
    print "library figures: known difference: " document ", " clause ": " property ": " difference
  }
}

# ---- The run.

FNR == 1 && NR == 1 {
  wanted_head = columns
  gsub(/ /, "\t", wanted_head)
  if ($0 != wanted_head)
    differs("published.tsv", "", "first line", "", "it does not name the columns " columns)
  next
}
FNR == NR { read_published(); next }
/^@ / { document = substr($0, 3); recited[document] = 1; clause = parent = status = ""; next }
/^\|/ { read_recited() }

END {
  for (i = 1; i <= rows; i++) {
    key = key_at[i]
    split(key, part, "\t")
    skipped += left_out[key] != ""
    silent += kind[key] == "no limit"
    if (left_out[key] == "" && kind[key] != "no limit" && (part[1] in recited) && !(key in seen))
      differs(part[1], "", part[2], part[3], "published `" shown(kind[key], low[key], high[key], unit[key]) \
              "`" (part[4] == "" ? "" : " in place of " part[4]) " is not in the rule file (" place[key] ")")
  }
  for (name in documents)
    if (!(name in recited))
      differs(name, "", "rule file", "", "there is no such rule file")
  for (name in recited)
    if (!(name in documents))
      differs(name, "", "rule file", "", "the table of published figures has no row of it")
  printf "library figures: %d published figures (%d left out, %d sieves without a limit), %d limits, ", \
         rows, skipped, silent, limits
  printf "%d known differences, %d differences\n", disputes, differences
  exit differences > 0
}
