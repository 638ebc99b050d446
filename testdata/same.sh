# Fails when any build, picture or link differs between this machine and js/wasm.
set -eu
cd "$(dirname "$0")/.."
mkdir -p build
go run ./testdata/digest >build/digest-native.txt
env -i PATH="$PATH" HOME="$HOME" ${GOPATH:+GOPATH="$GOPATH"} ${GOMODCACHE:+GOMODCACHE="$GOMODCACHE"} ${GOCACHE:+GOCACHE="$GOCACHE"} ${GOFLAGS:+GOFLAGS="$GOFLAGS"} \
    GOOS=js GOARCH=wasm go run -exec="$(go env GOROOT)/lib/wasm/go_js_wasm_exec" ./testdata/digest >build/digest-wasm.txt
cmp build/digest-native.txt build/digest-wasm.txt
echo "native and js/wasm agree on $(wc -l <build/digest-native.txt) plans"
