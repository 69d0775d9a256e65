#!/bin/sh
# The Slurm recipe of docs/scale.md, run for real on a Slurm of one node: started here, with folders of its own, and stopped again. Installs slurm-wlm and munge where it may;
# where they can't be had it says so. `make test-slurm`; takes a minute. Needs the rights of the administrator, as Slurm's own programs do.
. tests/support/cli.sh
PATH=$PATH:/usr/sbin:/sbin
if ! command -v slurmctld > /dev/null 2>&1 && [ "$(id -u)" = 0 ] && command -v apt-get > /dev/null 2>&1; then
    echo "Installing slurm-wlm and munge"
    { apt-get update -qq && env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends slurm-wlm munge; } > "$folder/apt" 2>&1
fi
if ! at_hand slurmctld slurmd sbatch munged || [ "$(id -u)" != 0 ]; then
    [ "$(id -u)" = 0 ] || skip "Slurm's programs need the administrator's rights"
    finish
    exit
fi

# A key, a state and two ports of its own: nothing of a Slurm that is there already is touched.
run_dir="$folder/run"
mkdir -p "$run_dir" "$folder/state" "$folder/spool" "$folder/plan"
chmod 755 "$folder" "$run_dir"
dd if=/dev/urandom of="$folder/key" bs=1 count=128 2> /dev/null
chmod 400 "$folder/key"
host=$(hostname -s)
cat > "$folder/slurm.conf" <<EOT
ClusterName=trial
SlurmctldHost=$host(127.0.0.1)
SlurmctldPort=26817
SlurmdPort=26818
SlurmUser=root
AuthType=auth/munge
AuthInfo=socket=$run_dir/munge.socket
CredType=cred/munge
StateSaveLocation=$folder/state
SlurmdSpoolDir=$folder/spool
SlurmctldPidFile=$run_dir/slurmctld.pid
SlurmdPidFile=$run_dir/slurmd.pid
SlurmctldLogFile=$folder/slurmctld.log
SlurmdLogFile=$folder/slurmd.log
ProctrackType=proctrack/pgid
TaskPlugin=task/none
JobAcctGatherType=jobacct_gather/none
SwitchType=switch/none
MpiDefault=none
ReturnToService=2
SelectType=select/cons_tres
SelectTypeParameters=CR_Core
NodeName=$host NodeAddr=127.0.0.1 CPUs=2 RealMemory=500 State=UNKNOWN
PartitionName=all Nodes=$host Default=YES State=UP MaxTime=INFINITE
EOT
SLURM_CONF="$folder/slurm.conf"
export SLURM_CONF
stop_all() {
    for name in slurmd slurmctld munged; do
        [ -s "$run_dir/$name.pid" ] && kill "$(cat "$run_dir/$name.pid")" 2> /dev/null
    done
    sleep 1
    rm -rf "$folder"
}
trap stop_all EXIT
munged --force --socket="$run_dir/munge.socket" --key-file="$folder/key" --pid-file="$run_dir/munged.pid" --log-file="$folder/munged.log" \
    --seed-file="$run_dir/munged.seed" > "$folder/said" 2>&1 || { fault "munged: $(tail -n 1 "$folder/said")"; finish; exit 1; }
slurmctld > "$folder/said" 2>&1 || { fault "slurmctld: $(tail -n 1 "$folder/said")"; finish; exit 1; }
slurmd > "$folder/said" 2>&1 || { fault "slurmd: $(tail -n 1 "$folder/said") $(tail -n 1 "$folder/slurmd.log")"; finish; exit 1; }
tries=0
until sinfo -h -o %T 2> /dev/null | grep -q idle; do
    tries=$((tries + 1))
    [ $tries -lt 60 ] || { fault "the node does not come up: $(sinfo -h -o '%T %E' 2>&1 | tail -n 1)"; finish; exit 1; }
    sleep 1
done

# The recipe as it stands in the page, with fewer tasks and less memory for this node, and the season of the corpus.
cp -R corpus/*.csv corpus/*.musicxml corpus/*.mxl corpus/halls "$folder/plan/"
mv "$folder/plan/season.csv" "$folder/plan/PLAN.csv"
sed -n '/^## A Slurm array/,/^and, once all are done/s/^    //p' docs/scale.md > "$folder/plan/recipe.sh"
sed -i 's/--array=1-200/--array=1-5/; s/--mem=2G/--mem=100/; s/^SHARES=200/SHARES=5/' "$folder/plan/recipe.sh"
grep -q '^SHARES=5' "$folder/plan/recipe.sh" || fault "docs/scale.md has no recipe"
program=$(realpath "$SPEZZATO")
mkdir "$folder/bin"
ln -s "$program" "$folder/bin/spezzato"
PATH="$folder/bin:$PATH"
export PATH
cd "$folder/plan" || exit 1
spezzato season PLAN.csv --no-cache > "$folder/alone" || fault "the season alone"
sbatch --wait --parsable recipe.sh > "$folder/said" 2>&1 || fault "sbatch: $(tail -n 1 "$folder/said") $(cat slurm-*.out 2> /dev/null | tail -n 1)"
[ "$(ls share-*.ndjson 2> /dev/null | wc -l)" = 5 ] || fault "$(ls share-*.ndjson 2> /dev/null | wc -l) shares of five"
cat share-*.ndjson | spezzato season PLAN.csv --lines - > plan.txt || fault "the plan from the lines"
same "$folder/alone" plan.txt "the plan from Slurm's shares"

# A task that failed is given again by its number.
rm -f share-3.ndjson
sbatch --wait --array=3 recipe.sh > "$folder/said" 2>&1 || fault "one task again: $(tail -n 1 "$folder/said")"
cat share-*.ndjson | spezzato season PLAN.csv --lines - --no-cache > plan.txt || fault "the plan with a task given again"
same "$folder/alone" plan.txt "the plan with a task given again"
cd - > /dev/null || exit 1
finish
