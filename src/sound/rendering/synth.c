#include "sound/rendering/synth.h"
#include "support/array.h"
#include "support/memory.h"
#include "support/message.h"
#include <fluidsynth.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* One synthesizer has 64 outputs, and two channels (a desk's two players) to each; larger casts take several. */
enum { OUTPUTS = 64, CHANNELS = OUTPUTS * SOUND_PLAYERS, SYNTHS = 8, EXPRESSION = 11 /* the MIDI controller */ };

/* A key that goes down or up. */
typedef struct Key {
    size_t frame;
    const SoundTone *tone;
    bool down;
    double swell; /* not a key but a moment within its tone: its velocity then; 0 */
} Key;

/* A held tone grows and fades in steps of so many seconds. */
static const double swell_step = 0.04;

struct Synth {
    size_t members, count, at; /* synthesizers; frames played */
    struct {
        fluid_settings_t *settings;
        fluid_synth_t *synth;
    } of[SYNTHS];
    Key *keys;
    size_t key_count, next;
    unsigned char held[SYNTHS][CHANNELS][128]; /* tones of one player on one key: the next may begin before the last has ended */
    float *spare; /* for outputs without a member */
    size_t spare_frames;
};

static void be_silent(int level, const char *message, void *data)
{
    (void)level;
    (void)message;
    (void)data;
}

static bool open_one(fluid_settings_t **settings, fluid_synth_t **synth, const char *font)
{
    for (int level = FLUID_PANIC; level <= FLUID_DBG; level++)
        fluid_set_log_function(level, be_silent, NULL);
    *settings = new_fluid_settings();
    if (!*settings)
        return false;
    fluid_settings_setnum(*settings, "synth.sample-rate", SOUND_RATE);
    fluid_settings_setint(*settings, "synth.audio-channels", OUTPUTS);
    fluid_settings_setint(*settings, "synth.audio-groups", OUTPUTS);
    fluid_settings_setint(*settings, "synth.midi-channels", CHANNELS);
    fluid_settings_setint(*settings, "synth.polyphony", 4096);
    fluid_settings_setint(*settings, "synth.cpu-cores", 1);
    fluid_settings_setint(*settings, "synth.reverb.active", 0);
    fluid_settings_setint(*settings, "synth.chorus.active", 0);
    fluid_settings_setnum(*settings, "synth.gain", 0.2);
    *synth = new_fluid_synth(*settings);
    if (!*synth || fluid_synth_sfload(*synth, font, 1) == FLUID_FAILED)
        return false;
    for (int channel = 0; channel < CHANNELS; channel++) {
        fluid_synth_set_channel_type(*synth, channel, CHANNEL_TYPE_MELODIC);
        fluid_synth_pitch_wheel_sens(*synth, channel, 2);
        fluid_synth_cc(*synth, channel, 10, 64);
        fluid_synth_cc(*synth, channel, 7, 127);
    }
    return true;
}

static int in_time(const void *left, const void *right)
{
    const Key *a = left, *b = right;
    if (a->frame != b->frame)
        return a->frame < b->frame ? -1 : 1;
    if (a->down != b->down)
        return a->down ? 1 : -1;
    if (a->tone != b->tone)
        return a->tone < b->tone ? -1 : 1;
    return a->swell < b->swell ? -1 : a->swell > b->swell; /* the key first */
}

static size_t frame_of(double seconds)
{
    return (size_t)(fmax(0, seconds) * SOUND_RATE + 0.5);
}

typedef ARRAY(Key) Keys;

/* On its way from one point to the next. */
static bool list_swell(Keys *keys, const SoundTone *tone)
{
    bool room = true;
    int steps = tone->swell[0] ? (int)(tone->length / swell_step) : 0;
    for (int i = 0; i <= steps && tone->swell[0] && room; i++) {
        double at = steps ? (double)i / steps * (SWELL_POINTS - 1) : 0;
        int point = at < SWELL_POINTS - 1 ? (int)at : SWELL_POINTS - 2;
        double velocity = tone->swell[point] + (at - point) * (tone->swell[point + 1] - tone->swell[point]);
        room = array_push(keys, ((Key){frame_of(tone->onset + (steps ? tone->length * i / steps : 0)), tone, true, velocity}));
    }
    return room;
}

