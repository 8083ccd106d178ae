#!/usr/bin/env bash
# Runs a command with a PostgreSQL server of its own, from the installed package, empty and gone
# afterwards. Its address is in FEEDSIDE_TEST_POSTGRES.
#
#     tests/outside/with_postgres.sh COMMAND ...
set -euo pipefail

bin="$(ls -d /usr/lib/postgresql/*/bin | sort -V | tail -1)"
place="$(mktemp -d)"
port="${POSTGRES_PORT:-54323}"
# The server refuses to run as root.
as=()
if [ "$(id -u)" = 0 ]; then
    chown postgres "$place"
    as=(setpriv --reuid=postgres --regid=postgres --clear-groups)
fi
stop() {
    (cd "$place" && "${as[@]}" "$bin/pg_ctl" -D "$place/data" -m immediate stop >/dev/null) || true
    rm -rf "$place"
}
trap stop EXIT
(
    cd "$place"
    "${as[@]}" "$bin/initdb" -D data -U feedside --auth=trust -E UTF8 --no-locale >/dev/null
    "${as[@]}" "$bin/pg_ctl" -D data -w -l log \
        -o "-p $port -k $place -c listen_addresses=127.0.0.1" start >/dev/null
    "${as[@]}" "$bin/createdb" -h 127.0.0.1 -p "$port" -U feedside inbox
)
export FEEDSIDE_TEST_POSTGRES="postgres://feedside@127.0.0.1:$port/inbox"
"$@"
