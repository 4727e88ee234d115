#!/usr/bin/env bash
# Builds Plumbrule and reviews a bundled submittal against the specification of an invented county.
# Exit status: that of the review; 0 when the submittal complies, as this one does.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

submittal=examples/submittals/complies.yaml
rules=examples/harrow/harrow_512.plumb
plumbrule=.build/release/src/plumbrule

echo "1. Packages"
bash .ci/setup.sh build

echo "2. Build (.build/release)"
# A folder that is configured already stays as it is: it may be the one that the tests use.
if [[ ! -f .build/release/build.ninja ]]; then
  cmake --preset release -DBUILD_TESTING=OFF >/dev/null
fi
cmake --build --preset release --target plumbrule

echo "3. plumbrule review $submittal --against $rules"
echo
status=0
"$plumbrule" review "$submittal" --against "$rules" || status=$?
echo
echo "Exit status of the review: $status (0 complies, 1 something fails, 2 evidence incomplete)"
exit "$status"
