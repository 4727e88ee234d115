#!/usr/bin/env bash
# Installs what is missing of the named package lists; does nothing (and needs no rights) when all is there.
# Usage: .ci/setup.sh build        or        .ci/setup.sh build test
set -euo pipefail

here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)

installed() {
  [[ $(dpkg-query -W -f='${db:Status-Status}' "$1" 2>/dev/null) == installed ]]
}

missing=()
for list in "${@:-build}"; do
  file="$here/packages-$list.txt"
  if [[ ! -f $file ]]; then
    echo "setup: there is no package list '$list' (looked for $file)" >&2
    exit 2
  fi
  while read -r package; do
    installed "$package" || missing+=("$package")
  done < <(sed -e 's/#.*//' -e 's/[[:space:]]*$//' -e '/^$/d' "$file")
done

if [[ ${#missing[@]} -eq 0 ]]; then
  echo "setup: every package is there"
  exit 0
fi

echo "setup: missing: ${missing[*]}"
as_root=()
if [[ $(id -u) -ne 0 ]]; then
  if ! command -v sudo >/dev/null; then
    echo "setup: cannot install: neither root nor sudo. As root, run: apt-get install ${missing[*]}" >&2
    exit 1
  fi
  as_root=(sudo)
fi
"${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get update -q
"${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends "${missing[@]}"
