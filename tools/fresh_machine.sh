#!/usr/bin/env bash
# SPDX-License-Identifier: Apache-2.0
# tools/fresh_machine.sh [--only run|test] [--keep] [--uncommitted]
#
# Proves that ./run and ./test work on a machine that has nothing: builds a
# minimal Debian 12 in a folder (debootstrap), clones the committed tree into it
# (--uncommitted: the tree as it lies here), starts both inside, prints how long
# each part took. Needs root. Logs stay; so does the machine with --keep.
# Mirrors, proxies and the npm registry are those of the machine it runs on.

set -u -o pipefail
release=bookworm
top=$(dirname -- "$(dirname -- "$(readlink -f -- "$0")")")
only='' keep='' uncommitted=''
usage() { sed -n '3,10s/^# \{0,1\}//p' "$0" >&2; exit 64; }
while [ $# -gt 0 ]; do
  case $1 in
    --only) only=${2:-}; shift; [ "$only" = run ] || [ "$only" = test ] || usage ;;
    --keep) keep=yes ;;
    --uncommitted) uncommitted=yes ;;
    *) usage ;;
  esac
  shift
done
[ "$(id -u)" -eq 0 ] || { echo "fresh_machine: please start me as root" >&2; exit 64; }

work=$(mktemp -d "${TMPDIR:-/var/tmp}/counterpoise-fresh.XXXXXX") || exit 70
machine=$work/machine
logs=$work/logs
home="/srv/a teacher/counterpoise"   # a blank in the path, on purpose
mkdir -p "$machine" "$logs"

say() { printf '%s\n' "$*"; }
fail() { say "fresh_machine: $*" >&2; exit 70; }
quietly() {   # quietly LOG COMMAND...: the output goes to the log, and is shown on failure
  local log=$logs/$1; shift
  "$@" >"$log" 2>&1 </dev/null || { tail -n 40 "$log" >&2; fail "failed: $*"; }
}

# shellcheck disable=SC2317  # reached through the trap
# Never deletes through a mount: /dev of this machine is mounted in there.
cleanup() {
  local point
  for point in dev sys proc; do
    if mountpoint -q "$machine/$point"; then umount -R -l "$machine/$point"; fi
  done
  if [ -n "$keep" ]; then
    say "kept: $machine (nothing of this machine is mounted there any more)"
  elif ! grep -qF " $machine/" /proc/mounts; then
    rm -rf --one-file-system "$machine"
  fi
  say "logs: $logs"
}
trap cleanup EXIT
trap 'exit 130' INT TERM

# One line "URI suite component" for each Debian source this machine uses.
debian_sources() {
  # shellcheck disable=SC2016  # apt fills these in
  apt-get indextargets --format '$(REPO_URI) $(RELEASE) $(COMPONENT) $(CODENAME) $(ORIGIN) $(CREATED_BY)' |
    awk -v release="$release" '$4 ~ "^" release && $5 ~ /^Debian/ && $6 == "Packages" { print $1, $2, $3 }' | sort -u
}

make_machine() {
  if ! command -v debootstrap >/dev/null; then
    quietly apt.log sh -c 'apt-get update; DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends debootstrap'
  fi
  [ -n "$(debian_sources)" ] || quietly apt-update.log apt-get update
  local mirror
  mirror=$(debian_sources | awk -v release="$release" '$2 == release && $3 == "main" { print $1; exit }')
  [ -n "$mirror" ] || fail "this machine's apt knows no mirror of Debian $release"
  quietly debootstrap.log debootstrap --variant=minbase "$release" "$machine" "$mirror"

  debian_sources | sed 's/^/deb /' >"$machine/etc/apt/sources.list"
  apt-config dump --no-empty --format '%F "%v";%n' |
    grep -E '^Acquire::(https?|ftp|Retries)' >"$machine/etc/apt/apt.conf.d/90-like-the-host" || true
  cp -rn /usr/share/keyrings/. "$machine/usr/share/keyrings/" 2>/dev/null
  cp -rn /etc/apt/trusted.gpg.d/. "$machine/etc/apt/trusted.gpg.d/" 2>/dev/null
  cp -L /etc/resolv.conf /etc/hosts "$machine/etc/" 2>/dev/null
  # Behind a proxy with its own certificates npm needs to know them.
  if [ -n "${NODE_EXTRA_CA_CERTS:-}" ]; then cp -L "$NODE_EXTRA_CA_CERTS" "$machine/etc/host-ca.crt"; fi

  local point
  mount -t proc proc "$machine/proc" || fail "can not mount /proc inside; is this a container without that right?"
  for point in sys dev; do
    if ! mount --rbind "/$point" "$machine/$point" || ! mount --make-rslave "$machine/$point"; then
      fail "can not mount /$point inside"
    fi
  done
}

