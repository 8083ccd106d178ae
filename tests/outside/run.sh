#!/usr/bin/env bash
# Checks from outside: plays the whole job once, then lets programs that are not ours judge what
# came out. Wants what `.ci/run` installs; `.ci/run` also calls it.
#
#     tests/outside/run.sh [DIR]      DIR: where to work, by default target/outside
#
# VENV and NODE_MODULES name the Python environment and the npm folder (by default in DIR).
set -euo pipefail
cd "$(dirname "$0")/../.."

work="${1:-target/outside}"
mkdir -p "$work"
work="$(cd "$work" && pwd)"
venv="${VENV:-$work/venv}"
export NODE_MODULES="${NODE_MODULES:-$work/node/node_modules}"
python="$venv/bin/python"
here=tests/outside

cargo build --quiet
programs="${CARGO_TARGET_DIR:-target}/debug"

echo "== rehearse"
rehearsal="$work/rehearsal"
rm -rf "$rehearsal"
"$programs/feedside" rehearse --out "$rehearsal" --seed 7

echo "== codes"
"$python" "$here/read_codes.py" "$rehearsal/codes" --texts "$work/codes.txt"

echo "== the desk, once more"
"$python" "$here/listen_again.py" "$programs/feedside-desk" "$rehearsal" "$work/codes.txt"

echo "== the record, opened from the RFCs alone"
"$python" "$here/open_record.py" "$rehearsal"

echo "== FHIR"
"$python" "$here/check_fhir.py" "$rehearsal/exports/visit.fhir.json"
node "$here/check_fhir.mjs" "$rehearsal/exports/visit.fhir.json"

echo "== killed while taps come in"
xvfb-run --auto-servernum "$here/kill_taps.sh" "$programs/feedside"

echo "== outside checks done"
