#!/usr/bin/env bash
# Builds the tablet's package for Android.
#
#     KEYSTORE=FILE assets/android/build.sh [OUT_DIR]
#
# Wants: the target aarch64-linux-android of Rust, cargo-ndk, a JDK of version 17, and of Android's own
# tools the platform 35 and the build tools 35 (ANDROID_HOME) and the NDK, 28 or later (ANDROID_NDK_HOME).
# KEYSTORE is the key that the package is signed with; `keytool -genkeypair` makes one.
set -euo pipefail
cd "$(dirname "$0")/../.."

out="${1:-target/android}"
: "${KEYSTORE:?name the key that the package is to be signed with}"
: "${ANDROID_HOME:?name the folder of the Android SDK}"
tools="$ANDROID_HOME/build-tools/35.0.0"
platform="$ANDROID_HOME/platforms/android-35/android.jar"
rm -rf "$out"
mkdir -p "$out/package"

cargo ndk --target arm64-v8a --platform 26 --output-dir "$out/package/lib" \
    build --locked --release --lib --no-default-features --features app
"$tools/aapt2" compile --dir assets/android/res -o "$out/res.zip"
"$tools/aapt2" link -I "$platform" --manifest assets/android/AndroidManifest.xml \
    -o "$out/bare.apk" "$out/res.zip"
# The library is stored as it is, on a page's edge, so that the system maps it from the package.
cp "$out/bare.apk" "$out/package/feedside.apk"
(cd "$out/package" && zip --quiet -0 feedside.apk lib/arm64-v8a/libfeedside.so)
"$tools/zipalign" -f -P 16 4 "$out/package/feedside.apk" "$out/feedside.apk"
"$tools/apksigner" sign --ks "$KEYSTORE" "$out/feedside.apk"
"$tools/apksigner" verify "$out/feedside.apk"
echo "$out/feedside.apk"
