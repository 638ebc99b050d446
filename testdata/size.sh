# Builds the engine as js/wasm and fails when it has grown over its limit, in bytes
# after gzip -9. The limit leaves room for the page: 2.0 MB in all before it is usable.
set -eu
limit=1300000
cd "$(dirname "$0")/.."
mkdir -p build
GOOS=js GOARCH=wasm go build -trimpath -ldflags='-s -w' -o build/engine.wasm ./testdata/size
raw=$(wc -c <build/engine.wasm)
small=$(gzip -9 -c build/engine.wasm | wc -c)
echo "engine as js/wasm: $raw bytes, $small after gzip -9 (limit $limit)"
[ "$small" -le "$limit" ]
