# Installs what the tests need and this machine lacks: Node (js/wasm tests, page checks),
# Chromium (the page as people see it), the npm packages of testdata/npm. Where it cannot
# install, it says what to install and fails.
set -u

lacking=
command -v node >/dev/null || lacking="$lacking nodejs"
command -v npm >/dev/null || lacking="$lacking npm"
command -v chromium >/dev/null || command -v chromium-browser >/dev/null || command -v google-chrome >/dev/null ||
    lacking="$lacking chromium"

if [ -n "$lacking" ]; then
    as_root=
    [ "$(id -u)" = 0 ] || as_root=sudo
    if ! command -v apt-get >/dev/null || { [ -n "$as_root" ] && ! command -v sudo >/dev/null; }; then
        echo "make test needs$lacking: install them (a Debian calls them so) and run it again" >&2
        exit 1
    fi
    echo "installing$lacking"
    $as_root apt-get update -qq &&
        DEBIAN_FRONTEND=noninteractive $as_root apt-get install -y -qq --no-install-recommends $lacking >/dev/null || exit 1
fi

cd "$(dirname "$0")/npm" || exit 1
if ! cmp -s package-lock.json node_modules/.from; then
    npm ci --ignore-scripts --no-audit --no-fund --loglevel=error || exit 1
    cp package-lock.json node_modules/.from
fi
