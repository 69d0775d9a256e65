#!/bin/sh
# docs/changelog.md, from standard input, as Debian writes histories. Sections are '## VERSION (YYYY-MM-DD)', entries '- ...'.
awk '
function close_section() {
    if (version) printf "\n -- The spezzato authors <authors@spezzato.invalid>  %s\n", date
}
/^## / {
    close_section()
    if (version) print ""
    version = $2
    gsub(/[()]/, "", $3)
    command = "LC_ALL=C date -u -R -d " $3
    command | getline date
    close(command)
    printf "spezzato (%s-1) unstable; urgency=low\n\n", version
}
/^- / { sub(/^- /, ""); print "  * " $0 }
/^  [^ ]/ && version { print "    " substr($0, 3) }
END { close_section() }'
