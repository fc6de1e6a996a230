GO ?= go
export CGO_ENABLED = 0
STATICCHECK = honnef.co/go/tools/cmd/staticcheck@v0.7.0

.PHONY: build test lint cover bench docs clean

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

# Start-up beside the least Go program, then what is computed.
bench:
	$(GO) run ./internal/bench
	$(GO) test -run '^$$' -bench . -benchmem ./internal/...

# The drawings of docs/class; a test holds them to these commands.
docs:
	$(GO) run ./cmd/evenlip draw --size 12mm --lip-angle 59 --web 1.8mm \
		--chisel-angle 125 --remove 20mm --scale 5:1 \
		--svg docs/class/1-web.svg
	$(GO) run ./cmd/evenlip draw --size 12mm --lip-angle 59 --web 1.8mm \
		--chisel-angle 125 --lip-height 0.6mm --svg docs/class/2-lips.svg
	$(GO) run ./cmd/evenlip draw --size 12mm --lip-angle 59 --web 1.8mm \
		--chisel-angle 125 --clearance 12 --svg docs/class/3-clearance.svg

clean:
	rm -rf bin dist
