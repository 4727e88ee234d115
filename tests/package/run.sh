#!/usr/bin/env bash
# Makes the Debian packages, holds them against lintian, unpacks them into an empty root, builds a C++ and a C program
# against what lies there (by CMake, and by pkg-config), and compares what they print with the program's bytes. Then the
# folder of the sources is hidden: nothing may point back to it.
# Two warnings of lintian are left out: CPack itself writes the calls of ldconfig, and nobody cross-compiles this.
# Usage: run.sh BUILD_FOLDER      of a release build
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
build=$(realpath "$1")
source=$(cd "$here/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

shows() {
  local name=$1
  shift
  if "$@"; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    echo "package: went wrong: $name"
  fi
}

cmake --build "$build" --target plumbrule_package >/dev/null
(cd "$build" && rm -rf packages && cpack -G DEB >"$work/cpack.log" 2>&1) || { cat "$work/cpack.log"; exit 1; }
packages=("$build"/packages/*.deb)
shows "three packages" test "${#packages[@]}" -eq 3
for package in "${packages[@]}"; do
  shows "lintian: $(basename "$package")" lintian --allow-root --fail-on error,warning \
    --suppress-tags pkg-config-unavailable-for-cross-compilation,maintscript-calls-ldconfig "$package"
  dpkg-deb -x "$package" "$work/root"
done

# The root is as if it were the computer's: the library and the headers are found there and nowhere else.
library=$(dirname "$(find "$work/root" -name 'libplumbrule.so')")
export LD_LIBRARY_PATH=$library
cmake -S "$here" -B "$work/cmake" -DCMAKE_PREFIX_PATH="$work/root/usr" -DCMAKE_BUILD_TYPE=Release >"$work/log" 2>&1 ||
  cat "$work/log"
shows "programs by CMake" cmake --build "$work/cmake" >"$work/log" 2>&1 || cat "$work/log"
flags=$(PKG_CONFIG_PATH=$library/pkgconfig pkg-config --define-variable=prefix="$work/root/usr" --cflags --libs plumbrule)
# shellcheck disable=SC2086
shows "a program by pkg-config" cc -o "$work/by_pkg_config" "$here/review.c" $flags

# A folder with nothing but the files that are reviewed, so that nothing else can be found by chance.
mkdir -p "$work/desk"
cp -r "$source/specs" "$source/examples" "$work/desk"
cd "$work/desk"
same() {
  local status=0 wanted=0
  "$work/root/usr/bin/plumbrule" review "$2" --against "$1" --library specs --format json >"$work/wanted" 2>/dev/null || wanted=$?
  for program in "$work/cmake/review_cpp" "$work/cmake/review_c" "$work/by_pkg_config"; do
    status=0
    "$program" "$1" specs/vocabulary/cold_mix.plumb "$2" >"$work/found" 2>/dev/null || status=$?
    shows "$(basename "$program") on $2 against $1" cmp "$work/found" "$work/wanted"
    shows "$(basename "$program"): exit status on $2" test "$status" -eq "$wanted"
  done
}
for submittal in complies fails incomplete; do
  same examples/harrow/harrow_512.plumb examples/submittals/$submittal.yaml
done
shows "something was printed" test -s "$work/wanted"
same missing.plumb examples/submittals/complies.yaml

# Without the sources: an empty folder is mounted over them, for these commands alone.
cd "$work"
for file in "$work/root/usr/bin/plumbrule" "$library/libplumbrule.so"; do
  shows "no path of the sources in $(basename "$file")" bash -c '! grep -qF "$1" "$2"' _ "$source/" "$file"
done
without_sources() {
  unshare -m bash -c 'mount -t tmpfs none "$1" && [[ -z $(ls -A "$1") ]] && cd "$2" && shift 2 && "$@"' _ "$source" "$work" "$@"
}
shows "the installed program finds its own rules" bash -c '"$@" | grep -q "root/usr/share/plumbrule/specs/vocabulary/cold_mix.plumb"' _ \
  unshare -m bash -c 'mount -t tmpfs none "$1" && cd "$2" && root/usr/bin/plumbrule review desk/examples/submittals/complies.yaml \
  --against desk/examples/harrow/harrow_512.plumb' _ "$source" "$work"
shows "the C++ program without the sources" without_sources bash -c 'cd desk && ../cmake/review_cpp examples/harrow/harrow_512.plumb \
  specs/vocabulary/cold_mix.plumb examples/submittals/complies.yaml >/dev/null'
shows "the man page" bash -c 'zcat "$1/root/usr/share/man/man1/plumbrule.1.gz" | grep -q plumbrule' _ "$work"

echo "package: $passed passed, $failed failed"
[[ $failed -eq 0 ]]
