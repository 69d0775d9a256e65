#!/bin/sh
# Tests of the conductor's pages in Chromium. Installs, when it may: node and Chromium with apt, playwright-core with npm (from the
# lock file). Where they can't be had it says so and fails, unless OPTIONAL=1.
set -eu
build=${BUILD:-build}
give_up() {
    echo "skipped: the pages were not tested in a browser: $1"
    [ "${OPTIONAL:-0}" = 1 ] && exit 0
    exit 1
}
browser() { for name in chromium chromium-browser; do command -v "$name" && return 0; done; return 1; }

missing=""
command -v node >/dev/null 2>&1 && command -v npm >/dev/null 2>&1 || missing="$missing nodejs npm"
[ -n "${CHROMIUM:-}" ] || browser >/dev/null || missing="$missing chromium"
command -v pdftotext >/dev/null 2>&1 || missing="$missing poppler-utils"
if [ -n "$missing" ] && command -v apt-get >/dev/null 2>&1 && [ "$(id -u)" = 0 ]; then
    echo "Installing what is missing:$missing"
    apt-get update -qq >/dev/null && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null || true
fi
command -v npm >/dev/null 2>&1 || give_up "npm is not at hand"
CHROMIUM=${CHROMIUM:-$(browser)} || give_up "Chromium is not at hand"
[ -d tests/web/node_modules/playwright-core ] || (cd tests/web && PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1 npm ci --no-audit --no-fund --silent) || give_up "npm could not install playwright-core"
export CHROMIUM
SPEZZATO=$build/spezzato SKETCH=$build/sketch node --test tests/web/
