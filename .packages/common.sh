# Shared by render/fly, tests/run and their neighbours; read with `source`, never run by itself.
# shellcheck shell=bash
: "${root:?common.sh wants the repository root in \$root}"

say() { printf 'stallwright: %s\n' "$*" >&2; }
die() { say "$@"; exit 2; }

# need_packages LIST...: makes sure that the packages in .packages/LIST are there. A complete machine needs no network.
need_packages() {
  local name list missing=() as_root=()
  if ! command -v dpkg-query >/dev/null; then
    say "this is no Debian system: not checking for the packages listed in .packages/ ($*)"
    return
  fi
  for list in "$@"; do
    while read -r name; do
      [[ $(dpkg-query -W -f '${db:Status-Status}' "$name" 2>/dev/null) == installed ]] || missing+=("$name")
    done < <(grep -v '^#' "$root/.packages/$list")
  done
  ((${#missing[@]})) || return 0

  if ((EUID != 0)); then
    if ! sudo -n true 2>/dev/null; then
      die "missing packages; as root: apt-get install ${missing[*]}"
    fi
    as_root=(sudo -n)
  fi
  say "installing ${missing[*]}"
  as_root+=(env DEBIAN_FRONTEND=noninteractive apt-get -q -o Dpkg::Use-Pty=0)
  # One broken list among several is no reason to stop; whether the packages can be had shows in the next step.
  "${as_root[@]}" update >/dev/null || say "apt-get update had errors; going on with the lists it has"
  "${as_root[@]}" install -y --no-install-recommends "${missing[@]}" >/dev/null ||
    die "could not install these packages: ${missing[*]}"
}

# configure PRESET [-D...]: quiet when all is well, the whole output when not.
configure() {
  local log
  if command -v ccache >/dev/null; then export CMAKE_CXX_COMPILER_LAUNCHER=ccache; fi
  if ! log=$(cmake -S "$root" --preset "$@" 2>&1); then
    printf '%s\n' "$log" >&2
    die "could not configure the '$1' build"
  fi
}

# build PRESET [TARGET...]: builds with Ninja, by default everything that was configured.
build() {
  local preset=$1
  shift
  cmake --build "$root/.build/$preset" ${1:+--target "$@"} >&2 || die "the '$preset' build failed"
}
