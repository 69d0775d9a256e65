#include "wording/papers/notes_words.h"
#include "support/text/ascii.h"
#include "wording/passage_words.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { BODIES_MOST = 16, CANON_ENTRIES = 4 }; /* of two, so many entries are worth a list */

/* The phrases of a list take turns. */
static Phrase in_turn(Phrase first, size_t count, size_t turn)
{
    return (Phrase)(first + (unsigned)(turn % count));
}
#define IN_TURN(name, last, turn) in_turn(PHRASE_##name##_1, PHRASE_##name##_##last - PHRASE_##name##_1 + 1, turn)

void say_clock(Buffer *out, spz_language language, double seconds)
{
    long whole = seconds < 0 || seconds > 1e8 ? 0 : lround(seconds);
    char minutes[24], rest[24];
    snprintf(minutes, sizeof minutes, whole >= 3600 ? "%02ld" : "%ld", whole / 60 % 60);
    snprintf(rest, sizeof rest, whole < 60 ? "%ld" : "%02ld", whole % 60);
    SAY(out, language, whole >= 3600 ? PHRASE_NOTES_CLOCK_HOURS : whole < 60 ? PHRASE_NOTES_CLOCK_SECONDS : PHRASE_NOTES_CLOCK, slot_number("hours", whole / 3600),
        slot_text("minutes", minutes), slot_text("seconds", rest), slot_text("nought", whole < 10 ? "0" : ""));
}

void say_about(Buffer *out, spz_language language, double seconds)
{
    long minutes = lround(seconds / 60);
    SAY(out, language, PHRASE_NOTES_ABOUT, slot_number("n", minutes < 1 ? 1 : minutes));
}

Phrase share_phrase(double share)
{
    static const double shares[] = {0, 1.0 / 10, 1.0 / 6, 1.0 / 5, 1.0 / 4, 1.0 / 3, 2.0 / 5, 1.0 / 2, 3.0 / 5, 2.0 / 3, 3.0 / 4, 4.0 / 5, 5.0 / 6, 9.0 / 10, 1};
    _Static_assert(sizeof shares / sizeof *shares == PHRASE_SHARE_14 - PHRASE_SHARE_0 + 1, "every share has its phrase");
    size_t best = 0;
    for (size_t i = 1; i < sizeof shares / sizeof *shares; i++)
        if (fabs(share - shares[i]) < fabs(share - shares[best]))
            best = i;
    return (Phrase)(PHRASE_SHARE_0 + (unsigned)best);
}

bool times_are_known(const Overview *overview)
{
    return overview->given || overview->tapped;
}

void say_bar(Buffer *out, spz_language language, const MovementNotes *notes, size_t bar)
{
    char text[WORDS_TEXT];
    buffer_puts(out, words_bar(language, spz_movement_bar_number(notes->movement, bar), bar, text));
}

static Slot slot_of(const char *name, const Buffer *text)
{
    return slot_text(name, text->text && !buffer_failed(text) ? text->text : "");
}

static void say_moment(Buffer *out, spz_language language, const MovementNotes *notes, const Sounding *when, size_t again)
{
    Buffer time = {0};
    bool known = times_are_known(&notes->overview);
    if (known)
        say_clock(&time, language, when->seconds);
    else
        buffer_puts(&time, phrase_text(language, share_phrase(when->share)));
    if (again < 2)
        SAY(out, language, again ? PHRASE_NOTES_AT_AGAIN : known ? PHRASE_NOTES_AT : PHRASE_NOTES_SHARE, slot_of("time", &time));
    else
        buffer_printf(out, ", %s", time.text ? time.text : "");
    buffer_let_go(out, &time);
}

void say_when(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    if (citation->time_count)
        say_moment(out, language, notes, &citation->times[0], 0);
}