copy_tree() {
  mkdir -p "$machine$home"
  # The tree may belong to somebody else than root.
  export GIT_CONFIG_COUNT=1 GIT_CONFIG_KEY_0=safe.directory GIT_CONFIG_VALUE_0='*'
  if [ -n "$uncommitted" ]; then
    git -C "$top" ls-files -z --cached --others --exclude-standard --deduplicate >"$work/list"
    # A file listed but deleted meanwhile is no reason to stop.
    tar -C "$top" --null --ignore-failed-read -T "$work/list" -cf - 2>"$logs/copy.log" | tar -C "$machine$home" -xf -
  else
    git -C "$top" rev-parse -q --verify HEAD >/dev/null || fail "nothing is committed yet (try --uncommitted)"
    quietly clone.log git clone --no-hardlinks "$top" "$machine$home"
  fi
}

# inside COMMAND...: in the machine, in an empty environment, away from the tree.
inside() {
  local name extra=()
  for name in http_proxy https_proxy no_proxy HTTP_PROXY HTTPS_PROXY NO_PROXY; do
    if [ -n "${!name:-}" ]; then extra+=("$name=${!name}"); fi
  done
  local registry=''
  if command -v npm >/dev/null; then registry=$(cd / && npm config get registry 2>/dev/null) || registry=''; fi
  if [ -e "$machine/etc/host-ca.crt" ]; then extra+=(NODE_EXTRA_CA_CERTS=/etc/host-ca.crt); fi
  if [ -n "$registry" ] && [ "$registry" != undefined ]; then extra+=("npm_config_registry=$registry"); fi
  chroot "$machine" /usr/bin/env -i HOME=/root TERM=dumb LANG=C.UTF-8 \
    PATH=/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin "${extra[@]}" "$@"
}

now() { date +%s.%N; }
since() { awk -v a="$1" -v b="$(now)" 'BEGIN { printf "%.1f", b - a }'; }

# timed LOG COMMAND...: leaves the seconds in $took, the seconds of the build,
# which the command reports itself, in $built, and its exit code in $code.
timed() {
  local log=$logs/$1 began; shift
  began=$(now)
  inside "$@" >"$log" 2>"$log.err" </dev/null
  code=$?
  took=$(since "$began")
  built=$(sed -n 's/.*built in \([0-9]*\) s\..*/\1/p' "$log.err" | tail -n 1)
}

show() { printf '%-34s %8s s\n' "$1" "$2"; }
show_parts() { show "  of it packages" "$(awk -v a="$took" -v b="${built:-0}" 'BEGIN { printf "%.0f", a - b }')"
               show "  of it building" "${built:-0}"; }

status=0
began=$(now)
make_machine
copy_tree
show "an empty Debian 12 machine" "$(since "$began")"

if [ "$only" != test ]; then
  timed first_start.log "$home/run"
  show "./run, first start" "$took"
  show_parts
  if [ $code -ne 0 ]; then
    tail -n 40 "$logs/first_start.log.err"
    say "./run ended with $code"; status=1
  else
    timed second_start.log "$home/run"
    show "./run, second start" "$took"
    if [ -s "$logs/second_start.log.err" ] || ! cmp -s "$logs/first_start.log" "$logs/second_start.log"; then
      say "the second start does not say the same as the first"; status=1
    fi
    say "./run said: $(wc -l <"$logs/first_start.log") lines, beginning with"
    head -n 5 "$logs/first_start.log" | sed 's/^/    /'
  fi
fi

if [ "$only" != run ]; then
  timed test.log "$home/test"
  show "./test" "$took"
  show "  of it building" "${built:-0}"
  if [ $code -ne 0 ]; then tail -n 40 "$logs/test.log.err"; say "./test ended with $code"; status=1; fi
  say "./test said at the end:"
  tail -n 12 "$logs/test.log" | sed 's/^/    /'
fi
exit $status
