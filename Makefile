GO ?= go
export CGO_ENABLED = 0
STATICCHECK = honnef.co/go/tools/cmd/staticcheck@v0.7.0

TARGETS = linux/amd64 linux/arm64 darwin/amd64 darwin/arm64 windows/amd64 windows/arm64
PREFIX = /usr/local
DESTDIR =
PROGRAM = bin/evenlip
at = $(DESTDIR)$(PREFIX)
doc = $(at)/share/doc/evenlip

.PHONY: help build test soak race lint cross cover bench docs verification fuzz hunt mutate install uninstall dist try-dist clean

build: ## the program, into bin/evenlip
	$(GO) build -trimpath -o bin/evenlip ./cmd/evenlip

test: ## all the tests
	$(GO) test ./...

soak: ## the long simulations
	$(GO) test -tags soak -run Soak -timeout 30m ./internal/...

# Wants a C compiler.
race: ## the race detector on all that is concurrent
	CGO_ENABLED=1 GORACE=atexit_sleep_ms=0 $(GO) test -race ./internal/batch ./internal/crib/store
	CGO_ENABLED=1 GORACE=atexit_sleep_ms=0 $(GO) test -race -run 'Batch|Progress|Scripts/(batch|crib)|Record|Audit' \
		./internal/crib ./internal/cli

lint: ## gofmt, vet and staticcheck
	@out=$$(gofmt -l cmd internal); test -z "$$out" || { echo "gofmt would change:"; echo "$$out"; exit 1; }
	$(GO) vet ./...
	$(GO) run $(STATICCHECK) ./...

cross: ## vet and compile for every system of a release
	@for target in $(TARGETS); do \
		echo "vet and build for $$target"; \
		export GOOS=$${target%/*} GOARCH=$${target#*/}; \
		$(GO) vet ./... && $(GO) build -o bin/cross/$$target ./cmd/evenlip || exit 1; \
	done

cover: ## how much of the geometry and the quantities the tests reach
	$(GO) test -cover ./internal/point ./internal/quantity

# The tests leave what they show in a folder; its page goes into docs. A failed case
# that rapid kept would be counted with those drawn.
verification: ## docs/verification.md anew
	@find internal -path '*/testdata/rapid' -prune -exec rm -r {} +
	@shown=$$(mktemp -d) && trap 'rm -r "$$shown"' EXIT && \
		VERIFICATION=$$shown $(GO) test -count=1 ./internal/... && \
		$(GO) run ./internal/testkit/page "$$shown" >"$$shown/page" && cp "$$shown/page" docs/verification.md

fuzz: ## every fuzz target, an hour in all, or FUZZTIME=10s each
	.ci/fuzz $(FUZZTIME)

hunt: ## every property on 5000 cases drawn afresh, or CHECKS=100000
	.ci/hunt $(CHECKS)

mutate: ## break the core place by place, an hour or so, or PACKAGES="plan point"
	.ci/mutate $(PACKAGES)

bench: ## start-up beside the libraries alone, then what is computed
	$(GO) test -run '^$$' -bench . -benchtime 200x ./cmd/evenlip
	$(GO) test -run '^$$' -bench . -benchmem ./internal/...

# The schema of a crib, the drawings of docs/class, the screens; tests hold them to these
# commands.
docs: ## the crib's schema and the drawings anew
	$(GO) run ./cmd/evenlip crib schema >docs/crib.schema.json
	$(GO) run ./cmd/evenlip draw --size 12mm --lip-angle 59 --web 1.8mm \
		--chisel-angle 125 --remove 20mm --scale 5:1 \
		--svg docs/class/1-web.svg
	$(GO) run ./cmd/evenlip draw --size 12mm --lip-angle 59 --web 1.8mm \
		--chisel-angle 125 --lip-height 0.6mm --svg docs/class/2-lips.svg
	$(GO) run ./cmd/evenlip draw --size 12mm --lip-angle 59 --web 1.8mm \
		--chisel-angle 125 --clearance 12 --svg docs/class/3-clearance.svg
	$(GO) run ./internal/manual pictures docs/screens

# PREFIX is where it is to live, DESTDIR a folder to gather a package in.
install: $(if $(filter bin/evenlip,$(PROGRAM)),build) ## program, manual, completions and docs, under PREFIX
	install -d "$(at)/bin" "$(doc)/docs/class" "$(doc)/docs/screens" "$(doc)/testdata"
	install -m 755 "$(PROGRAM)" "$(at)/bin/evenlip"
	$(GO) run ./internal/manual "$(at)/share"
	install -m 644 README.md LICENSE "$(doc)"
	install -m 644 docs/*.md "$(doc)/docs"
	install -m 644 docs/class/* "$(doc)/docs/class"
	install -m 644 docs/screens/* "$(doc)/docs/screens"
	install -m 644 testdata/*.yaml "$(doc)/testdata"

uninstall: ## take them away again
	rm -f "$(at)/bin/evenlip" "$(at)/share/man/man1/evenlip.1" "$(at)/share/man/man1/"evenlip-*.1
	rm -f "$(at)/share/bash-completion/completions/evenlip" "$(at)/share/zsh/site-functions/_evenlip"
	rm -f "$(at)/share/fish/vendor_completions.d/evenlip.fish"
	rm -rf "$(doc)"

dist: ## all of a release, into dist
	.dist/build

try-dist: dist ## the same twice more, byte by byte, and the package in and out
	.dist/try-deb
	.dist/same

help: ## this list
	@awk -F ':.*## ' '/^[a-z-]+:.*## / { printf "make %-13s %s\n", $$1, $$2 }' $(MAKEFILE_LIST)

clean: ## remove bin and dist
	rm -rf bin dist
