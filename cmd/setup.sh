# shellcheck shell=bash
# Sourced by run.sh, test.sh and .ci/run: installs what is missing on a Debian machine.
# Nothing is installed twice, and nothing is fetched but Debian's packages, Go
# modules from their proxy and, for the tests, one package of the npm registry.

say() { printf 'tubewright: %s\n' "$*"; }

die() {
	printf 'tubewright: %s\n' "$*" >&2
	exit 1
}

# as_root COMMAND...: runs it as root, by sudo where we are not.
as_root() {
	if [ "$(id -u)" = 0 ]; then
		"$@"
	elif command -v sudo >/dev/null; then
		sudo "$@"
	else
		die "this wants root, and there is no sudo; run it as root, then try again: $*"
	fi
}

# packages NAME...: installs the Debian packages that are not there yet.
packages() {
	local missing=() name
	command -v dpkg-query >/dev/null || {
		say "this is no Debian machine; install by hand what stands for: $*"
		return 0
	}
	for name in "$@"; do
		dpkg-query -W -f '${Status}' "$name" 2>/dev/null | grep -q 'ok installed' || missing+=("$name")
	done
	[ ${#missing[@]} -gt 0 ] || return 0
	say "installing ${missing[*]}"
	as_root apt-get update -qq
	as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
}

# What building the window needs, and what showing it needs; for who sources this.
# shellcheck disable=SC2034
build_packages=(gcc libc6-dev pkg-config libgl-dev libx11-dev libxcursor-dev libxrandr-dev libxinerama-dev libxi-dev libxxf86vm-dev)
# shellcheck disable=SC2034
show_packages=(libgl1 libgl1-mesa-dri)

# The Go release the module is built with; the proxy serves it as a module.
go_release=1.26.8

# go_recent GO: whether this go command can build the module or fetch one that can.
go_recent() {
	local version minor
	version=$("$1" env GOVERSION 2>/dev/null) || return 1
	minor=${version#go1.}
	minor=${minor%%.*}
	[ "${minor:-0}" -ge 21 ] 2>/dev/null
}

# need_go: puts a Go that can build the module first in PATH. From Go 1.21 on,
# the go command fetches the release go.mod asks for by itself; an older one
# (Debian 12 has 1.19) downloads that release as the module it is served as.
need_go() {
	[ -d /usr/local/go/bin ] && PATH=$PATH:/usr/local/go/bin
	if ! command -v go >/dev/null; then
		packages golang-go ca-certificates
	fi
	command -v go >/dev/null || die "no go command; install Go $go_release or newer from your distribution"
	export GOTOOLCHAIN=${GOTOOLCHAIN:-auto}
	go_recent go && return 0
	local arch module dir
	arch=$(go env GOARCH)
	module="golang.org/toolchain@v0.0.1-go$go_release.linux-$arch"
	dir="$(go env GOMODCACHE)/$module"
	if [ ! -x "$dir/bin/go" ]; then
		say "fetching Go $go_release"
		(cd / && GOFLAGS=-mod=mod go mod download "$module")
		chmod -R u+w "$dir"
		chmod -R +x "$dir/bin" "$dir/pkg/tool"
	fi
	PATH="$dir/bin:$PATH"
	export PATH GOTOOLCHAIN=local
}

# need_gltf_validator: the reference validator of glTF files, from the npm
# registry, and the node that runs it; sets TUBEWRIGHT_GLTF_VALIDATOR for the tests.
need_gltf_validator() {
	local folder=${XDG_CACHE_HOME:-$HOME/.cache}/tubewright/gltf-validator
	command -v node >/dev/null || packages nodejs
	if [ ! -d "$folder/node_modules/gltf-validator" ]; then
		command -v npm >/dev/null || packages npm
		say "fetching the glTF validator"
		npm install --silent --no-audit --no-fund --prefix "$folder" gltf-validator@2.0.0-dev.3.10 >/dev/null
	fi
	export TUBEWRIGHT_GLTF_VALIDATOR=$folder
}

# need_chromium: a browser to look at drawings with; sets TUBEWRIGHT_CHROMIUM for the tests.
need_chromium() {
	command -v chromium >/dev/null || packages chromium
	TUBEWRIGHT_CHROMIUM=$(command -v chromium) || die "no chromium: the tests look at SVG files with it"
	export TUBEWRIGHT_CHROMIUM
}
