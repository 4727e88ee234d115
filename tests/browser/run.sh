#!/usr/bin/env bash
# Looks at the HTML reports in the distribution's Chromium, driven by a package of the npm registry: what they load, how
# wide they are, whether they can be read by all and worked by keyboard, how they print, that a hostile submittal is
# inert, and that HTML, Markdown, text and JSON tell the same facts.
# Usage: tests/browser/run.sh PLUMBRULE [FOLDER]     FOLDER: screenshots and sheets are left there to be looked at
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
plumbrule=$(realpath "$1")
pictures=${2:+$(mkdir -p "$2" && realpath "$2")}
work=$root/.build/browser
mkdir -p "$work/pages"
cp "$here"/package.json "$here"/package-lock.json "$work/"
(cd "$work" && npm ci --no-audit --no-fund --silent --omit=optional)
cp "$here"/*.mjs "$work/"

cd "$root"
harrow=examples/harrow/harrow_512.plumb
# write NAME FORMAT COMMAND...: the report in that format; a status up to 2 is a verdict.
write() {
  local name=$1 format=$2 status=0
  shift 2
  "$plumbrule" "$@" --format "$format" --out "$work/pages/$name.$format" 2>"$work/pages/$name.errors" || status=$?
  if [[ $status -gt 2 ]]; then
    cat "$work/pages/$name.errors"
    exit 1
  fi
}
for name in complies fails incomplete seeded; do
  for format in html json markdown text; do
    write "$name" "$format" review "examples/submittals/$name.yaml" --against "$harrow"
  done
done
for format in html json markdown text; do
  write agencies "$format" review examples/submittals/fails.yaml --against specs/issa_a143_2010.plumb \
    --against specs/ohio_421_2010.plumb --against "$harrow" --with examples/harrow/harrow_sp_14.plumb
done
write matrix html review examples/submittals/fails.yaml --against specs --matrix
twelve=()
for name in bina_marga_4_5_2018 caltrans_37_3_2010 colorado_409_2017 florida_335_2014 iowa_4126_2020 issa_a105_2020 \
  issa_a143_2010 nashua_404_2017 ohio_421_2010 oklahoma_microsurfacing_2008 redwood_city_slurry_2008 \
  ufc_3_250_03_2001; do
  twelve+=(--against "specs/$name.plumb")
done
write twelve html review examples/submittals/complies.yaml "${twelve[@]}" --matrix
write several html review examples/submittals/fails.yaml --against "$harrow" --against specs/issa_a143_2010.plumb \
  --against specs/ohio_421_2010.plumb --against specs/bina_marga_4_5_2018.plumb --matrix
write again html review examples/submittals/fails.yaml --against "$harrow"
cmp "$work/pages/fails.html" "$work/pages/again.html" || { echo "the same review gives other bytes"; exit 1; }
rm "$work/pages/again.html"
(cd "$work/pages" && node "$work/write_hostile.mjs")
write hostile html review "$work/pages/hostile.yaml" --against "$work/pages/limits.plumb"
write hostile json review "$work/pages/hostile.yaml" --against "$work/pages/limits.plumb"
write hostile_matrix html review "$work/pages/hostile.yaml" --against "$work/pages/limits.plumb" --matrix
write window html window examples/submittals/trials.yaml --against "$harrow" --tolerance "0.2 %"
write contrast html contrast "$harrow" --with examples/harrow/harrow_sp_14.plumb --archive examples/submittals
write contrast_agencies html contrast specs/issa_a143_2010.plumb specs/ohio_421_2010.plumb
write recite html recite "$harrow"
write recite_large html recite specs/caltrans_37_3_2010.plumb
write followup html follow-up examples/submittals/fails.yaml examples/submittals/resubmitted.yaml --against "$harrow"
write hostile_window html window "$work/pages/trials.yaml" --against "$work/pages/limits.plumb"
write hostile_followup html follow-up "$work/pages/hostile.yaml" "$work/pages/again.yaml" --against "$work/pages/limits.plumb"
write hostile_contrast html contrast "$work/pages/limits.plumb" "$work/pages/tighter.plumb"
bash examples/print_pdf.sh "$work/pages/fails.html" "$work/fails.pdf"
if bash examples/print_pdf.sh "$work/pages/missing.html" "$work/missing.pdf" 2>/dev/null; then
  echo "print_pdf.sh prints a page that is not there"
  exit 1
fi
node "$work/look.mjs" "$work/pages" "$(command -v chromium)" "$work/fails.pdf" "$pictures"
