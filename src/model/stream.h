/* stream.h - what is heard: notes of one part with tied notes joined into one, cue notes and slashes left out.
 *
 * A tie joins a note to the next note of the same pitch, part and (first choice) voice that starts where it ends and carries a
 * tie stop; it may cross bars, voices and staves. A tie that finds no partner ends with its note. Grace notes are never joined. */
#ifndef MODEL_STREAM_H
#define MODEL_STREAM_H
#include "model/movement.h"
#include "support/array.h"

typedef struct Sound {
    Ticks onset, duration;
    const Note *note; /* the first of the tied notes: pitch, bar, staff, voice, marks */
    uint16_t part;
    bool slur_stops, slur_starts; /* a slur ends, begins on a note that is tied to the first */
} Sound;
typedef ARRAY(Sound) SoundList;

/* Appends the part's sounds to `out`, in order of onset. SPZ_NO_MEMORY leaves what was appended. */
spz_status stream_of_part(const Movement *movement, size_t part, SoundList *out);

/* The same in playing order, repeats unfolded: onsets are from the start of the performance, and a tie may lead from the bar before a
 * repeat into the bar that is played next; notes for some passes only sound in those. A tie stop with nothing before it begins a sound. */
spz_status stream_of_part_played(const Movement *movement, size_t part, SoundList *out);

/* What became of the ties of a part when its bars are played in order: by note, in the order of the part's notes. */
enum TieFate {
    TIE_PLAYED = 1,       /* the note was played at all */
    TIE_START_MET = 2,    /* its tie was taken up by a later note, at least once */
    TIE_STOP_MET = 4      /* it went on from an earlier note, at least once */
};
spz_status stream_tie_fates(const Movement *movement, size_t part, unsigned char *fates);

/* Is the note heard as a sound of its own or as a continuation? Cue notes and slashes are not. */
bool stream_hears(const Note *note);
#endif
