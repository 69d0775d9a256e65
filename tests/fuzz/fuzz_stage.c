/* Any settings of stage, players, hall, weights and house, with arrangements and corrections of the user's own: each is taken or refused, and what is
 * taken leads a score to its seating, every plan, its distances and angles, the laying of the stage and the ways of sound in the hall. Whatever is set,
 * no place, angle, delay or gain is anything but a number in its range. */
#include "fuzz/choices.h"
#include "spezzato/spezzato.h"
#include "seating/stage/acoustics.h"
#include "seating/stage/house_rules.h"
#include "sound/hall.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { SCORES_MOST = 8 };
static char *scores[SCORES_MOST], own_file[FUZZ_PATH + 32];
static size_t sizes[SCORES_MOST], score_count;
static unsigned long runs, judged, planned;

static void tell(void)
{
    fprintf(stderr, "stage: %lu runs, %lu with a verdict, %lu plans\n", runs, judged, planned);
    unlink(own_file);
}

static void prepare(void)
{
    char paths[SCORES_MOST][FUZZ_PATH];
    score_count = fuzz_scores(paths, SCORES_MOST);
    for (size_t i = 0; i < score_count; i++)
        scores[i] = file_bytes(paths[i], &sizes[i]);
    snprintf(own_file, sizeof own_file, "%.480s/own-%ld.ini", fuzz_place(), (long)getpid());
    atexit(tell);
}

#define within(value, least, most) must((value) >= (least) && (value) <= (most))

static void number_of(Choices *choices, const spz_setting *setting, char *out, size_t size)
{
    static const char *const odd[] = {"", "nan", "inf", "-1", "0x10", "1,5", "1e-300", "1e300", "1e999", "-0", "0.0000001", "99999999999999999999", "2 m", NULL};
    double span = setting->most - setting->least, value;
    switch (choose(choices, 8)) {
    case 0: snprintf(out, size, "%s", choose_text(choices, odd)); return;
    case 1: value = setting->least; break;
    case 2: value = setting->most; break;
    case 3: value = setting->least + span * 1e-6; break;
    default: value = setting->least + span * (double)choose(choices, 1000) / 999;
    }
    snprintf(out, size, "%.6g", value);
}

/* One of the words allowed, or none of them. */
static void word_of(Choices *choices, const spz_setting *setting, char *out, size_t size)
{
    const char *from = setting->words;
    for (size_t skipped = choose(choices, 5); skipped && strchr(from, '|'); skipped--)
        from = strchr(from, '|') + 1;
    snprintf(out, size, "%.*s", (int)strcspn(from, "|"), choose(choices, 12) ? from : "none of them");
}

static void set_one(Choices *choices, spz_settings *settings)
{
    static const char *const texts[] = {"", "violins opposed, cellos inside left", "violins opposed, violas inside left", "violins together, cellos outside",
                                        "violins together, cellos outside|violins together, violas outside", "Ours", "Ours|", "|||", "deutsch", "fr", "Hall of Reeds", "\xE2\x80\xAE<b>&\"'", NULL};
    const spz_setting *setting = spz_setting_at(choose(choices, spz_setting_count()));
    char name[100], value[200];
    snprintf(name, sizeof name, "%s.%s", setting->section, setting->key);
    switch (setting->kind) {
    case SPZ_NUMBER: number_of(choices, setting, value, sizeof value); break;
    case SPZ_WORD: word_of(choices, setting, value, sizeof value); break;
    case SPZ_TEXT: snprintf(value, sizeof value, "%s", choose_text(choices, texts)); break;
    case SPZ_YES_NO: snprintf(value, sizeof value, "%s", choose(choices, 2) ? "yes" : "no");
    }
    spz_settings_set(settings, name, value, NULL);
    if (setting->kind == SPZ_NUMBER)
        within(spz_settings_number(settings, name), setting->least, setting->most);
}

