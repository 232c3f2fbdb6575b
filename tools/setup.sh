# SPDX-License-Identifier: Apache-2.0
# shellcheck shell=bash
# What ./run and ./test share: missing packages, and a quiet build.
# Sourced, not started; the caller has set `root` to the top of the tree.
# Nothing here writes to stdout or reads stdin: both belong to the program.
: "${root:?set by the caller}"

say() { printf 'Counterpoise: %s\n' "$*" >&2; }

# Which room wants which packages, so that a room that is not there costs nothing.
build_packages() {
  command -v c++ >/dev/null 2>&1 || echo g++
  command -v cmake >/dev/null 2>&1 || echo cmake
  command -v ninja >/dev/null 2>&1 || echo ninja-build
  missing_packages nlohmann-json3-dev libcli11-dev
  if [ -d "$root/src/store" ]; then missing_packages libsqlite3-dev zlib1g-dev libzstd-dev; fi
  if [ -d "$root/src/sweep" ]; then missing_packages libtbb-dev; fi
  if [ -d "$root/src/print" ]; then
    missing_packages pkg-config libcairo2-dev libpango1.0-dev librsvg2-dev fonts-dejavu-core
  fi
}

# Prints those of the named Debian packages that are not installed.
missing_packages() {
  local package state
  for package in "$@"; do
    state=$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null) || state=
    [ "$state" = installed ] || echo "$package"
  done
}

