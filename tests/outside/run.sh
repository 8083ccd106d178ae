#!/usr/bin/env bash
# Checks from outside: plays the whole job once, then lets programs that are not ours judge what
# came out. Wants what `.ci/run` installs; `.ci/run` also calls it.
#
#     tests/outside/run.sh [OUT_DIR [PROGRAM_DIR]]
#
# OUT_DIR: where to work, by default target/outside. PROGRAM_DIR: where feedside, feedside-desk and
# the examples lie; without it they are built. VENV and NODE_MODULES name the Python
# environment and the npm folder (by default in OUT_DIR); KILLS how often the app is killed (200);
# SCANS how many records are scanned while the desk is killed (500); FEEDS and PLAIN_FEEDS
# how many feeds are simulated at each hand for the rhythm (100 and 30).
set -euo pipefail

work="${1:-$(dirname "$0")/../../target/outside}"
mkdir -p "$work"
work="$(cd "$work" && pwd)"
programs="${2:+$(cd "$2" && pwd)}"
cd "$(dirname "$0")/../.."

venv="${VENV:-$work/venv}"
export NODE_MODULES="${NODE_MODULES:-$work/node/node_modules}"
python="$venv/bin/python"
here=tests/outside

if [ -z "$programs" ]; then
    cargo build --quiet --locked --bins \
        --example sealed_sample --example sealed_many --example many_records --example sheet_sample
    programs="${CARGO_TARGET_DIR:-target}/debug"
fi

echo "== rehearse"
rehearsal="$work/rehearsal"
rm -rf "$rehearsal"
(unset DISPLAY WAYLAND_DISPLAY; "$programs/feedside" rehearse --out "$rehearsal" --seed 7)

echo "== codes"
"$python" "$here/read_codes.py" "$rehearsal/codes" --texts "$work/codes.txt"

echo "== codes, small, turned, pale and with a glare"
"$python" "$here/poor_codes.py" "$rehearsal/codes"
poor="$work/poor"
rm -rf "$poor"
mkdir -p "$poor/codes"
key="$("$programs/feedside-desk" --lang en --data "$poor/desk" keys new | sed -n 3p)"
"$programs/examples/many_records" "$key" "${POOR:-10}" "$poor/codes" >"$poor/texts"
"$python" "$here/poor_codes.py" "$poor/codes"

echo "== the desk, once more"
"$python" "$here/listen_again.py" "$programs/feedside-desk" "$rehearsal" "$work/codes.txt"

echo "== a scanner on a keyboard and on a serial port"
"$python" "$here/scanner_lines.py" "$programs/feedside-desk" "$rehearsal" "$work/codes.txt"

echo "== a scanner on the desk's window"
"$python" "$here/window_scans.py" "$programs/feedside-desk" "$rehearsal" "$work/codes.txt"

echo "== every keyboard layout"
"$python" "$here/layouts.py" "$programs/feedside-desk" "$rehearsal" "$work/codes.txt"

echo "== records, opened from the RFCs alone"
"$python" "$here/open_record.py" "$rehearsal" "$work/codes.txt"
"$programs/examples/sealed_sample" >"$work/sample.json"
"$python" "$here/open_record.py" "$work/sample.json"

echo "== FHIR and HL7 version 2"
bundles=("$rehearsal/exports/visit.fhir.json" "$rehearsal/exports/visit.document.json")
"$python" "$here/check_fhir.py" "${bundles[@]}"
node "$here/check_fhir.mjs" "${bundles[@]}"
"$python" "$here/check_hl7.py" "$rehearsal/exports/visit.hl7"

echo "== the Android package's manifest"
"$here/check_android.sh" "$work"

echo "== killed while sending"
"$python" "$here/kill_sends.py" "$programs/feedside-desk" "$programs/examples/many_records" \
    "${KILLS:-100}"

echo "== the mother's sheet"
"$programs/examples/sheet_sample" "$work/right-to-left.pdf"
"$python" "$here/check_sheet.py" "$rehearsal" "$work/right-to-left.pdf"

echo "== files for the commands"
"$python" "$here/commands.py" "$programs/feedside" "$rehearsal/taps.csv"

echo "== killed while taps come in"
"$python" "$here/kill_taps.py" "$programs/feedside" "${KILLS:-200}"

echo "== the lock"
"$python" "$here/lock.py" "$programs/feedside"

echo "== the desk, killed while a scanner types"
"$python" "$here/kill_desk.py" "$programs/feedside-desk" "$programs/examples/sealed_many" "${SCANS:-500}"

echo "== the rhythm beside a model that is told the truth"
cargo run --quiet --locked --release --no-default-features --example accuracy \
    lines "${FEEDS:-100}" 0 >"$work/feeds"
"$python" "$here/informed_rhythm.py" "$work/feeds"

echo "== the rhythm on feeds of a simulator made apart from it"
"$python" "$here/plain_rhythm.py" "$programs/feedside" "${PLAIN_FEEDS:-30}"

echo "== outside checks done"
