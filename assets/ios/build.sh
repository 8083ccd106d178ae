#!/usr/bin/env bash
# Builds the program for Xcode, which calls this, and puts it where Xcode wants it.
set -euo pipefail
cd "$(dirname "$0")/../.."

case "${PLATFORM_NAME:?to be called by Xcode}" in
    iphoneos) target=aarch64-apple-ios ;;
    iphonesimulator) target=aarch64-apple-ios-sim ;;
    *) echo "$PLATFORM_NAME: not a place this app runs on" >&2; exit 1 ;;
esac
profile=(); folder=debug
[ "${CONFIGURATION:?}" != Release ] || { profile=(--release); folder=release; }
# Xcode's own variables would be taken for those of the build scripts, which run on the Mac.
env -i HOME="$HOME" PATH="$HOME/.cargo/bin:$PATH" DEVELOPER_DIR="${DEVELOPER_DIR:-}" \
    cargo build --locked --bin feedside --target "$target" "${profile[@]}"
cp "target/$target/$folder/feedside" "$TARGET_BUILD_DIR/$EXECUTABLE_PATH"
