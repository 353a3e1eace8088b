#!/usr/bin/env bash
# What for: one part is in doubt. Tries every revision of it on an assembly and prints what each changes, gear by gear.
# How to run: examples/what-if-all-plates.sh [UNIT.yaml] [PART]     (default: the teaching unit, its plate)
# What it prints: for each revision a heading, then what differs from the unchanged assembly.
# The program is `circuits`; CIRCUITS names another, as CIRCUITS="dotnet run --project src/Circuits.Cli --".
set -euo pipefail
unit=${1:-circuits/rill/rill.yaml}
part=${2:-plate}

# The program knows which revisions there are: the same words that a shell completes.
revisions=$(${CIRCUITS:-circuits} '[suggest]' "circuits gears $unit --fit $part=")
for change in $revisions; do
  echo "== $change"
  # 1 says that something is wrong with that mix; only 2 and up mean that the question could not be answered.
  ${CIRCUITS:-circuits} what-if "$unit" --fit "$change" || test $? -eq 1
done
