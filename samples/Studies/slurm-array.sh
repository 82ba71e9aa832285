#!/bin/sh
# A study as an array of Slurm jobs, one for each share.
# Usage: sbatch --array=1-8 slurm-array.sh STUDY FOLDER
# A job that dies with its machine is put back by Slurm and goes on where it was; so does the same command once more.
#SBATCH --job-name=study
#SBATCH --requeue
set -eu
exec ${COLUMNTOOL:-columntool} study "$1" --shard "$SLURM_ARRAY_TASK_ID/$SLURM_ARRAY_TASK_MAX" --out "$2" \
  --jobs "${SLURM_CPUS_PER_TASK:-1}" --resume
