# Builds the engine as js/wasm and fails when it has grown over its limit, in bytes
# after gzip -9. A page must be usable after 2.0 MB in all; the rest is for its own code,
# fonts and pictures.
set -eu
limit=1650000
cd "$(dirname "$0")/.."
mkdir -p build
GOOS=js GOARCH=wasm go build -trimpath -ldflags='-s -w' -o build/engine.wasm ./testdata/size
raw=$(wc -c <build/engine.wasm)
small=$(gzip -9 -c build/engine.wasm | wc -c)
echo "engine as js/wasm: $raw bytes, $small after gzip -9 (limit $limit)"
[ "$small" -le "$limit" ]
