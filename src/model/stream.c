/* stream.c - joins ties. Sounds that a tie leaves open wait in a chain for their pitch; a note with a tie stop looks there for the one that
 * ends where it starts, its own voice first. Linear in the notes: of many in unison only the first few are looked at. */
#include "model/stream.h"
#include <string.h>

enum { PITCHES = 256, NOTHING = -1, CANDIDATES = 64 }; /* more voices in unison than any part has */

/* An open sound, linked to the next one of the same pitch. */
typedef struct Waiting {
    size_t sound;
    const Note *last; /* note joined */
    int next;
} Waiting;

typedef struct Joiner {
    SoundList *out;
    ARRAY(Waiting) waiting;
    int heads[PITCHES];
    int unused; /* chain of entries that can be taken again */
    uint16_t part;
    const Note *notes;     /* of the part */
    unsigned char *fates;  /* NULL: not asked for */
} Joiner;

bool stream_hears(const Note *note)
{
    return !(note->flags & (NOTE_CUE | NOTE_SLASH));
}

/* Does the note sound in that pass through its repeat (from 1; 0: unknown, all sound)? */
static bool stream_sounds_in(const Note *note, int pass)
{
    enum { LAST_BIT = 15 };
    int bit = pass - 1 < LAST_BIT ? pass - 1 : LAST_BIT;
    return note->passes == 0 || pass <= 0 || ((unsigned)note->passes >> bit & 1u) != 0;
}

/* Unpitched notes are told apart by where they stand on the staff. */
static int pitch_slot(const Note *note)
{
    int slot = note->midi >= 0 ? note->midi : 160 + (note->octave * 7 + note->step) % 90;
    return slot < 0 || slot >= PITCHES ? 0 : slot;
}

/* Takes the open sound that ends at `onset` out of the chain; NOTHING when there is none. */
static int find_open(Joiner *joiner, const Note *note, Ticks onset)
{
    int *link = &joiner->heads[pitch_slot(note)], *best = NULL, looked = 0;
    while (*link != NOTHING && looked < CANDIDATES) {
        Waiting *entry = &joiner->waiting.at[*link];
        const Sound *sound = &joiner->out->at[entry->sound];
        Ticks end = sound->onset + sound->duration;
        if (end < onset) { /* its partner never came */
            int over = *link;
            *link = entry->next;
            entry->next = joiner->unused;
            joiner->unused = over;
            if (best == &entry->next)
                best = NULL;
            continue;
        }
        looked++;
        if (end == onset && (!best || (entry->last->voice == note->voice && joiner->waiting.at[*best].last->voice != note->voice)))
            best = link;
        link = &entry->next;
    }
    if (!best)
        return NOTHING;
    int found = *best;
    *best = joiner->waiting.at[found].next;
    return found;
}

static bool leave_open(Joiner *joiner, const Note *note, size_t sound, int entry)
{
    if (entry == NOTHING && joiner->unused != NOTHING) {
        entry = joiner->unused;
        joiner->unused = joiner->waiting.at[entry].next;
    }
    Waiting waiting = {sound, note, NOTHING};
    if (entry == NOTHING) {
        if (!array_push(&joiner->waiting, waiting))
            return false;
        entry = (int)joiner->waiting.count - 1;
    }
    int *head = &joiner->heads[pitch_slot(note)];
    waiting.next = *head;
    joiner->waiting.at[entry] = waiting;
    *head = entry;
    return true;
}

static void remember(const Joiner *joiner, const Note *note, unsigned fate)
{
    if (joiner->fates)
        joiner->fates[note - joiner->notes] |= (unsigned char)fate;
}

