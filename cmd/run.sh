#!/usr/bin/env bash
# Builds Tubewright and opens its window on a demo plan, or on the plan named.
# Without a display it makes that plan's cut list and sheets instead.
#
#	bash cmd/run.sh                  the first demo
#	bash cmd/run.sh my.plan.yaml     your plan
set -euo pipefail
home=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
. "$home/cmd/setup.sh"

demo=conservation-scanner
plan=${1:-}
[ -z "$plan" ] || plan=$(realpath -- "$plan")

# without_display: the same job on paper.
without_display() {
	local out="$home/out"
	say "there is no display here, so no window: making the cut list and the sheets instead"
	need_go
	(cd "$home" && CGO_ENABLED=0 go build -o bin/tubecut ./cmd/tubecut)
	mkdir -p "$out"
	if [ -z "$plan" ]; then
		plan="$out/$demo.plan.yaml"
		"$home/bin/tubecut" demo "$demo" >"$plan"
	fi
	# A finding is no failure of this script: the list says what is left to settle.
	"$home/bin/tubecut" list "$plan" || [ $? = 1 ]
	"$home/bin/tubecut" sheet "$plan" --out "$out" || [ $? = 1 ]
	say "the sheets are in $out; on a machine with a display the same command opens the window"
}

with_display() {
	packages "${build_packages[@]}" "${show_packages[@]}"
	need_go
	say "building the window (the first time takes some minutes)"
	(cd "$home" && CGO_ENABLED=1 go build -o bin/tubewright ./cmd/tubewright)
	case "${LC_ALL:-${LANG:-}}" in "" | C | POSIX | C.*) export LC_ALL="" LANG=en_US.UTF-8 ;; esac
	if [ -n "$plan" ]; then
		exec "$home/bin/tubewright" "$plan"
	fi
	exec "$home/bin/tubewright" --demo "$demo"
}

if [ -n "${DISPLAY:-}" ]; then
	with_display
else
	without_display
fi
