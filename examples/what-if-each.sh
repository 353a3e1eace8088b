#!/usr/bin/env bash
# What for: many what-if questions about one unit in one process: here one hole in every size of a list.
# How to run: examples/what-if-each.sh [UNIT.yaml] [LOCATION] [SIZE...]     (default: the teaching unit, plate@13, 1.0 to 3.5 mm)
# What it prints: a table with a row for each question; ROWS=1 prints rows of JSON instead, for jq and the like.
# The program is `circuits`; CIRCUITS names another, as CIRCUITS="dotnet run --project src/Circuits.Cli --".
set -euo pipefail
unit=${1:-circuits/rill/rill.yaml}
at=${2:-plate@13}
sizes=("${@:3}")
((${#sizes[@]})) || sizes=(0.6mm 1.0mm 1.5mm 2.0mm 2.5mm 3.0mm 3.5mm)
jobs=$(mktemp)
trap 'rm -f "$jobs"' EXIT

{
  echo "changes: 1"
  echo "each:"
  for size in "${sizes[@]}"; do echo "  $at at $size: {hole: {\"$at\": $size}}"; done
} >"$jobs"

form=text
[[ -z ${ROWS:-} ]] || form=jsonl
# 1 says that something is wrong in at least one row; only 2 and up mean that there is no answer.
${CIRCUITS:-circuits} what-if "$unit" --each "$jobs" --format "$form" || test $? -eq 1
