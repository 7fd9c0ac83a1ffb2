# Sourced by app/run, tests/run and .ci/run: what a bare Debian 12 lacks to build and run, and the build itself.

yardcast_packages=(
    # to build
    g++ cmake ninja-build pkg-config git ca-certificates
    qt6-base-dev qt6-svg-dev
    nlohmann-json3-dev libpolyclipping-dev libcli11-dev libeigen3-dev libdxflib-dev
    # to test
    libgtest-dev libgmock-dev libbenchmark-dev poppler-utils
    # to run: the plugin for SVG icons, and a font
    libqt6svg6 fonts-dejavu-core
)

# What tests/run wants besides: the general solvers that tests/reference compares with. Without them those tests are skipped.
yardcast_test_packages=(calculix-ccx coinor-cbc)

# What .ci/run wants besides: the sanitizers and the fuzz are clang's; lld links in a fifth of the time; llvm puts names
# into the stacks.
yardcast_clang_packages=(clang libclang-rt-14-dev lld llvm)

# Installs those of the named packages that are missing; does nothing, and asks for nothing, when all are there.
install_missing() {
    if ! command -v dpkg-query >/dev/null; then
        echo "This is no Debian: please see that these are installed: $*" >&2
        return 0
    fi
    local missing=() package
    for package in "$@"; do
        if [[ "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null)" != installed ]]; then
            missing+=("$package")
        fi
    done
    if ((${#missing[@]} == 0)); then
        return 0
    fi
    local as_root=()
    if ((EUID != 0)); then
        if ! command -v sudo >/dev/null; then
            echo "Please install as root: apt-get install --no-install-recommends ${missing[*]}" >&2
            return 1
        fi
        as_root=(sudo)
    fi
    echo "Installing: ${missing[*]}"
    "${as_root[@]}" apt-get update -q
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends "${missing[@]}"
}

# configure FOLDER [CMAKE OPTIONS...]; uses ccache where there is one.
configure() {
    local folder=$1
    shift
    local options=("$@")
    if command -v ccache >/dev/null; then
        options+=(-DCMAKE_CXX_COMPILER_LAUNCHER=ccache)
    fi
    mkdir -p "$folder"
    cmake -S . -B "$folder" -G Ninja "${options[@]}" >"$folder/configure.log" 2>&1 || {
        cat "$folder/configure.log"
        return 1
    }
}

# A private place for what Qt programs write beside the plan: settings, caches, sockets.
private_places() {
    export XDG_RUNTIME_DIR="$PWD/$1/runtime" XDG_CONFIG_HOME="$PWD/$1/config" XDG_CACHE_HOME="$PWD/$1/cache"
    export XDG_DATA_HOME="$PWD/$1/data" XDG_STATE_HOME="$PWD/$1/state"
    mkdir -p "$XDG_RUNTIME_DIR" "$XDG_CONFIG_HOME" "$XDG_CACHE_HOME" "$XDG_DATA_HOME" "$XDG_STATE_HOME"
    chmod 700 "$XDG_RUNTIME_DIR"
}
