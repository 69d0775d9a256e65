/* The line: a hidden Markov chain whose state is the voice that has it (forward and backward probabilities as in Rabiner, Proc. IEEE 77 (1989) 257). That a
 * voice looks like a line in a beat is told by a weighted sum of its measures; from beat to beat the line stays where it is but for a fixed chance. That
 * the upper, moving, varied line is followed, and that a listener follows what is less predictable: Uitdenbogerd and Zobel, ACM Multimedia 1998 ("skyline");
 * Madsen and Widmer, IJCAI 2007 (complexity). All others: a chain for each voice over pad, figure and counter-line. */
#include "analysis/melody/roles.h"
#include <math.h>
#include <string.h>

/* Log odds of being the annotated main melody rather than another voice, halved, as neighbouring beats say much the same: tests/tools/fit_roles.py prints
 * them from published annotations (Hauptstimme). */
static const float weight_of[RM_COUNT] = {
    [RM_SOUNDS] = 1.527F, [RM_BUSY] = 0.567F, [RM_MOVES] = 0.736F, [RM_STEPS] = 0.193F, [RM_BROKEN] = -0.702F, [RM_PITCHES] = 0.075F,
    [RM_RECURS] = -0.455F, [RM_VALUES] = 0.603F, [RM_LONG] = -0.157F, [RM_HELD] = -0.275F, [RM_BOUND] = 0.131F, [RM_PLUCKED] = -0.461F,
    [RM_TREMOLO] = -0.201F, [RM_TOP] = 0.615F, [RM_ABOVE] = 0.251F, [RM_COMPANY] = -0.376F, [RM_LOUD] = 0.345F, [RM_MARKED] = 0.421F,
    [RM_ENTERS] = -0.106F, [RM_VIOLIN] = 0.292F, [RM_SECOND] = -0.472F, [RM_MIDDLE] = -0.204F, [RM_BASS] = -1.061F, [RM_BRASS] = 0.343F,
};

static const struct {
    double pass;    /* chance, beside staying, that the line goes to one certain other voice from beat to beat: exp(-2), chosen on works left out */
    double takes;   /* the least chance with which a voice has the line while the likeliest rests; by ear */
    double rocks;   /* log odds taken from a voice all of whose notes rock between two pitches; too rare in the annotated music to be fitted, by ear */
    double holds;   /* ... and, beyond what was fitted, for each doubling of the mean length of its notes above two beats; by ear */
    double change;  /* log odds that a voice that accompanies gives up one way of doing it; by ear */
} rule = {.pass = 0.135, .takes = 0.1, .rocks = 3, .holds = 0.5, .change = 1.5};

static const double silent_look = 1e-6; /* of a voice that is silent, beside 1 of the likeliest: nearly nothing */

enum { GROUND = 3 }; /* SPZ_VOICE_PAD, SPZ_VOICE_FIGURE, SPZ_VOICE_COUNTER */

typedef struct Decoder {
    const RoleSurvey *survey;
    Roles *out;
    size_t count;                   /* voices */
    double *looks;                  /* [beat * count + voice]: how like a line, relative to the others; 0 where silent */
    float (*ground)[GROUND];        /* likewise: log odds of each way of accompanying */
} Decoder;

/* Common practice, graded by ear: what holds or repeats its pitch is a pad; what soon comes back, breaks chords or is plucked a figure; what looks nearly as
 * much like a line as the likeliest (`behind`: log odds) a counter-line. */
static void grade_ground(const float m[RM_COUNT], double behind, float out[GROUND])
{
    float recurs = m[RM_RECURS] > m[RM_RECURS_BAR] ? m[RM_RECURS] : m[RM_RECURS_BAR];
    float still = 2 * (1 - 2 * m[RM_MOVES]);
    out[0] = still > m[RM_LONG] ? still : m[RM_LONG];
    out[1] = 3 * (recurs * m[RM_MOVES] - 0.3F) + m[RM_BROKEN] + 0.5F * m[RM_PLUCKED] + m[RM_SHUTTLES];
    out[2] = 1.5F - (float)behind;
}