static void say_letter(Buffer *out, spz_language language, const spz_passage *passage)
{
    bool figure = ascii_is_digit(passage->letter[0]);
    Phrase there = figure ? PHRASE_NOTES_FIGURE : PHRASE_NOTES_LETTER, after = figure ? PHRASE_NOTES_FIGURE_AFTER : PHRASE_NOTES_LETTER_AFTER;
    if (passage->letter[0])
        SAY(out, language, passage->after_letter ? after : there, slot_text("letter", passage->letter), slot_number("n", passage->after_letter));
}

/* 'Andante', where the citation before it, or the heading, does not say so already. */
static void say_tempo(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    const Citation *before = citation > notes->citations.at && citation < notes->citations.at + notes->citations.count ? citation - 1 : NULL;
    const char *last = before ? before->tempo : "";
    if (*citation->tempo && strcmp(citation->tempo, last) && (before || !strstr(notes->title, citation->tempo)))
        SAY(out, language, PHRASE_NOTES_TEMPO, slot_text("tempo", citation->tempo));
}

const char *key_words(spz_language language, int fifths, bool minor)
{
    return phrase_text(language, (Phrase)((minor ? PHRASE_KEY_MINOR_1 : PHRASE_KEY_MAJOR_1) + fifths + 7));
}

/* ', in C major', where the citation before it does not say so already. */
static void say_key_here(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    const Citation *before = citation > notes->citations.at && citation < notes->citations.at + notes->citations.count ? citation - 1 : NULL;
    bool told = before && before->has_key && before->fifths == citation->fifths && before->minor == citation->minor;
    if (citation->has_key && !told)
        SAY(out, language, PHRASE_NOTES_KEY_HERE, slot_text("key", key_words(language, citation->fifths, citation->minor)));
}

void say_citation_place(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    const spz_passage *passage = citation->passage;
    Buffer from = {0}, to = {0};
    say_bar(&from, language, notes, citation->upbeat_to);
    say_bar(&to, language, notes, citation->last);
    SAY(out, language, citation->upbeat_to == citation->last ? PHRASE_NOTES_BAR : PHRASE_NOTES_BARS, slot_of("from", &from), slot_of("to", &to));
    if (citation->upbeat_to != passage->first)
        SAY(out, language, PHRASE_NOTES_UPBEAT, slot_of("from", &from));
    say_letter(out, language, passage);
    if (citation->trio)
        buffer_puts(out, phrase_text(language, PHRASE_NOTES_TRIO));
    say_tempo(out, language, notes, citation);
    say_key_here(out, language, notes, citation);
    size_t moments = times_are_known(&notes->overview) || !citation->time_count ? citation->time_count : 1; /* shares of every repeat tire */
    for (size_t i = 0; i < moments; i++)
        say_moment(out, language, notes, &citation->times[i], i);
    buffers_let_go(out, &from, &to);
}

/* ', a third higher'; nothing where the answers differ, or where the notes are told one by one. */
static void say_change_of(Buffer *out, spz_language language, spz_change change)
{
    Buffer words = {0};
    words_change(language, change, &words);
    SAY(out, language, PHRASE_NOTES_CHANGE, slot_of("change", &words));
    buffer_let_go(out, &words);
}

/* As many as there are of what is told, where that is certain. */
static void say_turns(Buffer *out, spz_language language, Phrase phrase, const Citation *citation)
{
    if (citation->counted && citation->heard_all >= 4 && citation->heard_all > citation->told_count)
        SAY(out, language, phrase, slot_number("n", (long)citation->heard_all));
}

/* Violins, violas, cellos and basses, all of one orchestra, are the strings. */
static size_t as_strings(spz_group *bodies, size_t count)
{
    static const spz_section all[] = {SPZ_VIOLINS, SPZ_VA, SPZ_VC, SPZ_DB};
    enum { ALL = sizeof all / sizeof *all };
    for (size_t i = 0; i < ALL; i++)
        if (count != ALL || bodies[i].section != all[i] || bodies[i].number || bodies[i].solo || bodies[i].orchestra != bodies[0].orchestra)
            return count;
    bodies[0].section = SPZ_STRINGS;
    return 1;
}

