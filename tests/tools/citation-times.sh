#!/bin/sh
# Prints docs/citation-times.md; `make citation-times` writes it. Compares the times of `spezzato notes` with real recordings
# (NAME_alignment.csv of the shared scores): for each movement and recording, the share of passages whose predicted time, with the movement stretched to the recording's length, falls within 5 % of that
# length of the time at which it really sounds; last, the share of all. Status 3 when that is below 90 %.
# A recording's length is taken from the first to the last moment that its table times.
set -u
program=${SPEZZATO:-build/spezzato}
shared=${SPEZZATO_SHARED:-../shared}
if [ ! -d "$shared/scores" ]; then
    echo "skipped: the shared scores are not at hand ($shared)"
    exit 4
fi
notes=$(mktemp) || exit 1
rows=$(mktemp) || exit 1
trap 'rm -f "$notes" "$rows"' EXIT

recordings() { head -1 "$1" | tr ',' '\n' | tail -n +5 | tr -d '\r'; }
span() { # seconds from the first to the last timed moment of column $2
    awk -F, -v c="$2" 'NR > 1 && $c != "" { if (!n++) a = $c; b = $c } END { printf "%.3f", b - a }' "$1"
}

cat <<'EOT'
# When a cited passage sounds

Made by `make citation-times`; not written by hand.

For each movement with recorded times at hand (OpenScore Orchestra's alignments, Gotham and others; source: `*_alignment.csv`), the time that
`spezzato notes --lasts LENGTH` gives for every passage it finds, of any kind and strength, is compared with the time at which the recording plays it.
LENGTH is the time from the first to the last moment that the alignment names. Within 5 % means: off by at most a twentieth of that
length. The scores' own tempo marks decide how the time is shared out within a movement; no ritardando or fermata is guessed.

EOT
echo "| Movement | Recording | Length, s | Passages | Within 5 % | Share | Largest error |"
echo "|---|---|---:|---:|---:|---:|---:|"
for table in "$shared"/scores/*_alignment.csv; do
    name=$(basename "$table" _alignment.csv)
    column=5
    for recording in $(recordings "$table"); do
        length=$(span "$table" "$column")
        "$program" notes --all --format csv --lasts "$length" "$shared/scores/$name.mxl" -o "$notes" 2>/dev/null || exit 2
        # the moment of the table at or before a passage's onset (crotchets as written), and between two moments in proportion
        awk -F, -v c="$column" -v name="$name" -v recording="${recording%_tstamp}" -v length_of="$length" -v rows="$rows" '
            function crotchets(text, parts) { return split(text, parts, "/") == 2 ? parts[1] / parts[2] : text + 0 }
            function sounding(q, i) {
                for (i = 1; i < n && at[i + 1] <= q; i++) ;
                if (i == n || at[i + 1] <= at[i]) return time[i]
                return time[i] + (q - at[i]) / (at[i + 1] - at[i]) * (time[i + 1] - time[i])
            }
            FNR == 1 { file++; next }
            file == 1 { if ($c != "" && (!n || $1 + 0 >= at[n])) { at[++n] = $1 + 0; time[n] = $c + 0 } next }
            {
                # the notes quote titles: the three figures wanted stand behind the title, found from the kind on
                line = $0
                sub(/^[^,]*,("([^"]|"")*"|[^,]*),/, "", line)
                split(line, field, ",")
                error = (field[7] - (sounding(crotchets(field[6])) - time[1])) / length_of
                if (error < 0) error = -error
                count++
                good += error <= 0.05
                if (error > worst) worst = error
            }
            END {
                printf "| %s | %s | %.0f | %d | %d | %.0f %% | %.1f %% |\n", name, recording, length_of, count, good, count ? 100 * good / count : 0, 100 * worst
                print count + 0, good + 0 >> rows
            }' "$table" "$notes"
        column=$((column + 1))
    done
done
awk '{ count += $1; good += $2 }
     END { printf "\nAll: %d of %d passages, %.1f %%.\n", good, count, count ? 100 * good / count : 0; exit !(count && good >= 0.9 * count) * 3 }' "$rows"
