#!/usr/bin/env bash
# Prints an HTML report of Plumbrule as PDF with the distribution's Chromium, which numbers the pages.
# Usage: examples/print_pdf.sh REPORT.html REPORT.pdf       the paper is that of the locale; the network is not used
# The browser: CHROMIUM, if set, else `chromium` (Debian: apt-get install chromium).
set -euo pipefail
[[ $# -eq 2 ]] || { echo "usage: $0 REPORT.html REPORT.pdf" >&2; exit 2; }
[[ -r $1 ]] || { echo "$0: cannot read $1" >&2; exit 2; }
browser=${CHROMIUM:-chromium}
command -v "$browser" >/dev/null || { echo "$0: there is no $browser; install chromium, or set CHROMIUM" >&2; exit 2; }

profile=$(mktemp -d)
trap 'rm -rf "$profile"' EXIT
# Root may not use the browser's sandbox; the page has no script and may load nothing.
sandbox=()
[[ $(id -u) -ne 0 ]] || sandbox=(--no-sandbox)
"$browser" --headless --disable-gpu "${sandbox[@]}" --user-data-dir="$profile" --no-pdf-header-footer \
  --print-to-pdf="$(realpath "$2")" "file://$(realpath "$1")" 2>"$profile/log" ||
  { cat "$profile/log" >&2; exit 1; }
# The browser says nothing by its status when it could not write.
[[ $(head -c 5 "$2" 2>/dev/null) == %PDF- ]] || { cat "$profile/log" >&2; echo "$0: $2 was not written" >&2; exit 1; }