/* Arrangements of their own, and corrections of bars, parts and passages, as a file. */
static void set_own(Choices *choices, spz_settings *settings)
{
    static const char *const lines[] = {
        "[arrangement Ours]", "[arrangement Theirs]", "[arrangement violins together, cellos outside]", "[arrangement ]", "[sections]", "[bars]", "[passages]", "[bars score.musicxml]",
        "order = Vn I, Vc, Va, Vn II", "order = Vn I, Vn II, Vn III, Va, Vc, Db", "order = Va, Vn II, Vc, Vn I", "order = Vn I, Vn I, Va, Vc", "order = Vn I, Vn II", "order = ,", "order = Db, Vn I, Va, Vc, Vn II",
        "basses = along the back", "basses = behind first violins", "basses = elsewhere", "Violin I = Vn II", "Viola = not strings", "Violoncello = staff 1 Vc, voice 2 Db", "Violin 1 = orchestra 2 Vn I",
        "Violin I = solo Vn I", "Violas = desk 1 Va", "Cellos and Basses = continuo", "Flute = Vn III", "Violin II = line 2 Vn I", "first = 0", "joined = 2 3", "4 = 1", "2 = X", "3-9 Vn I Vn II exchange = no", "1-20 = striking", "2 = marginal", "2-3 Va Db hocket = clear",
        "3-5 = perhaps", "1-4 Vn I = no", "Viola = = , ,", NULL};
    char text[4000] = "";
    for (size_t i = 0, count = choose(choices, 12); i < count; i++) {
        size_t used = strlen(text);
        snprintf(text + used, sizeof text - used, "%s\n", choose_text(choices, lines));
    }
    if (!*text)
        return;
    file_save(own_file, text, strlen(text));
    spz_settings_read(settings, own_file, NULL);
}

static void look_at_pairs(const spz_plan *plan)
{
    for (spz_section a = SPZ_NO_SECTION; a < SPZ_SECTION_COUNT; a++)
        for (spz_section b = SPZ_NO_SECTION; b < SPZ_SECTION_COUNT; b++) {
            spz_distance between;
            spz_separation heard;
            if (spz_plan_distance(plan, a, b, &between)) {
                within(between.front, 0, 150);
                within(between.centre, 0, 150);
                within(between.back, 0, 150);
                within(between.back_delay, 0, 500);
            }
            for (size_t place = 0; place < spz_plan_places(plan); place++)
                if (spz_plan_separation(plan, a, b, place, &heard)) {
                    within(heard.angle, 0, 180);
                    within(fabs(heard.ear_delay), 0, 2000);
                    within(heard.widths, 0, 1000);
                }
        }
}

/* One way to look at all of it: drawings are most of the time. */
typedef struct Look {
    spz_language language;
    spz_format page, stage, laying;
} Look;

static Look any_look(Choices *choices)
{
    static const spz_format pages[] = {SPZ_AS_TEXT, SPZ_AS_HTML, SPZ_AS_JSON, SPZ_AS_TEXT}, stages[] = {SPZ_AS_TEXT, SPZ_AS_SVG, SPZ_AS_TEXT}, layings[] = {SPZ_AS_CSV, SPZ_AS_HTML, SPZ_AS_SVG, SPZ_AS_CSV, SPZ_AS_CSV};
    Look look = {.language = (spz_language)choose(choices, SPZ_LANGUAGE_COUNT), .page = pages[choose(choices, 4)]};
    look.stage = stages[choose(choices, 3)];
    look.laying = layings[choose(choices, 5)];
    return look;
}

static void look_at_laying(const spz_plan *plan, const spz_settings *settings, const spz_forces *forces, const Look *look)
{
    spz_laying *laying = NULL;
    must(spz_laying_make(plan, forces, settings, &laying) == SPZ_OK);
    for (size_t i = 0; i < spz_laying_count(laying); i++) {
        const spz_laid *laid = spz_laying_at(laying, i);
        within(hypot(laid->x, laid->y), 0, 500);
        within(laid->z, 0, 100);
        within(laid->angle, -180, 180);
    }
    within(spz_laying_depth(laying), 0, 500);
    spz_document *document = NULL;
    must(spz_report_laying(laying, NULL, 0, look->laying, look->language, &document) == SPZ_OK);
    spz_document_free(document);
    spz_laying_free(laying);
}

static void look_at_plan(spz_plan *plan, const spz_settings *settings, const spz_forces *forces, const Look *look)
{
    double width = spz_plan_stage_width(plan), depth = spz_plan_stage_depth(plan);
    planned++;
    within(spz_plan_used_width(plan), 0, width + 0.01);
    within(spz_plan_used_depth(plan), 0, depth + 0.01);
    for (size_t i = 0; i < spz_plan_desks(plan); i++) {
        const spz_stage_desk *desk = spz_plan_desk(plan, i);
        within(desk->x, -width / 2 - 0.01, width / 2 + 0.01);
        within(desk->y, -spz_plan_front(plan) - 0.01, depth + 0.01);
        within(desk->z, 0, 60);
    }
    within(spz_plan_least_width(plan), 0, 60);
    within(spz_plan_least_depth(plan), 0, 60);
    look_at_pairs(plan);
    spz_document *document = NULL;
    must(spz_report_stage(plan, NULL, 0, look->stage, look->language, &document) == SPZ_OK);
    spz_document_free(document);
    look_at_laying(plan, settings, forces, look);
    spz_plan_free(plan);
}