static bool list_keys(Synth *synth, const Performance *performance)
{
    Keys keys = {NULL, 0, 0};
    bool room = true;
    for (size_t i = 0; room && i < performance->tone_count; i++) {
        const SoundTone *tone = &performance->tones[i];
        room = array_push(&keys, ((Key){frame_of(tone->onset), tone, true, 0})) && array_push(&keys, ((Key){frame_of(tone->onset + fmax(0.02, tone->length)), tone, false, 0})) &&
               list_swell(&keys, tone);
    }
    synth->keys = keys.at;
    synth->key_count = room ? keys.count : 0;
    if (room && keys.count > 1)
        qsort(keys.at, keys.count, sizeof *keys.at, in_time);
    return room;
}

spz_status synth_open(const Performance *performance, const spz_sink *sink, Synth **out)
{
    Synth *synth = *out = memory_zeroed(1, sizeof *synth);
    if (!synth)
        return SPZ_NO_MEMORY;
    synth->members = performance->members;
    size_t needed = (performance->members + OUTPUTS - 1) / OUTPUTS;
    if (!list_keys(synth, performance))
        return SPZ_NO_MEMORY;
    for (size_t i = 0; i < needed && i < SYNTHS; i++) {
        synth->count++;
        if (!open_one(&synth->of[i].settings, &synth->of[i].synth, performance->font)) {
            message_send(sink, &(spz_message){.severity = SPZ_ERROR, .file = performance->font}, "it can't be used as a SoundFont");
            return SPZ_CANNOT_OPEN;
        }
    }
    return SPZ_OK;
}

void synth_close(Synth *synth)
{
    if (!synth)
        return;
    for (size_t i = 0; i < synth->count; i++) {
        delete_fluid_synth(synth->of[i].synth);
        delete_fluid_settings(synth->of[i].settings);
    }
    memory_free(synth->keys);
    memory_free(synth->spare);
    memory_free(synth);
}

/* A quarter tone and less is bent: a wheel of two semitones has 8192 steps to either side. */
static void strike(Synth *synth, const Key *key)
{
    const SoundTone *tone = key->tone;
    size_t which = tone->member / OUTPUTS;
    int channel = (int)(tone->member % OUTPUTS + (size_t)tone->player * OUTPUTS), pitch = (int)floor(tone->key + 0.5);
    if (which >= synth->count || pitch < 0 || pitch > 127)
        return;
    fluid_synth_t *of = synth->of[which].synth;
    if (key->swell > 0) { /* expression and velocity take away by one curve (SoundFont 2.04, 8.4) */
        fluid_synth_cc(of, channel, EXPRESSION, (int)(127 * key->swell / tone->velocity + 0.5));
        return;
    }
    unsigned char *held = &synth->held[which][channel][pitch];
    bool last = *held == 1;
    *held = (unsigned char)(*held + (key->down ? 1 : -1));
    if (!key->down) {
        if (last)
            fluid_synth_noteoff(of, channel, pitch);
        return;
    }
    if (*held > 1)
        fluid_synth_noteoff(of, channel, pitch);
    fluid_synth_program_change(of, channel, tone->program);
    if (!tone->swell[0])
        fluid_synth_cc(of, channel, EXPRESSION, 127);
    fluid_synth_pitch_bend(of, channel, 8192 + (int)((tone->key - pitch) * 4096));
    fluid_synth_noteon(of, channel, pitch, tone->velocity);
}

/* Left and right of an output are added into one channel. */
static void render(Synth *synth, size_t from, size_t frames, size_t all, float *out)
{
    float *outputs[2 * OUTPUTS];
    for (size_t which = 0; which < synth->count; which++) {
        for (size_t i = 0; i < OUTPUTS; i++) {
            size_t member = which * OUTPUTS + i;
            outputs[2 * i] = outputs[2 * i + 1] = member < synth->members ? out + member * all + from : synth->spare;
        }
        fluid_synth_process(synth->of[which].synth, (int)frames, 0, NULL, 2 * OUTPUTS, outputs);
    }
}

void synth_play(Synth *synth, size_t frames, float *out)
{
    memset(out, 0, synth->members * frames * sizeof *out);
    if (frames > synth->spare_frames) {
        memory_free(synth->spare);
        synth->spare = memory_zeroed(frames, sizeof *synth->spare);
        synth->spare_frames = synth->spare ? frames : 0;
    }
    if (!synth->spare)
        return;
    size_t done = 0;
    while (done < frames) {
        while (synth->next < synth->key_count && synth->keys[synth->next].frame <= synth->at)
            strike(synth, &synth->keys[synth->next++]);
        size_t now = frames - done;
        if (synth->next < synth->key_count && synth->keys[synth->next].frame - synth->at < now)
            now = synth->keys[synth->next].frame - synth->at;
        render(synth, done, now, frames, out);
        done += now;
        synth->at += now;
    }
}
