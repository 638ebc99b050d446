# Fails when a Go file is not as gofmt writes it, and names the file.
bad=$(gofmt -l assets cmd engine site testdata wasm)
[ -z "$bad" ] && exit 0
printf 'not as gofmt writes it:\n%s\n' "$bad"
exit 1
