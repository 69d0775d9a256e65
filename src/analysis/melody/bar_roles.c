#include "analysis/melody/bar_roles.h"

/* What one voice is in the beats of a bar. */
typedef struct Sequence {
    spz_voice_role first_two[2];
    size_t changes;                       /* roles one after the other, rests aside */
    size_t beats[SPZ_VOICE_ROLE_COUNT];
} Sequence;

static void read_sequence(const Roles *roles, int bar, size_t voice, Sequence *out)
{
    spz_voice_role last = SPZ_VOICE_RESTS;
    *out = (Sequence){.changes = 0};
    for (size_t b = 0; b < roles->beats.count && roles->beats.bars[b] <= bar; b++) {
        spz_voice_role role = role_at(roles, b, voice);
        if (roles->beats.bars[b] < bar || role == SPZ_VOICE_RESTS)
            continue;
        out->beats[role]++;
        if (role != last && out->changes < 2)
            out->first_two[out->changes] = role;
        out->changes += role != last;
        last = role;
    }
}

static spz_voice_role commonest(const Sequence *sequence)
{
    spz_voice_role best = SPZ_VOICE_RESTS;
    for (int r = 0; r < SPZ_VOICE_ROLE_COUNT; r++)
        if (sequence->beats[r] > 0 && sequence->beats[r] >= sequence->beats[best])
            best = (spz_voice_role)r;
    return best;
}

static void tell_sequence(const Sequence *sequence, spz_voice_in_bar *out)
{
    out->role_count = sequence->changes == 2 ? 2 : 1;
    out->roles[0] = sequence->changes > 2 ? commonest(sequence) : sequence->first_two[0];
    out->roles[1] = sequence->first_two[1];
}

/* Length of more than half of the notes first..last-1 of a voice (Boyer and Moore's vote, then counted); 0 for none. */
static Ticks common_length(const Melody *melody, size_t first, size_t last)
{
    Ticks candidate = 0;
    size_t votes = 0, count = 0;
    for (size_t i = first; i < last; i++) {
        Ticks length = melody->events[i].end - melody->events[i].onset;
        if (!votes)
            candidate = length;
        votes = length == candidate ? votes + 1 : votes - 1;
    }
    for (size_t i = first; i < last; i++)
        count += melody->events[i].end - melody->events[i].onset == candidate;
    return 2 * count > last - first ? candidate : 0;
}

static void tell_notes(const Roles *roles, int bar, size_t voice, spz_voice_in_bar *out)
{
    const Melody *melody = &roles->voices.melodies[voice];
    const Movement *movement = roles->voices.map.movement;
    Ticks from = movement->bars[bar].onset, per_crotchet = movement->per_crotchet;
    size_t first = melody_at(melody, from), last = melody_at(melody, from + movement->bars[bar].length), again = 0;
    Ticks length = common_length(melody, first, last);
    for (size_t i = first; i < last; i++)
        again += (melody->events[i].flags & (EVENT_REPEATED | EVENT_TREMOLO)) != 0;
    out->strikes_again = last > first && 2 * again >= last - first && length < 2 * per_crotchet; /* slower: held, for the ear */
    Ticks divisor = length ? ticks_common_divisor(length, per_crotchet) : per_crotchet;
    out->value = (spz_fraction){length / divisor, per_crotchet / divisor};
}

size_t bar_roles_of(const Roles *roles, int bar, spz_voice_in_bar *out)
{
    size_t count = 0;
    for (size_t v = 0; v < roles->voices.map.group_count; v++) {
        Sequence sequence;
        bool wind = v >= roles->voices.string_count;
        read_sequence(roles, bar, v, &sequence);
        if (wind && !sequence.beats[SPZ_VOICE_LINE])
            continue;
        spz_voice_in_bar *voice = &out[count++];
        *voice = (spz_voice_in_bar){.group = wind ? SIZE_MAX : v, .part = wind ? roles->voices.map.groups[v].sounds[0].part : SIZE_MAX};
        tell_sequence(&sequence, voice);
        tell_notes(roles, bar, v, voice);
    }
    return count;
}
