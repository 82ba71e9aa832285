#!/bin/sh
# A study in shares, by GNU parallel: on the cores of this machine, or of others that see the same folder.
# Usage: with-parallel.sh STUDY FOLDER SHARES [more options of parallel, such as --sshloginfile hosts]
# A share that dies is begun again, twice; what it has written stays.
set -eu
study=$1
folder=$2
shares=$3
shift 3
parallel --retries 3 --line-buffer --tag "$@" \
  ${COLUMNTOOL:-columntool} study "$study" --shard "{}/$shares" --out "$folder" --jobs 1 --resume ::: $(seq "$shares")
