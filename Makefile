# run    build and serve at http://localhost:8080 (needs only Go)
# test   everything that must hold; installs what it lacks where it can
# bench  the time of one step, native and js/wasm, and of the page in Chromium
# site   the pages as files, in site/dist
# shots  every job as a picture, at four sizes by day and in the evening, in build/shots

GO     ?= go
ADDR   ?= localhost:8080
NODE_WASM = $(shell $(GO) env GOROOT)/lib/wasm/go_js_wasm_exec

# go_js_wasm_exec hands the environment to Node, which takes 4 kB of it at most.
GO_VARS = GOPATH GOMODCACHE GOCACHE GOPROXY GOSUMDB GOFLAGS GOTOOLCHAIN GOROOT
JS      = env -i PATH="$$PATH" HOME="$$HOME" $(foreach v,$(GO_VARS),$(if $($(v)),$(v)="$($(v))")) GOOS=js GOARCH=wasm
ON_NODE = -exec="$(NODE_WASM)"

# Patterns with ... pass testdata by, so its packages are named.
DATA = $(patsubst %/,./%,$(sort $(dir $(wildcard testdata/*/*.go testdata/*/*/*.go))))

# What drives Chromium does not run in one.
IN_JS = $(filter-out ./testdata/visitor ./testdata/shots ./testdata/pagebench,$(DATA))

.PHONY: run test bench site shots pictures tools

run: site
	$(GO) run ./cmd/ledgewright serve --dir site/dist --addr $(ADDR)

test: tools
	@sh testdata/gofmt.sh
	$(GO) vet -tags browser ./... $(DATA)
	$(JS) $(GO) vet ./... $(IN_JS)
	@sh testdata/size.sh
	$(JS) $(GO) test $(ON_NODE) ./engine/...
	@sh testdata/same.sh
	$(GO) test -tags browser ./... $(DATA)

tools:
	@sh testdata/tools.sh

bench:
	$(GO) test -run '^$$' -bench . ./engine/ ./engine/drawing ./wasm/stage/mesh
	$(JS) $(GO) test -run '^$$' -bench . $(ON_NODE) ./engine/ ./engine/drawing ./wasm/stage/mesh
	@sh testdata/size.sh
	$(GO) run ./testdata/pagebench

site:
	$(GO) run ./site/build site/dist

shots:
	$(GO) run ./testdata/shots build/shots

pictures:
	$(GO) run ./testdata/pictures build/pictures
