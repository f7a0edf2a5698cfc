#!/usr/bin/env bash
# Installs what the tests need and runs them all, the real-window ones included.
#
#	bash cmd/test.sh            everything
#	bash cmd/test.sh -short     the Go flags you give, for all but the real window's tests
set -euo pipefail
home=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
. "$home/cmd/setup.sh"
cd "$home"

packages "${build_packages[@]}" "${show_packages[@]}" xvfb xauth xdotool x11-apps imagemagick poppler-utils python3 git
need_go
need_gltf_validator
need_chromium
export LC_ALL="" LANG=en_US.UTF-8

say "building both commands"
CGO_ENABLED=0 go build -o bin/tubecut ./cmd/tubecut
CGO_ENABLED=1 go build -o bin/tubewright ./cmd/tubewright

say "tests without a screen, no cgo"
CGO_ENABLED=0 go test -count=1 "$@" ./assets/... ./bends/... ./route/... ./cutlist/... ./ui/... ./cmd/tubecut/...
CGO_ENABLED=1 go test -count=1 "$@" ./cmd/tubewright

say "the real window, under Xvfb"
CGO_ENABLED=1 go test -count=1 -tags window -timeout 15m -run Window ./ui
say "all tests passed"
