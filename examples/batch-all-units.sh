#!/usr/bin/env bash
# What for: a nightly batch over a library of circuit files. Says for every unit whether it is sound, and keeps a report for machines.
# How to run: examples/batch-all-units.sh [FOLDER] [REPORT-FOLDER]     (default: circuits, reports)
# What it prints: a line for each unit; ends with 1 when a unit has errors, with 2 when one cannot be read.
set -euo pipefail
folder=${1:-circuits}
reports=${2:-reports}
mkdir -p "$reports"
worst=0
while IFS= read -r unit; do
  name=$(basename "$unit" .yaml)
  status=0
  ${CIRCUITS:-circuits} check "$unit" --format json -o "$reports/$name.json" || status=$?
  case $status in
    0) echo "ok      $unit" ;;
    1) echo "ERRORS  $unit (see $reports/$name.json)" ;;
    *) echo "UNREAD  $unit (see $reports/$name.json)" ;;
  esac
  if ((status > worst)); then worst=$status; fi
done < <(find "$folder" -name '*.yaml' -exec grep -lE '^unit:' {} + | LC_ALL=C sort)
exit "$worst"