static void look_at_beat(Decoder *decoder, size_t beat)
{
    float measures[VOICES_MOST][RM_COUNT];
    double most = -HUGE_VAL, *looks = decoder->looks + beat * decoder->count;
    role_measures_at(decoder->survey, beat, measures);
    for (size_t v = 0; v < decoder->count; v++) {
        looks[v] = 0;
        if (measures[v][RM_SOUNDS] <= 0)
            continue;
        for (int m = 0; m < RM_COUNT; m++)
            looks[v] += (double)(weight_of[m] * measures[v][m]);
        looks[v] -= rule.rocks * fmax(0, 2 * (double)measures[v][RM_SHUTTLES] - 1) + rule.holds * (double)measures[v][RM_HELD];
        if (looks[v] > most)
            most = looks[v];
    }
    for (size_t v = 0; v < decoder->count; v++) {
        bool sounds = measures[v][RM_SOUNDS] > 0;
        if (sounds)
            grade_ground(measures[v], most - looks[v], decoder->ground[beat * decoder->count + v]);
        looks[v] = sounds ? exp(looks[v] - most) : most > -HUGE_VAL ? silent_look : 1;
    }
}

static void scale(double *values, size_t count)
{
    double sum = 0;
    for (size_t i = 0; i < count; i++)
        sum += values[i];
    for (size_t i = 0; i < count; i++)
        values[i] /= sum;
}

/* What is known from one side of a beat goes on to the next: the line stays, or passes. `from` adds up to 1. */
static void step(const double *from, const double *looks, size_t count, double *to)
{
    for (size_t v = 0; v < count; v++)
        to[v] = (from[v] + rule.pass) * looks[v];
    scale(to, count);
}

/* Forward probabilities take the place of `looks`, then both sides that of `chance`, of each voice alone. */
static void follow_line(Decoder *decoder)
{
    size_t count = decoder->count, beats = decoder->survey->beats.count;
    double ahead[VOICES_MOST], seen[VOICES_MOST], *forward = decoder->looks;
    for (size_t v = 0; v < count; v++)
        ahead[v] = seen[v] = 1.0 / (double)count;
    for (size_t b = beats; b-- > 0;) { /* backward: kept in chance for a while */
        double here[VOICES_MOST] = {0};
        for (size_t v = 0; v < count; v++)
            decoder->out->chance[b * count + v] = (float)(ahead[v] + rule.pass);
        step(ahead, forward + b * count, count, here);
        memcpy(ahead, here, sizeof here);
    }
    for (size_t b = 0; b < beats; b++) {
        double both[VOICES_MOST], here[VOICES_MOST] = {0};
        step(seen, forward + b * count, count, here);
        memcpy(seen, here, sizeof here);
        for (size_t v = 0; v < count; v++)
            both[v] = seen[v] * (double)decoder->out->chance[b * count + v];
        scale(both, count);
        for (size_t v = 0; v < count; v++)
            decoder->out->chance[b * count + v] = (float)both[v];
    }
}

/* The most likely way of accompanying for each beat (Viterbi). */
static void follow_ground(Decoder *decoder, size_t voice)
{
    size_t beats = decoder->survey->beats.count, count = decoder->count;
    double score[GROUND] = {0};
    uint8_t *roles = decoder->out->at;
    for (size_t b = 0; b < beats; b++) { /* the beat's byte first keeps from where each way was reached: two bits each */
        size_t best = 0, at = b * count + voice;
        for (size_t r = 1; r < GROUND; r++)
            if (score[r] > score[best])
                best = r;
        double top = score[best];
        roles[at] = 0;
        for (size_t r = 0; r < GROUND; r++) {
            bool stays = score[r] >= top - rule.change;
            roles[at] = (uint8_t)(roles[at] | (stays ? r : best) << 2 * r);
            score[r] = (stays ? score[r] : top - rule.change) + (double)decoder->ground[at][r];
        }
    }
    size_t now = score[1] > score[0] ? 1 : 0;
    now = score[2] > score[now] ? 2 : now;
    for (size_t b = beats; b-- > 0;) {
        size_t before = roles[b * count + voice] >> 2 * now & 3;
        roles[b * count + voice] = (uint8_t)(SPZ_VOICE_PAD + now);
        now = before;
    }
}

/* Whoever has the same notes has the line too. */
static void share_chances(Decoder *decoder, size_t beat)
{
    float *chance = decoder->out->chance + beat * decoder->count, sum[VOICES_MOST] = {0};
    for (size_t v = 0; v < decoder->count; v++) {
        uint64_t with = decoder->survey->unison[beat * decoder->count + v] | (uint64_t)1 << v;
        for (size_t u = 0; u < decoder->count; u++)
            if ((with >> u & 1) && role_sounds_in(decoder->survey, beat, u))
                sum[u] += chance[v];
    }
    memcpy(chance, sum, decoder->count * sizeof *sum);
}

