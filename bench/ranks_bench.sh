#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# bench/ranks_bench.sh BUILD [LINES] [RANKS...]   A scan with threads and with MPI ranks on this machine, in turn, three times:
# wall seconds each. Rank 0 only deals and writes, so N+1 ranks have N workers. Read the ratios, on a machine that does nothing else.
set -eu
build=${1:?the folder of the build, as in build/release}
lines=${2:-400}
shift $(($# > 1 ? 2 : 1))
ranks=${*:-2 3}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
root=$(dirname -- "$(dirname -- "$(readlink -f -- "$0")")")
# Images of the published puzzles, one for each shift of the digits.
awk -F'\t' -v most="$lines" '{ p[NR] = $2 } END { for (i = 0; i < most; ++i) { s = p[i % NR + 1]; o = ""; k = int(i / NR);
  for (j = 1; j <= 81; ++j) { c = substr(s, j, 1); o = o (c ~ /[1-9]/ ? (c - 1 + k) % 9 + 1 : "."); } print o } }' "$root/tests/data/puzzles.tsv" >"$folder/in.txt"
export OMPI_ALLOW_RUN_AS_ROOT=1 OMPI_ALLOW_RUN_AS_ROOT_CONFIRM=1
timed() {
  local words=$1 start end
  shift
  start=$(date +%s.%N)
  "$@" >/dev/null 2>&1
  end=$(date +%s.%N)
  awk -v a="$start" -v b="$end" -v w="$words" -v n="$lines" 'BEGIN { printf "%-12s %7.2f s %8.1f a second\n", w, b - a, n / (b - a) }'
}
for _ in 1 2 3; do
  timed "1 thread" "$build/counterpoise" scan "$folder/in.txt" --out "$folder/threads.jsonl" --replace --threads 1
  timed "2 threads" "$build/counterpoise" scan "$folder/in.txt" --out "$folder/threads.jsonl" --replace --threads 2
  for n in $ranks; do
    timed "$n ranks" mpirun --oversubscribe -n "$n" "$build/counterpoise" scan "$folder/in.txt" --out "$folder/ranks.jsonl" --replace --ranks
    cmp "$folder/threads.jsonl" "$folder/ranks.jsonl"
  done
done