static size_t players_of_link(const MovementNotes *notes, const Citation *citation, size_t link, spz_group *bodies)
{
    if (citation->told_count > 1) /* else: all with some of their own, or strings with winds */
        return as_strings(bodies, spz_players_named(notes->sections, citation->told[link].players, bodies, BODIES_MOST));
    bodies[0] = spz_side_named(notes->sections, &citation->passage->sides[link]);
    return citation->passage->sides[link].section != SPZ_NO_SECTION;
}

/* 'A and B and C' leaves open who stands against whom: sets of several sections need a phrase that keeps them apart. */
static Phrase pair_phrase(const Citation *citation, bool sets)
{
    switch (citation->shape) {
    case SHAPE_IMITATION: return IN_TURN(NOTES_IMITATION, 4, citation->variant);
    case SHAPE_HOCKET: return sets ? IN_TURN(NOTES_HOCKET_SETS, 3, citation->variant) : IN_TURN(NOTES_HOCKET, 3, citation->variant);
    case SHAPE_SWAP: return sets ? IN_TURN(NOTES_TO_AND_FRO_SETS, 3, citation->variant) : IN_TURN(NOTES_SWAP, 2, citation->variant);
    case SHAPE_ONCE: return citation->variant % 2 ? PHRASE_NOTES_ONCE : PHRASE_NOTES_EXCHANGE_5; /* one after the other, and no more */
    case SHAPE_TO_AND_FRO: return sets ? IN_TURN(NOTES_TO_AND_FRO_SETS, 3, citation->variant) : IN_TURN(NOTES_TO_AND_FRO, 3, citation->variant);
    default: return IN_TURN(NOTES_EXCHANGE, 5, citation->variant);
    }
}

static void say_pair(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation, bool in_full)
{
    spz_group first[BODIES_MOST], second[BODIES_MOST];
    size_t from = citation_named_first(citation), calling = players_of_link(notes, citation, from, first), answering = players_of_link(notes, citation, 1 - from, second);
    Buffer change = {0}, turns = {0};
    if (citation->alike && in_full)
        say_change_of(&change, language, citation->change);
    if (in_full)
        say_turns(&turns, language, PHRASE_NOTES_TURNS, citation);
    SAY(out, language, pair_phrase(citation, calling > 1 || answering > 1), slot_players("first", first, calling), slot_players("second", second, answering),
        slot_of("change", &change), slot_of("turns", &turns));
    buffers_let_go(out, &change, &turns);
}

/* What is known of the entry that stands for a link; NULL where that is nothing. */
static const Heard *heard_of(const Citation *citation, size_t link)
{
    for (size_t i = 0; i < citation->heard_count; i++)
        if (citation->heard[i].entry == citation->told_entry[link])
            return &citation->heard[i];
    return NULL;
}

/* 'bar 17', 'upbeat to bar 18'; where the one before enters in the same bar, its beat too. */
static void say_link_place(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation, size_t link)
{
    const spz_passage *passage = citation->passage;
    const spz_entry *entry = citation->told_entry[link] < passage->entry_count ? &passage->entries[citation->told_entry[link]] : NULL;
    bool again = entry && link && citation->told[link].bar == citation->told[link - 1].bar;
    size_t bar_told = entry && !again ? citation_upbeat_to(notes->movement, entry) : citation->told[link].bar;
    Phrase phrase = again ? PHRASE_NOTES_LINK_BEAT : bar_told != citation->told[link].bar ? PHRASE_NOTES_LINK_UPBEAT : PHRASE_NOTES_LINK_BAR;
    char beat[BEAT_TEXT];
    Buffer bar = {0};
    say_bar(&bar, language, notes, bar_told);
    SAY(out, language, phrase, slot_of("bar", &bar), slot_text("beat", again ? words_beat(entry->beat, beat) : ""));
    buffer_let_go(out, &bar);
}

