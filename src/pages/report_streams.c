#include "pages/report_streams.h"
#include <string.h>

const spz_line *streams_line(const SectionMap *map, const Sound *sound)
{
    const spz_line *best = NULL;
    int best_exactness = -1;
    const Note *note = sound->note;
    const char *voice = map->movement->parts[sound->part].voices[note->voice];
    for (size_t i = 0; i < map->line_count; i++) {
        const spz_line *line = &map->lines[i];
        if (line->part != sound->part || (line->staff && line->staff != note->staff) || (line->voice && strcmp(line->voice, voice) != 0))
            continue;
        int exactness = (line->staff != 0) + 2 * (line->voice != NULL);
        if (exactness > best_exactness) {
            best = line;
            best_exactness = exactness;
        }
    }
    return best;
}