/* The likeliest of all; where that one rests in the beat, the likeliest of those that sound, unless it is hardly one: then the line rests. */
static size_t leader_of(const Decoder *decoder, size_t beat)
{
    const float *chance = decoder->out->chance + beat * decoder->count;
    size_t leader = 0, sounding = decoder->count;
    for (size_t v = 0; v < decoder->count; v++) {
        if (chance[v] > chance[leader])
            leader = v;
        if (role_sounds_in(decoder->survey, beat, v) && (sounding == decoder->count || chance[v] > chance[sounding]))
            sounding = v;
    }
    return sounding < decoder->count && (double)chance[sounding] >= rule.takes ? sounding : leader;
}

static void settle_beat(Decoder *decoder, size_t beat)
{
    Roles *out = decoder->out;
    size_t at = beat * decoder->count, leader = leader_of(decoder, beat);
    out->leader[beat] = (uint8_t)leader;
    uint64_t line = decoder->survey->unison[at + leader] | (uint64_t)1 << leader, along = decoder->survey->parallel[at + leader];
    for (size_t v = 0; v < decoder->count; v++) {
        if (!role_sounds_in(decoder->survey, beat, v))
            out->at[at + v] = SPZ_VOICE_RESTS;
        else if (line >> v & 1)
            out->at[at + v] = SPZ_VOICE_LINE;
        else if (along >> v & 1)
            out->at[at + v] = SPZ_VOICE_ALONG;
    }
    share_chances(decoder, beat);
}

static spz_status decode(Decoder *decoder, Arena *scratch)
{
    size_t cells = decoder->survey->beats.count * decoder->count;
    decoder->looks = arena_take(scratch, cells, sizeof *decoder->looks);
    decoder->ground = arena_take(scratch, cells, sizeof *decoder->ground);
    if (!decoder->looks || !decoder->ground)
        return SPZ_NO_MEMORY;
    for (size_t b = 0; b < decoder->survey->beats.count; b++)
        look_at_beat(decoder, b);
    follow_line(decoder);
    for (size_t v = 0; v < decoder->count; v++)
        follow_ground(decoder, v);
    for (size_t b = 0; b < decoder->survey->beats.count; b++)
        settle_beat(decoder, b);
    return SPZ_OK;
}

spz_status roles_of(const SectionMap *strings, size_t first, size_t last, Arena *arena, Roles *out)
{
    Arena scratch;
    RoleSurvey survey;
    const Bar *bars = strings->movement->bars;
    memset(out, 0, sizeof *out);
    arena_init(&scratch);
    spz_status status = voices_of(strings, bars[first].onset, bars[last].onset + bars[last].length, arena, &out->voices);
    if (status == SPZ_OK)
        status = role_survey_make(&out->voices, strings, first, last, &scratch, &survey);
    if (status == SPZ_OK) {
        size_t beats = survey.beats.count, cells = beats * out->voices.map.group_count;
        out->beats = (BeatGrid){.onsets = arena_take(arena, beats, sizeof(Ticks)), .bars = arena_take(arena, beats, sizeof(int32_t)), .count = beats,
                                .end = survey.beats.end};
        out->at = arena_take(arena, cells, sizeof *out->at);
        out->chance = arena_take(arena, cells, sizeof *out->chance);
        out->leader = arena_take(arena, beats, sizeof *out->leader);
        status = out->beats.onsets && out->beats.bars && out->at && out->chance && out->leader ? SPZ_OK : SPZ_NO_MEMORY;
    }
    if (status == SPZ_OK && survey.beats.count && out->voices.map.group_count) {
        memcpy(out->beats.onsets, survey.beats.onsets, survey.beats.count * sizeof(Ticks));
        memcpy(out->beats.bars, survey.beats.bars, survey.beats.count * sizeof(int32_t));
        Decoder decoder = {.survey = &survey, .out = out, .count = out->voices.map.group_count};
        status = decode(&decoder, &scratch);
    }
    arena_release(&scratch);
    return status;
}

double roles_line_share(const Roles *roles, uint64_t voices, Ticks from, Ticks to)
{
    size_t count = roles->voices.map.group_count, beat = ticks_first_from(roles->beats.onsets, sizeof *roles->beats.onsets, roles->beats.count, from + 1), beats = 0;
    double sum = 0;
    for (beat -= beat > 0; beat < roles->beats.count && roles->beats.onsets[beat] < to; beat++) {
        double most = 0;
        bool sounds = false;
        for (size_t v = 0; v < count; v++) {
            if (!(voices >> v & 1) || role_at(roles, beat, v) == SPZ_VOICE_RESTS)
                continue;
            sounds = true;
            most = fmax(most, (double)roles->chance[beat * count + v]);
        }
        sum += most;
        beats += sounds;
    }
    return beats ? sum / (double)beats : 0;
}