static void look_at_any_plan(Choices *choices, const spz_settings *settings, const spz_forces *forces, const Look *look)
{
    const char *names[SPZ_ARRANGEMENT_LIMIT];
    size_t count = 0;
    if (spz_arrangements_list(settings, NULL, names, &count) != SPZ_OK)
        return;
    unsigned kind = (unsigned)choose(choices, 4);
    spz_plan *plan = NULL;
    spz_status status = (kind & 2 ? spz_stage_plan_double : spz_stage_plan)(settings, names[choose(choices, count)], kind & 1, NULL, &plan);
    must(status == SPZ_OK || status == SPZ_BAD_SETTINGS);
    if (plan)
        look_at_plan(plan, settings, forces, look);
}

/* What a listener, or the conductor, gets of a player anywhere on the stage. */
static void look_at_hall(Choices *choices, const spz_settings *settings)
{
    Rules rules;
    Hall hall;
    SoundPath paths[SOUND_PATHS];
    rules_read(settings, &rules);
    hall_read(settings, &rules, &hall);
    within(hall_absorption(&hall), 0, 1);
    within(acoustics_sound_speed(rules.celsius), 300, 400);
    within(rules.hearing, 0, 1);
    within(acoustics_tolerance((double)choose(choices, 256) / 100, rules.hearing), 0, 1);
    double angle = (double)choose(choices, 256) / 40;
    Source source = {{rules.width * ((double)choose(choices, 256) / 255 - 0.5), (rules.depth - rules.front) * (double)choose(choices, 256) / 255, 1}, {sin(angle), cos(angle), 0}, (double)choose(choices, 20)};
    for (int seat = 0; seat < SPZ_SEAT_COUNT; seat++) {
        Head head = hall_head(&hall, &rules, (spz_seat)seat);
        hall_paths(&hall, &source, &head, paths);
        for (size_t i = 0; i < SOUND_PATHS; i++) {
            within(paths[i].delay, 0, 3);
            within(paths[i].gain, 0, 20);
            within(paths[i].high, 0, 10);
            within(hypot(hypot(paths[i].front, paths[i].left), paths[i].up), 0, 1.000001);
        }
        SoundTail tail = hall_tail(&hall, paths[0].delay);
        within(tail.energy, 0, 1e6);
    }
}

static void look_at_verdict(const spz_verdict *verdict)
{
    judged += spz_verdict_count(verdict) > 0;
    for (size_t i = 0; i < spz_verdict_count(verdict); i++) {
        const spz_ranked *ranked = spz_verdict_ranked(verdict, i);
        within(ranked->score, 0, 100);
        within(fabs(ranked->points), 0, 1e6);
        within(ranked->lost_seconds, 0, 1e6);
        for (size_t t = 0; t < ranked->term_count; t++)
            within(fabs(ranked->terms[t].points), 0, 1e6);
    }
    within(spz_verdict_margin(verdict), 0, 1);
}

static void look_at_reading(const spz_reading *reading, const spz_settings *settings, spz_forces *forces, const Look *look)
{
    spz_report_options options = SPZ_REPORT_USUAL;
    spz_report *report = NULL;
    spz_document *document = NULL;
    for (size_t i = 0; i < spz_reading_count(reading); i++) {
        look_at_verdict(spz_reading_at(reading, i).verdict);
        spz_forces_add(forces, spz_reading_at(reading, i).sections);
    }
    options.settings = settings;
    options.language = look->language;
    must(spz_report_open(SPZ_REPORT_MOVEMENTS, look->page, &options, &report) == SPZ_OK);
    must(spz_report_add(report, reading) == SPZ_OK && spz_report_close(report, &document) == SPZ_OK);
    spz_document_free(document);
    spz_report_free(report);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    Choices choices = {data, size};
    spz_settings *settings = NULL;
    spz_score *score = NULL;
    spz_reading *reading = NULL;
    spz_forces forces = {{0}, {0}};
    if (!score_count)
        prepare();
    runs++;
    size_t which = choose(&choices, score_count), year = choose(&choices, 4) * 90;
    const Look look = any_look(&choices);
    must(spz_settings_new(&settings) == SPZ_OK);
    for (size_t i = 0, count = choose(&choices, 16); i < count; i++)
        set_one(&choices, settings);
    set_own(&choices, settings);
    must(spz_score_read_memory(scores[which], sizes[which], "score.musicxml", NULL, &score) == SPZ_OK);
    if (spz_reading_of_score(score, settings, year ? 1650 + (int)year : 0, SPZ_TO_SEATING, NULL, &reading) == SPZ_OK)
        look_at_reading(reading, settings, &forces, &look);
    look_at_any_plan(&choices, settings, &forces, &look);
    look_at_hall(&choices, settings);
    spz_reading_free(reading);
    spz_settings_free(settings);
    return 0;
}