# install_packages PACKAGE...: with apt, as root or through sudo. An update that
# fails for one source is no reason to stop: the install decides.
install_packages() {
  [ $# -gt 0 ] || return 0
  local log as_root=()
  if ! command -v apt-get >/dev/null 2>&1; then
    say "this machine has no apt-get. Please install what these Debian packages hold: $*"
    return 1
  fi
  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null 2>&1; then
      say "these packages are missing: $*"
      say "please run as root: apt-get install $*"
      return 1
    fi
    as_root=(sudo)
  fi
  local names="$*"
  say "installing ${names// /, } ..."
  log=$(mktemp) || return 1
  # No pty, no questions; wait for another apt to finish instead of failing.
  local apt=("${as_root[@]}" env DEBIAN_FRONTEND=noninteractive
    apt-get -y -q -o DPkg::Lock::Timeout=600 -o Acquire::Retries=3)
  "${apt[@]}" update >"$log" 2>&1 </dev/null || true
  if ! "${apt[@]}" install --no-install-recommends "$@" >>"$log" 2>&1 </dev/null; then
    tail -n 30 "$log" >&2
    say "the packages could not be installed (the last lines of apt are above)."
    rm -f "$log"
    return 1
  fi
  rm -f "$log"
}

# The tree has not changed since the stamp. Folders count too: adding, renaming
# or deleting a file touches the folder. The stamp names the tree, so that a
# moved or copied tree is not taken for built.
is_fresh() {
  local stamp=$1; shift
  [ -e "$stamp" ] && [ "$(<"$stamp")" = "$root" ] || return 1
  [ -z "$(find "$@" -newer "$stamp" -print -quit 2>/dev/null)" ]
}

# build_preset PRESET: configure and build into build/PRESET; the output goes to
# a log there and is shown only when something fails.
build_preset() {
  local preset=$1 dir=$root/build/$1 log=$root/build/$1.log began=$SECONDS timer status
  if [ -e "$dir/CMakeCache.txt" ] &&
     ! grep -qxF "CMAKE_HOME_DIRECTORY:INTERNAL=$root" "$dir/CMakeCache.txt"; then
    rm -rf "$dir"            # the tree was moved or copied here
  fi
  if [ -e "$dir/build.ninja" ]; then
    ( sleep 3 >/dev/null 2>&1; say "building what changed ..." ) 9>&- & timer=$!
  else
    say "building (only the first time: one to three minutes) ..."
    timer=
  fi
  local cache=${CCACHE_DIR:-${XDG_CACHE_HOME:-${HOME:-}/.cache}/ccache}
  if ! mkdir -p "$cache" 2>/dev/null || [ ! -w "$cache" ]; then
    export CCACHE_DISABLE=1  # an unwritable cache would stop every compilation
  fi
  { cmake -S "$root" --preset "$preset" && cmake --build "$dir" -j "$(nproc)"; } \
    >"$log" 2>&1 </dev/null 9>&-
  status=$?
  if [ -n "$timer" ]; then kill "$timer" 2>/dev/null; wait "$timer" 2>/dev/null; fi
  if [ $status -ne 0 ]; then
    if grep -qE '^(FAILED|CMake Error)' "$log"; then
      sed -nE '/^(FAILED|CMake Error)/,$p' "$log" | head -n 40 >&2
    else
      tail -n 40 "$log" >&2
    fi
    say "the build failed (everything it said: build/$preset.log)."
    return 1
  fi
  if [ $((SECONDS - began)) -ge 5 ]; then say "built in $((SECONDS - began)) s."; fi
  return 0
}

# --- the desk: the engine as WebAssembly, and the page around it -------------

# What only the desk needs.
desk_packages() {
  missing_packages clang-19 lld-19 wasi-libc libc++-19-dev-wasm32 libclang-rt-19-dev-wasm32 binaryen
  command -v node >/dev/null 2>&1 || echo nodejs
  command -v npm >/dev/null 2>&1 || echo npm
}

# The tools for the page want Node 20 and Debian 12 brings 18: then they, and
# nobody else, get one of their own under build/.
own_node=20.20.2
install_node() {
  local own=$root/build/node major
  major=$(node -p 'process.versions.node.split(".")[0]') || return 1
  if [ "$major" -ge 20 ]; then return 0; fi
  if [ ! -x "$own/node_modules/.bin/node" ]; then
    say "installing Node $own_node for the page and its tests ..."
    mkdir -p "$own"
    if ! npm install --prefix "$own" --no-audit --no-fund --no-save --no-package-lock \
        "node-linux-$(node -p process.arch)@$own_node" >"$root/build/npm.log" 2>&1 </dev/null 9>&-; then
      tail -n 30 "$root/build/npm.log" >&2
      say "Node $own_node could not be installed (everything npm said: build/npm.log)."
      return 1
    fi
  fi
  PATH=$own/node_modules/.bin:$PATH
}

# install_npm FOLDER: npm ci, only when the lock file is newer than what is installed.
install_npm() {
  local folder=$1
  if [ -e "$folder/node_modules/.package-lock.json" ] &&
     [ ! "$folder/package-lock.json" -nt "$folder/node_modules/.package-lock.json" ]; then
    return 0
  fi
  say "installing what ${folder#"$root"/} needs ..."
  if ! npm ci --prefix "$folder" --no-audit --no-fund >"$root/build/npm.log" 2>&1 </dev/null 9>&-; then
    tail -n 30 "$root/build/npm.log" >&2
    say "npm ci failed (everything it said: build/npm.log)."
    return 1
  fi
  touch "$folder/node_modules/.package-lock.json"
}

# What the page is made of. What the build writes among the sources is not part of it.
desk_sources() {
  find "$root/src" "$root/cmake" "$root/CMakeLists.txt" "$root/CMakePresets.json" "$root/web" \
    \( -name node_modules -o -name dist -o -name generated -o -path "$root/web/tests" \) -prune -o -newer "$1" -print -quit 2>/dev/null
}

is_desk_built() {
  local stamp=$root/build/desk.built
  [ -e "$root/build/desk/index.html" ] && [ -e "$root/build/desk/lessons.html" ] && [ -e "$root/build/lesson/pupil.js" ] && [ -e "$stamp" ] && [ "$(<"$stamp")" = "$root" ] && [ -z "$(desk_sources "$stamp")" ]
}

# Builds the engine module, the desk (build/desk) and the script of lesson pages
# (build/lesson); nothing when nothing changed.
build_desk() {
  if is_desk_built; then return 0; fi
  exec 8>"$root/build/.desk.lock" || return 1
  flock 8                    # ./run and ./test may both want it
  if is_desk_built; then exec 8>&-; return 0; fi
  local web=$root/web log=$root/build/desk.log modules=$root/build/wasm/counterpoise began=$root/build/desk.began
  mkdir -p "$web/src/engine/generated"
  touch "$began"             # older than any edit made while we build
  build_preset wasm && install_npm "$web" || return 1
  if ! ( cd "$web" && node embed_engine.mjs "${modules}_engine.wasm" "${modules}_lessons.wasm" &&
         npx --no-install vite build --outDir "$root/build/desk" --emptyOutDir &&
         npx --no-install vite build -c vite.writing.config.ts --outDir "$root/build/desk" &&
         npx --no-install vite build -c vite.lesson.config.ts --outDir "$root/build/lesson" --emptyOutDir ) \
      >"$log" 2>&1 </dev/null 8>&- 9>&-; then
    tail -n 40 "$log" >&2
    say "the page could not be built (everything it said: build/desk.log)."
    return 1
  fi
  printf '%s\n' "$root" >"$root/build/desk.built"
  touch -r "$began" "$root/build/desk.built"
  exec 8>&-
}
