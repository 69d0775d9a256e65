#!/bin/sh
# The history names today's version, and the packages for Debian are built from it; where lintian is at hand it finds neither error nor warning.
. tests/support/cli.sh
version=$(sed -n 's/^#define SPZ_VERSION_[MP][A-Z]* //p' include/spezzato/version.h | paste -sd . -)
[ "$(sed -n 's/^## \([0-9.]*\) (....-..-..)$/\1/p' docs/changelog.md | head -n 1)" = "$version" ] || fault "docs/changelog.md does not begin with version $version"
[ "$(sed -n 's/^\.TH SPEZZATO 1 "\([0-9-]*\)".*/\1/p' docs/spezzato.1)" = "$(sed -n 's/^## [0-9.]* (\(.*\))$/\1/p' docs/changelog.md | head -n 1)" ] || fault "the manual page has another date than docs/changelog.md"
if at_hand mandoc; then
    mandoc -T lint docs/spezzato.1 > "$folder/lint"
    [ -s "$folder/lint" ] && fault "the manual page: $(head -n 1 "$folder/lint")"
fi
printf '# What changed\n\n## 1.2.3 (2026-02-01)\n\n- One thing\n  that is long.\n- Another.\n\n## 1.2.2 (2026-01-01)\n\n- Before.\n' | sh src/about/debian/history.sh > "$folder/history"
cat > "$folder/expected" <<'EOT'
spezzato (1.2.3-1) unstable; urgency=low

  * One thing
    that is long.
  * Another.

 -- The spezzato authors <authors@spezzato.invalid>  Sun, 01 Feb 2026 00:00:00 +0000

spezzato (1.2.2-1) unstable; urgency=low

  * Before.

 -- The spezzato authors <authors@spezzato.invalid>  Thu, 01 Jan 2026 00:00:00 +0000
EOT
same "$folder/expected" "$folder/history" "the history for Debian"
if [ "${SPEZZATO_WHOLE:-no}" = yes ] && at_hand dpkg-buildpackage dh fakeroot; then
    make -s --no-print-directory BUILD="${BUILD:-build}" deb > "$folder/said" 2>&1 || fault "make deb: $(grep -v jobserver "$folder/said" | head -n 3)"
    for package in "${BUILD:-build}"/deb/spezzato_*.deb; do
        dpkg-deb -x "$package" "$folder/root" || fault "$package can't be unpacked"
    done
    # What is needed to hear a passage is asked for by its own package alone.
    dpkg-deb -f "${BUILD:-build}"/deb/spezzato_*.deb Depends | grep -q fluidsynth && fault "whoever reads scores has to install what plays them"
    [ -z "$(find "$folder/root" -name sound.so)" ] || fault "the library of sound is in the program's package"
    if pkg-config --exists fluidsynth libmysofa sndfile fftw3f libebur128; then
        dpkg-deb -x "${BUILD:-build}"/deb/spezzato-sound_*.deb "$folder/root" || fault "there is no package of sound"
        dpkg-deb -f "${BUILD:-build}"/deb/spezzato-sound_*.deb Depends | grep -q fluidsynth || fault "the package of sound does not ask for its libraries"
        place=$(find "$folder/root" -path '*/spezzato/sound.so' | sed "s|^$folder/root||")
        grep -qF "$place" "$folder/root/usr/bin/spezzato" || fault "the program does not look for its sound where the package puts it"
    else
        skip "the libraries of sound are not at hand"
    fi
    [ "$("$folder/root/usr/bin/spezzato" --version | head -n 1)" = "spezzato $version" ] || fault "the program of the package is of another version"
    [ -r "$folder/root/usr/share/bash-completion/completions/spezzato" ] || fault "the package has no completions"
fi
finish
