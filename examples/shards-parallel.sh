#!/usr/bin/env bash
# What for: every combination of revisions, split over the cores of one machine with GNU parallel (Debian package parallel).
# How to run: examples/shards-parallel.sh [UNIT.yaml] [SHARDS] [OUTPUT.jsonl]     (default: the teaching unit, 4, matrix.jsonl)
# What it prints: how many rows came out. The output is the very bytes of the run that was not split.
set -euo pipefail
unit=${1:-circuits/rill/rill.yaml}
shards=${2:-4}
output=${3:-matrix.jsonl}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# 1 says that some combinations are bad, which is what one wants to know here.
export CIRCUITS=${CIRCUITS:-circuits}
seq "$shards" | parallel --will-cite --halt now,fail=1 \
  "$CIRCUITS matrix '$unit' --format jsonl --shard {}/$shards -o '$work/{}.jsonl' 2>/dev/null || test \$? -eq 1"
mapfile -t parts < <(seq -f "$work/%g.jsonl" "$shards")
$CIRCUITS matrix --merge "${parts[@]}" --format jsonl -o "$output" 2>/dev/null || test $? -eq 1
echo "$(wc -l <"$output") rows in $output"
