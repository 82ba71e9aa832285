#!/bin/sh
# A Slurm cluster of this machine alone, for one study: begun on free ports, and ended with it. For trying slurm-array.sh; as root, where
# slurm-wlm and munge of Debian are installed.
# Usage: slurm-one-machine.sh STUDY FOLDER SHARES
set -eu
study=$(realpath "$1")
mkdir -p "$2"
folder=$(realpath "$2")
shares=$3
here=$(dirname "$(realpath "$0")")
state=$(mktemp -d)
chmod 755 "$state"
port() { python3 -c 'import socket; s = socket.socket(); s.bind(("", 0)); print(s.getsockname()[1])'; }
host=$(hostname -s)

mkdir -m 755 "$state/munge"
dd if=/dev/urandom of="$state/munge/key" bs=1024 count=1 2>/dev/null
chmod 400 "$state/munge/key"
cat >"$state/slurm.conf" <<CONF
ClusterName=one
SlurmctldHost=$host(127.0.0.1)
SlurmctldPort=$(port)
SlurmdPort=$(port)
SlurmUser=root
AuthType=auth/munge
AuthInfo=socket=$state/munge/socket
CryptoType=crypto/munge
StateSaveLocation=$state/ctld
SlurmdSpoolDir=$state/d
SlurmctldPidFile=$state/ctld.pid
SlurmdPidFile=$state/d.pid
SlurmctldLogFile=$state/ctld.log
SlurmdLogFile=$state/d.log
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
SelectType=select/cons_tres
SelectTypeParameters=CR_CPU
ReturnToService=2
MpiDefault=none
NodeName=$host NodeAddr=127.0.0.1 CPUs=$(nproc) State=UNKNOWN
PartitionName=all Nodes=ALL Default=YES MaxTime=INFINITE State=UP
CONF
export SLURM_CONF="$state/slurm.conf"

stop() {
  for name in ctld.pid d.pid munge/pid; do
    [ ! -s "$state/$name" ] || kill "$(cat "$state/$name")" 2>/dev/null || true
  done
  sleep 1
  rm -rf "$state"
}
trap stop EXIT

munged --force --key-file="$state/munge/key" --socket="$state/munge/socket" --pid-file="$state/munge/pid" \
  --log-file="$state/munge/log" --seed-file="$state/munge/seed" >/dev/null 2>&1
mkdir "$state/ctld" "$state/d"
slurmctld
slurmd
for _ in $(seq 60); do
  sinfo --noheader --format %T 2>/dev/null | grep -q idle && break
  sleep 0.5
done
sinfo
sbatch --wait --array="1-$shares" --output="$folder/slurm-%a.log" "$here/slurm-array.sh" "$study" "$folder"
cat "$folder"/slurm-*.log
