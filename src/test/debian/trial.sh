#!/bin/bash
# The Debian package on a clean Debian: install, run, upgrade, remove, purge, install again.
#
#   src/test/debian/trial.sh [PACKAGE.deb]
#
# Needs root, and the packages debootstrap, socat and iproute2. The mirror is the one that this
# machine's apt uses. What was downloaded is kept in target/trial (TRIAL_CACHE names another place).
# Everything runs in its own mount, process and network space and goes with the script.
set -euo pipefail

if [ "${TRIAL_INSIDE:-}" != yes ]; then
    exec env TRIAL_INSIDE=yes unshare --mount --pid --fork --mount-proc --kill-child "$0" "$@"
fi

suite=bookworm
deb=$(realpath "${1:-$(ls target/witnessmark_*_all.deb)}")
cache=$(realpath -m "${TRIAL_CACHE:-target/trial}")
root=$(mktemp -d)
data=/var/lib/witnessmark
export DEBIAN_FRONTEND=noninteractive LC_ALL=C
passed=0

ok() { passed=$((passed + 1)); echo "ok $passed - $*"; }
fail() {
    echo "FAILED: $*" >&2
    exit 1
}
# expect WORDS COMMAND...: it ends well
expect() {
    local what=$1
    shift
    "$@" || fail "$what"
    ok "$what"
}
# says WORDS FILE PATTERN
says() { grep -qE -- "$3" "$2" || { cat "$2" >&2; fail "$1: nothing like $3"; }; ok "$1"; }

sources() { # of this machine's apt: suite, component, address
    apt-get indextargets --format '$(CODENAME) $(COMPONENT) $(REPO_URI)' \
        'Created-By: Packages' | awk '$2 == "main" && $1 ~ /^'"$suite"'/ { print $1, $3 }' | sort -u
}
mirror() { sources | awk -v s="$suite" '$1 == s { print $2; exit }'; }

new_root() {
    mkdir -p "$cache/archives/partial"
    if [ ! -e "$cache/base.tar" ]; then
        debootstrap --variant=minbase "$suite" "$cache/base" "$(mirror)" >"$cache/debootstrap.log"
        tar -C "$cache/base" -cf "$cache/base.tar" .
        rm -rf "$cache/base"
    fi
    tar -C "$root" -xf "$cache/base.tar"
    sources | awk '{ print "deb", $2, $1, "main" }' >"$root/etc/apt/sources.list"
    cp /etc/resolv.conf "$root/etc/resolv.conf"
    mount -t proc proc "$root/proc"
    mount --bind /dev "$root/dev"
    mount --bind "$cache/archives" "$root/var/cache/apt/archives"
    printf '#!/bin/sh\nexit 101\n' >"$root/usr/sbin/policy-rc.d"
    chmod 755 "$root/usr/sbin/policy-rc.d"
    install -d "$root/etc/apt/apt.conf.d"
    echo 'Binary::apt::APT::Keep-Downloaded-Packages "1"; APT::Keep-Downloaded-Packages "1";' \
        >"$root/etc/apt/apt.conf.d/90keep"
    rm -f "$root/etc/apt/apt.conf.d/docker-clean"
}
trap 'umount -l "$root/dev" "$root/proc" "$root/var/cache/apt/archives" 2>/dev/null; rm -rf --one-file-system "$root"' EXIT

apt_get() { chroot "$root" apt-get -qq -y --no-install-recommends "$@"; }
# what stands on the network of the trial alone
inside() { nsenter --net="/proc/$space/ns/net" chroot "$root" "$@"; }
as_user() { inside setpriv --reuid witnessmark --regid witnessmark --init-groups env -C / "$@"; }
wm() { as_user witnessmark "$@"; }
unit() { sed -n "s/^$1=//p" "$root/lib/systemd/system/witnessmark.service"; }
wait_for() { # PATTERN FILE
    for _ in $(seq 300); do
        if grep -qE "$1" "$2"; then return; fi
        sleep 0.2
    done
    cat "$2" "$root/run/daemon.log" >&2
    fail "$1 was awaited in $2"
}

