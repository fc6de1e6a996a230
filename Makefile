GO ?= go
export CGO_ENABLED = 0
STATICCHECK = honnef.co/go/tools/cmd/staticcheck@v0.7.0

.PHONY: build test lint cover bench clean

build:
	$(GO) build -trimpath -o bin/evenlip ./cmd/evenlip

test:
	$(GO) test ./...

lint:
	@out=$$(gofmt -l cmd internal); test -z "$$out" || { echo "gofmt would change:"; echo "$$out"; exit 1; }
	$(GO) vet ./...
	$(GO) run $(STATICCHECK) ./...

# The two packages that everything rests on.
cover:
	$(GO) test -cover ./internal/point ./internal/quantity

bench:
	$(GO) test -run '^$$' -bench . -benchmem ./internal/...

clean:
	rm -rf bin dist
