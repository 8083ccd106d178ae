#!/usr/bin/env bash
# Has Android's own `aapt2` take the package's manifest and resources, and reads what it made of them:
# no permission, no backup. The system's resources of version 29 stand in for newer ones, so that the
# one attribute which is newer (from version 31) is left out here.
#
#     tests/outside/check_android.sh WORK_DIR
set -euo pipefail
work="$1/android"
rm -rf "$work"
mkdir -p "$work"
from="$(cd "$(dirname "$0")/../../assets/android" && pwd)"
system=/usr/share/android-framework-res/framework-res.apk

grep -q 'android:dataExtractionRules="@xml/extraction_none">' "$from/AndroidManifest.xml"
sed 's/ *android:dataExtractionRules="[^"]*"//' "$from/AndroidManifest.xml" >"$work/AndroidManifest.xml"
aapt2 compile --dir "$from/res" -o "$work/res.zip"
aapt2 link -I "$system" --manifest "$work/AndroidManifest.xml" -o "$work/bare.apk" "$work/res.zip"

told="$(aapt2 dump badging "$work/bare.apk")"
tree="$(aapt2 dump xmltree --file AndroidManifest.xml "$work/bare.apk")"
fail() { echo "$1" >&2; exit 1; }
! grep -q 'uses-permission' <<<"$told" || fail "the package asks for a permission"
grep -q "launchable-activity: name='android.app.NativeActivity'" <<<"$told" || fail "nothing to launch"
grep -q 'allowBackup(0x01010280)=false' <<<"$tree" || fail "the system backs the data up"
grep -q 'requires-smallest-width:.600' <<<"$told" || fail "telephones are not left out"
version="$(sed -n 's/^version = "\(.*\)"$/\1/p' "$from/../../Cargo.toml" | head -1)"
grep -q "versionName='$version'" <<<"$told" || fail "the package's version is not $version"
echo "the Android package's manifest: taken, no permission, no backup, version $version"
