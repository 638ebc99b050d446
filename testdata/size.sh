# Builds the engine and the maker's page as js/wasm and fails when one has grown over its
# limit, in bytes after gzip -9.
#
# The page is to be usable after 2.0 MB in all, its program with 1.8 of them. It is not yet,
# so its limit below only keeps it from growing.
set -eu
cd "$(dirname "$0")/.."
mkdir -p build

weigh() { # name, package, limit
    go run ./site/build "$2" "build/$1.wasm"
    raw=$(wc -c <"build/$1.wasm")
    small=$(gzip -9 -c "build/$1.wasm" | wc -c)
    echo "$1 as js/wasm: $raw bytes, $small after gzip -9 (limit $3)"
    [ "$small" -le "$3" ]
}

weigh engine ./testdata/size 1230000
weigh workshop ./wasm/workshop 2010000
weigh stage ./wasm/stage 2800000
