#!/usr/bin/env bash
#SBATCH --job-name=circuits-matrix
#SBATCH --array=1-16
#SBATCH --cpus-per-task=1
#SBATCH --time=01:00:00
# What for: every combination of revisions as a job array of a cluster scheduler; this one reads the lines above.
# How to run: sbatch examples/shards-cluster.sh UNIT.yaml FOLDER; when all are done:
#   circuits matrix --merge FOLDER/*.jsonl --format jsonl -o matrix.jsonl
# What it prints: nothing; each task writes its own shard, whole or not at all, so that one that failed is simply run again.
set -euo pipefail
unit=$1
folder=$2
mkdir -p "$folder"
k=${SLURM_ARRAY_TASK_ID:?a job array sets this}
n=${SLURM_ARRAY_TASK_COUNT:?a job array sets this}
${CIRCUITS:-circuits} matrix "$unit" --format jsonl --shard "$k/$n" -o "$folder/$(printf %04d "$k").jsonl" || test $? -eq 1