start_daemon() {
    rm -f "$root/run/notify" "$root/run/told"
    : >"$root/run/told"
    socat -u UNIX-RECV:"$root/run/notify",mode=666 OPEN:"$root/run/told",append &
    told=$!
    until [ -S "$root/run/notify" ]; do sleep 0.1; done
    # as the unit has it: its user, its directory, its command
    # shellcheck disable=SC2046 # the command is several words
    nsenter --net="/proc/$space/ns/net" chroot "$root" setpriv --reuid "$(unit User)" --regid "$(unit Group)" --init-groups \
        --no-new-privs --bounding-set=-all \
        env -i -C "$(unit WorkingDirectory)" PATH=/usr/sbin:/usr/bin:/sbin:/bin \
        NOTIFY_SOCKET=/run/notify WATCHDOG_USEC=12000000 \
        $(unit ExecStart) >"$root/run/daemon.log" 2>&1 &
    daemon=$!
    wait_for '^READY=1$' "$root/run/told"
    wait_for 'link="shop-broker".* to="UP"' "$root/run/daemon.log"
    wait_for '^WATCHDOG=1$' "$root/run/told"
    ok "started as the unit does: ready, and alive"
}
stop_daemon() {
    kill -TERM "$daemon"
    local status=0
    wait "$daemon" || status=$?
    [ "$status" = 143 ] || fail "the daemon ended with $status: $(cat "$root/run/daemon.log")"
    wait_for '^STOPPING=1$' "$root/run/told"
    kill "$told"
    ok "stopped in order (143)"
}
reading() { # NUMBER
    inside mosquitto_pub -h 127.0.0.1 -q 1 -t witnessmark/v1/bench-1/torque \
        -m '{"wrench":"TW-0417","event":'"$1"',"torque":"21.'"$1"'","unit":"N.m"}'
    for _ in $(seq 60); do
        if wm trace --wrench TW-0417 | grep -q "21\.$1 N\.m"; then
            ok "reading $1 is in the trace"
            return
        fi
        sleep 1
    done
    wm trace --wrench TW-0417 >&2
    fail "reading $1 never came into the trace"
}
entries() { chroot "$root" runuser -u witnessmark -- witnessmark ledger export --jsonl; }
newer() { # VERSION: the same package under it
    local tree
    tree=$(mktemp -d)
    dpkg-deb -R "$deb" "$tree/p"
    sed -i "s/^Version: .*/Version: $1/" "$tree/p/DEBIAN/control"
    dpkg-deb -Znone -b "$tree/p" "$root/root/newer.deb" >/dev/null
    rm -rf "$tree"
}

new_root
apt_get update
unshare --net sleep infinity &
space=$!
sleep 0.5
nsenter --net="/proc/$space/ns/net" ip link set lo up
cp "$deb" "$root/root/first.deb"

echo "# install"
apt_get install /root/first.deb >"$root/run/apt.log" 2>&1 || { cat "$root/run/apt.log"; fail install; }
says "the first install begins a log and says where the key is" "$root/run/apt.log" \
    "^Began a log in $data"
says "and to keep the key elsewhere" "$root/run/apt.log" "Keep a copy on another machine"
expect "the data are the service's own" \
    test "$(chroot "$root" stat -c '%U:%G %a' $data)" = "witnessmark:witnessmark 750"
expect "the key is nobody else's" \
    test "$(chroot "$root" stat -c '%U %a' $data/ledger.key)" = "witnessmark 600"
expect "the user may open serial ports" \
    grep -qw dialout <(chroot "$root" id -Gn witnessmark)
expect "nothing but the log lies there" \
    test "$(ls -A "$root$data" | sort | tr '\n' ' ')" = "ledger.db ledger.key ledger.pub "
expect "the version is the package's" \
    test "$(wm --version)" = "witnessmark $(dpkg-deb -f "$deb" Version)"
