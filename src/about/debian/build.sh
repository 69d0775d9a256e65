#!/bin/sh
# Debian packages of this tree into $BUILD/deb: program, library, development, and, where its libraries are at hand (`make sounds`), what `listen` plays through as a package of
# its own, so that nobody else has to install those. SOUND=no leaves it out. Version and history are those of include/spezzato/version.h and
# docs/changelog.md. Where lintian is at hand it has the last word.
set -eu
build=${BUILD:-build}
for need in dpkg-buildpackage dh fakeroot; do
    command -v $need > /dev/null 2>&1 || { echo "deb: $need is missing (Debian: apt-get install dpkg-dev debhelper fakeroot)" >&2; exit 1; }
done
version=$(awk '$2 ~ /^SPZ_VERSION_(MAJOR|MINOR|PATCH)$/ { printf "%s%s", dot, $3; dot = "." }' include/spezzato/version.h)
soname=$(readlink "$build/libspezzato.so" | sed 's/\.so\.//')
tree=$build/deb/spezzato-$version
rm -rf "$build/deb"
mkdir -p "$tree/debian/source"
git ls-files -z 2> /dev/null | xargs -0 cp --parents -t "$tree"
here=$tree/src/about/debian
with_sound=no
[ "${SOUND:-yes}" = no ] || ! pkg-config --exists fluidsynth libmysofa sndfile fftw3f libebur128 || with_sound=yes
sound_needs=""
[ $with_sound = no ] || sound_needs=", libebur128-dev, libfftw3-dev, libfluidsynth-dev, libmysofa-dev, libsndfile1-dev"
{ cat "$here/control.in"; [ $with_sound = no ] || cat "$here/control-sound.in"; } | sed -e "s/@soname@/$soname/" -e "s/@sound@/$sound_needs/" > "$tree/debian/control"
[ $with_sound = no ] || cp "$here/spezzato-sound.install" "$tree/debian/"
sed "s/@sound@/$with_sound/" "$here/rules" > "$tree/debian/rules"
cp "$here/spezzato.install" "$here/libspezzato-dev.install" "$tree/debian/"
cp "$here/library.install" "$tree/debian/$soname.install"
chmod +x "$tree/debian/rules"
echo "3.0 (quilt)" > "$tree/debian/source/format"
sh "$here/history.sh" < docs/changelog.md > "$tree/debian/changelog"
[ "$(sed -n '1s/.*(\(.*\)).*/\1/p' "$tree/debian/changelog")" = "$version-1" ] || { echo "deb: docs/changelog.md does not begin with version $version" >&2; exit 1; }
awk -v holder="$(sed -n 's/^Copyright (c) //p' LICENSE)" '
    FNR == NR { if (begun) licence = licence ($0 == "" ? " ." : " " $0) "\n"; if (/^Copyright/) begun = 1; next }
    { sub(/@holder@/, holder); if ($0 == "@licence@") printf "%s", licence; else print }' LICENSE "$here/copyright.in" | sed '/^License: MIT$/{n;/^ \.$/d;}' > "$tree/debian/copyright"
(cd "$tree" && dpkg-buildpackage -us -uc -b) > "$build/deb/log" 2>&1 || { tail -n 20 "$build/deb/log" >&2; echo "deb: the whole story is in $build/deb/log" >&2; exit 1; }
rm -rf "$tree"
ls "$build"/deb/*.deb
command -v lintian > /dev/null 2>&1 || { echo "deb: lintian is missing; the packages were not looked at"; exit 0; }
# One thing it can't know: nobody has asked for this package in Debian's list of wishes, so its history closes none.
lintian --allow-root --suppress-tags initial-upload-closes-no-bugs --fail-on error,warning "$build"/deb/*.changes