static bool join(Joiner *joiner, const Note *note, Ticks onset)
{
    bool grace = (note->flags & NOTE_GRACE) != 0;
    int entry = !grace && (note->flags & NOTE_TIE_STOP) ? find_open(joiner, note, onset) : NOTHING;
    remember(joiner, note, entry == NOTHING ? TIE_PLAYED : TIE_PLAYED | TIE_STOP_MET);
    if (entry != NOTHING)
        remember(joiner, joiner->waiting.at[entry].last, TIE_START_MET);
    size_t sound = joiner->out->count;
    if (entry != NOTHING) {
        sound = joiner->waiting.at[entry].sound;
        Sound *longer = &joiner->out->at[sound];
        longer->duration += note->duration;
        longer->slur_stops = longer->slur_stops || note->flags & NOTE_SLUR_STOP;
        longer->slur_starts = longer->slur_starts || note->flags & NOTE_SLUR_START;
    } else {
        Sound fresh = {.onset = onset, .duration = note->duration, .note = note, .part = joiner->part};
        if (!array_push(joiner->out, fresh))
            return false;
    }
    if (!grace && (note->flags & NOTE_TIE_START))
        return leave_open(joiner, note, sound, entry);
    if (entry != NOTHING) {
        joiner->waiting.at[entry].next = joiner->unused;
        joiner->unused = entry;
    }
    return true;
}

static void joiner_init(Joiner *joiner, size_t part, SoundList *out)
{
    memset(joiner, 0, sizeof *joiner);
    joiner->out = out;
    joiner->part = (uint16_t)part;
    joiner->unused = NOTHING;
    for (int i = 0; i < PITCHES; i++)
        joiner->heads[i] = NOTHING;
}

spz_status stream_of_part(const Movement *movement, size_t part, SoundList *out)
{
    const Part *from = &movement->parts[part];
    Joiner joiner;
    bool done = true;
    joiner_init(&joiner, part, out);
    for (size_t i = 0; i < from->note_count && done; i++)
        if (stream_hears(&from->notes[i]))
            done = join(&joiner, &from->notes[i], from->notes[i].onset);
    array_free(&joiner.waiting);
    return done ? SPZ_OK : SPZ_NO_MEMORY;
}

/* First note of each bar, notes being sorted by onset; after-graces at a bar's end carry its index but the next bar's onset, so they are
 * looked for by bar, not by onset. */
static size_t *starts_of_bars(const Movement *movement, const Part *part)
{
    size_t *starts = memory_resize(NULL, movement->bar_count + 1, sizeof *starts);
    if (!starts)
        return NULL;
    size_t note = 0;
    for (size_t bar = 0; bar <= movement->bar_count; bar++) {
        while (note < part->note_count && (size_t)part->notes[note].bar < bar)
            note++;
        starts[bar] = note;
    }
    return starts;
}

static spz_status play(const Movement *movement, Joiner *joiner)
{
    const Part *from = &movement->parts[joiner->part];
    size_t *starts = starts_of_bars(movement, from);
    Ticks now = 0;
    bool done = starts != NULL;
    for (size_t i = 0; i < movement->played_count && done; i++) {
        size_t index = (size_t)movement->played[i];
        const Bar *bar = &movement->bars[index];
        for (size_t n = starts[index]; n < starts[index + 1] && done; n++)
            if (stream_hears(&from->notes[n]) && stream_sounds_in(&from->notes[n], movement->played_pass[i]))
                done = join(joiner, &from->notes[n], from->notes[n].onset - bar->onset + now);
        now += bar->length;
    }
    array_free(&joiner->waiting);
    memory_free(starts);
    return done ? SPZ_OK : SPZ_NO_MEMORY;
}

spz_status stream_of_part_played(const Movement *movement, size_t part, SoundList *out)
{
    Joiner joiner;
    joiner_init(&joiner, part, out);
    return play(movement, &joiner);
}

spz_status stream_tie_fates(const Movement *movement, size_t part, unsigned char *fates)
{
    SoundList sounds = {NULL, 0, 0};
    Joiner joiner;
    joiner_init(&joiner, part, &sounds);
    joiner.notes = movement->parts[part].notes;
    joiner.fates = fates;
    memset(fates, 0, movement->parts[part].note_count);
    spz_status status = play(movement, &joiner);
    array_free(&sounds);
    return status;
}