apt_get install mosquitto mosquitto-clients >"$root/run/apt.log" 2>&1 || fail "the broker"
inside mosquitto >"$root/run/mosquitto.log" 2>&1 &

echo "# run"
start_daemon
reading 1
stop_daemon
wm ledger verify | tee "$root/run/verified"
says "the log verifies" "$root/run/verified" '^Verified: 2 entries'
entries >"$root/run/before.jsonl"
wm ledger checkpoint >"$root/run/kept.txt"

echo "# upgrade"
echo '# a line of the shop' >>"$root/etc/witnessmark/shop.toml"
newer 99.0
start_daemon
apt_get install /root/newer.deb >"$root/run/apt.log" 2>&1 || { cat "$root/run/apt.log"; fail upgrade; }
expect "the newer version is there" \
    test "$(chroot "$root" dpkg-query -W -f '${Version}' witnessmark)" = 99.0
expect "it begins no second log" sh -c "! grep -q 'Began a log' $root/run/apt.log"
reading 2
stop_daemon
start_daemon
reading 3
stop_daemon
expect "the shop's own configuration stays" grep -q 'a line of the shop' \
    "$root/etc/witnessmark/shop.toml"
entries | head -2 >"$root/run/after.jsonl"
expect "what was on record is the same, byte for byte" \
    cmp "$root/run/before.jsonl" "$root/run/after.jsonl"

echo "# an empty directory at an upgrade is no first install"
mv "$root$data" "$root/run/elsewhere"
newer 99.1
apt_get install /root/newer.deb >"$root/run/apt.log" 2>&1 || fail "upgrade without data"
expect "no second history begins" test ! -e "$root$data/ledger.db"
rm -rf "$root$data"
mv "$root/run/elsewhere" "$root$data"

echo "# remove"
apt_get remove witnessmark >"$root/run/apt.log" 2>&1 || fail remove
expect "the program is gone" test ! -e "$root/usr/bin/witnessmark" -a ! -e "$root/usr/share/witnessmark"
expect "data and configuration stay" test -e "$root$data/ledger.db" -a -e "$root/etc/witnessmark/shop.toml"

echo "# purge"
apt_get purge witnessmark >"$root/run/apt.log" 2>&1 || fail purge
expect "the configuration is gone" test ! -e "$root/etc/witnessmark"
says "what is kept is said" "$root/run/apt.log" "^Kept: the log in $data"
expect "the data are kept" test -e "$root$data/ledger.db" -a -e "$root$data/ledger.key"

echo "# install again"
apt_get install /root/first.deb >"$root/run/apt.log" 2>&1 || { cat "$root/run/apt.log"; fail again; }
expect "it begins no second log" sh -c "! grep -q 'Began a log' $root/run/apt.log"
start_daemon
reading 4
stop_daemon
wm ledger verify --since /run/kept.txt | tee "$root/run/verified"
says "the same log goes on" "$root/run/verified" '^Verified: 5 entries'
says "from the checkpoint that was kept" "$root/run/verified" 'The first 2 are those'
entries | head -2 >"$root/run/after.jsonl"
expect "what was on record is still the same" cmp "$root/run/before.jsonl" "$root/run/after.jsonl"
expect "nothing of the program's lies about in the data" \
    test -z "$(ls -A "$root$data" | grep -vE '^(ledger\.(db|key|pub)(-wal|-shm)?|daemon\.lock)$')"

echo "# an empty directory after a purge is no first install either"
apt_get purge witnessmark >"$root/run/apt.log" 2>&1 || fail purge
mv "$root$data" "$root/run/elsewhere"
apt_get install /root/first.deb >"$root/run/apt.log" 2>&1 || { cat "$root/run/apt.log"; fail again; }
expect "no second history begins" test ! -e "$root$data/ledger.db"
says "and it says how to begin one" "$root/run/apt.log" "^No log was begun in $data"

echo "$passed passed, 0 failed"