static void say_link(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation, size_t link)
{
    spz_group bodies[BODIES_MOST];
    size_t count = players_of_link(notes, citation, link, bodies);
    Phrase phrase = link == 0 ? PHRASE_NOTES_LINK_FIRST : link + 1 == citation->told_count ? PHRASE_NOTES_LINK_LAST : PHRASE_NOTES_LINK_NEXT;
    const Heard *heard = heard_of(citation, link);
    Buffer who, place, change;
    Slot players = slot_players("who", bodies, count);
    buffer_init(&who);
    buffer_init(&place);
    buffer_init(&change);
    if (count > 1)
        say(&who, language, PHRASE_NOTES_TOGETHER, &players, 1);
    else
        say_template(&who, language, "{who.the}", &players, 1);
    say_link_place(&place, language, notes, citation, link);
    if (heard && heard->at_interval)
        say_change_of(&change, language, heard->change);
    SAY(out, language, phrase, slot_of("who", &who), slot_of("place", &place), slot_of("change", &change));
    buffers_let_go(out, &who, &place, &change);
}

/* More than two: every one with its bar, in order of entry. */
static void say_chain(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    Buffer links = {0}, turns = {0};
    for (size_t i = 0; i < citation->told_count; i++)
        say_link(&links, language, notes, citation, i);
    say_turns(&turns, language, PHRASE_NOTES_TURNS_AFTER, citation);
    SAY(out, language, citation->shape == SHAPE_STRETTO ? IN_TURN(NOTES_STRETTO, 3, citation->variant) : IN_TURN(NOTES_CHAIN, 3, citation->variant),
        slot_of("links", &links), slot_of("turns", &turns), slot_alone(notes->sections));
    buffers_let_go(out, &links, &turns);
}

static bool citation_has_list(const Citation *citation)
{
    bool many = citation->shape == SHAPE_CHAIN || citation->shape == SHAPE_STRETTO, canon = citation->shape == SHAPE_IMITATION && citation->heard_all >= CANON_ENTRIES;
    return (many || canon) && citation->heard_all > citation->told_count;
}

size_t citation_list_lines(const Citation *citation)
{
    return citation_has_list(citation) ? citation->heard_count + (citation->heard_all > citation->heard_count) : 0;
}

void say_entry(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation, size_t line)
{
    spz_group bodies[BODIES_MOST];
    char beat[BEAT_TEXT];
    Buffer bar = {0}, change = {0};
    if (line >= citation->heard_count) {
        SAY(out, language, PHRASE_NOTES_ENTRIES_MORE, slot_number("n", (long)(citation->heard_all - citation->heard_count)));
        return;
    }
    const Heard *heard = &citation->heard[line];
    const spz_entry *entry = &citation->passage->entries[heard->entry];
    bool on_one = entry->beat.over == entry->beat.under;
    say_bar(&bar, language, notes, entry->bar);
    if (heard->at_interval)
        say_change_of(&change, language, heard->change);
    SAY(out, language, on_one ? PHRASE_NOTES_ENTRY : PHRASE_NOTES_ENTRY_BEAT, slot_of("bar", &bar), slot_text("beat", words_beat(entry->beat, beat)),
        slot_players("who", bodies, as_strings(bodies, spz_players_named(notes->sections, heard->players, bodies, BODIES_MOST))), slot_of("change", &change));
    buffers_let_go(out, &bar, &change);
}

/* Contrast: who has the line whole, and where. */
static void say_whole(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    const Contrast *whole = &citation->whole;
    Buffer from = {0}, to = {0};
    if (!citation->shared_out)
        return;
    say_bar(&from, language, notes, whole->first);
    say_bar(&to, language, notes, whole->last);
    SAY(out, language, whole->first == whole->last ? PHRASE_NOTES_WHOLE_BAR : PHRASE_NOTES_WHOLE, slot_players("who", spz_sections_group(notes->sections, whole->group), 1),
        slot_of("from", &from), slot_of("to", &to));
    buffers_let_go(out, &from, &to);
}

