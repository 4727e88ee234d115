#!/usr/bin/env bash
# Compiles the library with the thread sanitizer of GCC and lets two threads review at once (two_threads.cpp). A planted
# race must be reported first, so that silence means something.
# Usage: threads.sh [BUILD_FOLDER]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
build=${1:-.build/threads}
cmake -S . -B "$build" -G Ninja -DCMAKE_UNITY_BUILD=ON -DBUILD_TESTING=OFF -DCMAKE_BUILD_TYPE=Debug \
  -DCMAKE_CXX_FLAGS_DEBUG="-O1 -g1 -fsanitize=thread -Wno-tsan" >/dev/null
cmake --build "$build" --target plumbrule_library >/dev/null
flags=(-std=c++20 -O1 -g1 -fsanitize=thread -Isrc)
library=("$build/src/libplumbrule.so" "-Wl,-rpath,$PWD/$build/src" -pthread)
g++ "${flags[@]}" -o "$build/two_threads" tests/package/two_threads.cpp "${library[@]}"
sed 's/out = out \&\& rules.window/same[0] = rules.window/' tests/package/two_threads.cpp >"$build/planted.cpp"
g++ "${flags[@]}" -o "$build/planted" "$build/planted.cpp" "${library[@]}"
rules=examples/harrow/harrow_512.plumb submittal=examples/submittals/complies.yaml
if TSAN_OPTIONS=exitcode=66 "$build/planted" $rules $submittal >/dev/null 2>&1; then
  echo "threads: a planted race was not reported"
  exit 1
fi
TSAN_OPTIONS=exitcode=66 "$build/two_threads" $rules $submittal
echo "threads: no race"