static void say_split_line(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    const spz_braid *braid = &citation->passage->told.braid;
    spz_group parts[3];
    size_t count = 0;
    for (size_t i = 0; i < 3 && braid->sections[i]; i++)
        parts[count++] = (spz_group){.section = braid->sections[i], .single = spz_sections_chamber_music(notes->sections)};
    SAY(out, language, IN_TURN(NOTES_SPLIT_LINE, 2, citation->variant), slot_players("parts", parts, count), slot_alone(notes->sections));
}

_Static_assert(PHRASE_NOTES_WRITING_IN_TURN - PHRASE_NOTES_WRITING_CHORDS == SPZ_IN_TURN - SPZ_IN_CHORDS, "textures in their order");

static void say_divided(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    const spz_passage *passage = citation->passage;
    const spz_division *division = &passage->told.division;
    spz_group who = spz_side_named(notes->sections, &passage->sides[0]);
    spz_writing writing = division->writing[division->violins == SPZ_SECONDS_DIVIDED];
    Phrase phrase = citation->shape == SHAPE_VIOLINS    ? IN_TURN(NOTES_VIOLINS, 2, citation->variant)
                    : citation->shape == SHAPE_SOLOISTS ? PHRASE_NOTES_SOLOISTS
                                                        : IN_TURN(NOTES_DIVIDED, 3, citation->variant);
    bool whole = division->violins == SPZ_ONE_SECTION; /* else the writing is that of one section of two */
    SAY(out, language, phrase, slot_players("who", &who, 1),
        slot_number("n", citation->shape == SHAPE_SOLOISTS ? division->soloists : passage->turns),
        whole ? slot_phrase("writing", (Phrase)(PHRASE_NOTES_WRITING_CHORDS + (unsigned)writing.texture)) : slot_text("writing", ""),
        whole ? slot_phrase("manner", (Phrase)(PHRASE_MANNER_PLAIN + (unsigned)writing.manner)) : slot_text("manner", ""));
}

static void say_coupling(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    const spz_unity *unity = &citation->passage->told.unity;
    const spz_side *sides = citation->passage->sides;
    spz_group who[2] = {spz_side_named(notes->sections, &sides[0]), spz_side_named(notes->sections, &sides[1])};
    SAY(out, language, IN_TURN(NOTES_COUPLING, 3, citation->variant), slot_players("who", who, 2),
        slot_phrase("parallel", (Phrase)(PHRASE_PARALLEL_UNISON + (unsigned)unity->parallel)),
        slot_phrase("loudness", (Phrase)(PHRASE_LOUDNESS_PLAIN + (unsigned)unity->loudness)),
        unity->notes_a_second > 0 ? slot_phrase("fast", PHRASE_NOTES_FAST) : slot_text("fast", ""), slot_alone(notes->sections));
}

static void say_returns(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    Buffer bars[RETURNS_MOST], list;
    const char *items[RETURNS_MOST];
    size_t count = citation->return_count;
    buffer_init(&list);
    for (size_t i = 0; i < count; i++) {
        buffer_init(&bars[i]);
        say_bar(&bars[i], language, notes, citation->returns[i]->first);
        list.failed = list.failed || bars[i].failed || !bars[i].text;
        items[i] = bars[i].text ? bars[i].text : "";
    }
    say_list(&list, language, items, count);
    if (count)
        SAY(out, language, PHRASE_NOTES_RETURNS, slot_number("n", (long)count), slot_of("bars", &list));
    out->failed = out->failed || list.failed;
    for (size_t i = 0; i < count; i++)
        buffer_free(&bars[i]);
    buffer_free(&list);
}

_Static_assert(PHRASE_DYNAMIC_10 - PHRASE_DYNAMIC_1 == SPZ_DYNAMIC_FFFF - SPZ_DYNAMIC_PPPP, "a word for each sign of loudness");

/* 'Marked forte, the answer piano'; what is neither answered otherwise nor very soft or loud is left unsaid. */
static void say_loudness(Buffer *out, spz_language language, const Citation *citation)
{
    spz_dynamic loud = citation->loudness, answer = citation->answer_loudness;
    bool otherwise = answer && answer != loud;
    if (!loud || (!otherwise && loud > SPZ_DYNAMIC_PP && loud < SPZ_DYNAMIC_FF))
        return;
    SAY(out, language, otherwise ? PHRASE_NOTES_LOUDNESS_BOTH : PHRASE_NOTES_LOUDNESS, slot_phrase("loud", (Phrase)(PHRASE_DYNAMIC_1 + loud - 1)),
        slot_phrase("answer", (Phrase)(PHRASE_DYNAMIC_1 + (answer ? answer : loud) - 1)));
}

static void say_winds(Buffer *out, spz_language language, const Citation *citation)
{
    const char *names[WINDS_MOST];
    Buffer list = {0};
    for (size_t i = 0; i < citation->wind_count; i++)
        names[i] = citation->winds[i];
    say_list(&list, language, names, citation->wind_count);
    if (citation->wind_count)
        SAY(out, language, PHRASE_NOTES_WINDS, slot_of("who", &list));
    buffer_let_go(out, &list);
}

void say_citation(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    switch (citation->shape) {
    case SHAPE_CHAIN:
    case SHAPE_STRETTO: say_chain(out, language, notes, citation); break;
    case SHAPE_SPLIT_LINE: say_split_line(out, language, notes, citation); break;
    case SHAPE_DIVIDED:
    case SHAPE_VIOLINS:
    case SHAPE_SOLOISTS: say_divided(out, language, notes, citation); break;
    case SHAPE_COUPLING: say_coupling(out, language, notes, citation); break;
    default: say_pair(out, language, notes, citation, true);
    }
    say_whole(out, language, notes, citation);
    say_winds(out, language, citation);
    say_loudness(out, language, citation);
    say_returns(out, language, notes, citation);
}

void say_moment_alone(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    if (!citation->time_count)
        return;
    if (times_are_known(&notes->overview))
        say_clock(out, language, citation->times[0].seconds);
    else
        buffer_puts(out, phrase_text(language, share_phrase(citation->times[0].share)));
}

/* 'first the violas, then the cellos', without bars. */
static void say_relay(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    Buffer names[TOLD_MOST], list;
    const char *items[TOLD_MOST];
    buffer_init(&list);
    for (size_t i = 0; i < citation->told_count; i++) {
        spz_group bodies[BODIES_MOST];
        Slot players = slot_players("who", bodies, players_of_link(notes, citation, i, bodies));
        buffer_init(&names[i]);
        say_template(&names[i], language, "{who.plain}", &players, 1);
        list.failed = list.failed || names[i].failed;
        items[i] = names[i].text ? names[i].text : "";
    }
    for (size_t i = 0; i < citation->told_count; i++)
        buffer_printf(&list, "%s%s", i ? ", " : "", items[i]);
    SAY(out, language, PHRASE_NOTES_RELAY, slot_of("who", &list));
    out->failed = out->failed || list.failed;
    for (size_t i = 0; i < citation->told_count; i++)
        buffer_free(&names[i]);
    buffer_free(&list);
}

void say_for_listeners(Buffer *out, spz_language language, const MovementNotes *notes, const Citation *citation)
{
    bool chain = citation->shape == SHAPE_CHAIN || citation->shape == SHAPE_STRETTO;
    if (chain)
        say_relay(out, language, notes, citation);
    else if (spz_kind_is_antiphony(citation->passage->kind) && citation->shape != SHAPE_SPLIT_LINE)
        say_pair(out, language, notes, citation, false);
    else if (citation->shape == SHAPE_SPLIT_LINE)
        say_split_line(out, language, notes, citation);
    else if (citation->shape == SHAPE_COUPLING)
        say_coupling(out, language, notes, citation);
    else
        say_divided(out, language, notes, citation);
}
