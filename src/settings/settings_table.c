#include "settings/settings_table.h"

/* section, key, kind, default, least, most, words, unit, meaning, source */
#define NUMBER(section, key, initial, least, most, unit, meaning, source) \
    { section, key, SPZ_NUMBER, initial, least, most, "", unit, meaning, source }
#define WORD(section, key, initial, words, meaning, source) { section, key, SPZ_WORD, initial, 0, 0, words, "", meaning, source }
#define TEXT(section, key, initial, meaning, source) { section, key, SPZ_TEXT, initial, 0, 0, "", "", meaning, source }
#define YES_NO(section, key, initial, meaning, source) { section, key, SPZ_YES_NO, initial, 0, 0, "", "", meaning, source }

/* Rows of one section stand together: `spezzato settings` prints them in this order. */
const spz_setting settings_table[] = {
    NUMBER("players", "first violins", "14", 1, 40, "players", "players of the first violins", "common practice"),
    NUMBER("players", "second violins", "12", 1, 40, "players", "players of the second violins", "common practice"),
    NUMBER("players", "third violins", "0", 0, 40, "players", "players of a third violin section; 0: where a score has one, all violins are shared out in three equal parts",
           "common practice"),
    NUMBER("players", "violas", "10", 1, 40, "players", "players of the violas", "common practice"),
    NUMBER("players", "cellos", "8", 1, 40, "players", "players of the cellos", "common practice"),
    NUMBER("players", "basses", "6", 0, 40, "players", "players of the double basses", "common practice"),

    NUMBER("stage", "width", "18", 6, 60, "m", "clear width of the stage where the strings sit",
           "under 25 m between the side walls: teaching texts on the physics of music, from memory"),
    NUMBER("stage", "depth", "11", 4, 40, "m", "depth that the strings may take, from the stage edge to the winds", "common practice"),
    NUMBER("stage", "front", "1.5", 0.5, 6, "m", "from the stage edge to the middle of the podium", "common practice"),
    NUMBER("stage", "podium", "2", 1.2, 5, "m", "from the middle of the podium to the chairs of the front desks", "common practice"),
    NUMBER("stage", "desk width", "1.2", 1, 2.5, "m", "room of a desk of violins or violas (two players, one stand) along its row",
           "1.2 m by 1.4 m is 0.84 m2 a player without aisles; Meyer, Acoustics and the Performance of Music, gives about 1.25 m2 with them, from memory"),
    NUMBER("stage", "desk depth", "1.4", 1, 2.5, "m", "from one row of desks to the next", "common practice"),
    NUMBER("stage", "cello width", "1.44", 1, 3, "m", "room of a desk of cellos along its row",
           "1.2 m x 1.5 / 1.25: a cellist takes 1.5 m2 where a violinist takes 1.25 m2; Barron, Auditorium Acoustics and Architectural Design (1993), from memory"),
    NUMBER("stage", "bass width", "1.2", 0.9, 2.5, "m", "room of a double bass player along the row",
           "1.2 m by 1.4 m is 1.7 m2; Barron, Auditorium Acoustics and Architectural Design (1993), gives 1.8 m2 for a double bass, from memory"),
    NUMBER("stage", "spread", "1.15", 1, 1.5, "", "how far, as a factor, the desks draw apart where the stage is wider than they need", "common practice"),
    NUMBER("stage", "riser", "0", 0, 0.6, "m", "height of each row above the one before it, from the third row on; 0: flat floor", "common practice"),
    NUMBER("stage", "wind width", "0.9", 0.6, 2.5, "m", "room of a woodwind player along the row",
           "0.9 m by 1.4 m is 1.25 m2; Barron, Auditorium Acoustics and Architectural Design (1993), from memory"),
    NUMBER("stage", "wind depth", "1.4", 1, 3, "m", "from one row of winds or brass to the next", "common practice"),
    NUMBER("stage", "brass width", "1.1", 0.6, 2.5, "m", "room of a brass player along the row",
           "1.1 m by 1.4 m is 1.5 m2; Barron, Auditorium Acoustics and Architectural Design (1993), for larger wind instruments, from memory"),
    NUMBER("stage", "timpani width", "3.3", 1.5, 6, "m", "room of the timpani along the row",
           "3.3 m by 3 m is 10 m2; Barron, Auditorium Acoustics and Architectural Design (1993), from memory"),
    NUMBER("stage", "percussion width", "2", 1, 6, "m", "room of a percussion player, a harp or a keyboard along the row",
           "common practice; all percussion takes up to 20 m2: Barron, Auditorium Acoustics and Architectural Design (1993), from memory"),
    NUMBER("stage", "percussion depth", "3", 1, 5, "m", "depth of the row of timpani and percussion", "common practice"),
    NUMBER("stage", "soloists", "0", 0, 8, "players", "soloists beside the conductor, besides those of strings whom the score names", "common practice"),
    WORD("stage", "piano", "none", "none|solo", "solo: a concert grand stands between podium and stage edge, and the podium at least 2.9 m from the edge",
         "a grand of 2.75 m by 1.58 m: makers' tables, from memory; the clear ways: common practice"),
    WORD("stage", "basses", "behind cellos", "behind cellos|behind first violins|along the back", "where the basses stand", "common practice"),

    TEXT("hall", "name", "", "name of the hall, for the pages", ""),
    WORD("hall", "sound", "clear", "dry|clear|blurred", "how a hall with people in it sounds: sets the blur for listeners and how well players hear each other",
         "steps: common practice"),
    NUMBER("hall", "blur", "0", 0, 60, "degrees", "how far apart two sections must be heard to be told apart; 0: by the sound of the hall (dry 7.2, clear 10.8, blurred 18)",
           "3.6 degrees straight ahead without reflections: Blauert, Spatial Hearing; several times that in a hall"),
    NUMBER("hall", "st early", "0", -30, 0, "dB", "early support on the stage as measured; 0: not known, goes by the sound of the hall",
           "ISO 3382-1, annex C; players like about -16 to -12 dB"),
    NUMBER("hall", "temperature", "21", 5, 40, "degrees C", "temperature on the stage", "common practice; speed of sound: ISO 9613-1"),
    NUMBER("hall", "front", "4", 1, 20, "m", "from the stage edge to a listener in front", "common practice"),
    NUMBER("hall", "middle", "14", 2, 40, "m", "from the stage edge to a listener in the middle", "common practice"),
    NUMBER("hall", "back", "28", 3, 80, "m", "from the stage edge to a listener at the back", "common practice"),
    NUMBER("hall", "side", "8", 0, 30, "m", "how far from the middle line the listeners at the sides sit", "common practice"),

    NUMBER("weights", "antiphony", "20", 0, 100, "points", "full evidence of sections that answer each other gains this much for each blur's width between them",
           "common practice; docs/method-seating.md"),
    NUMBER("weights", "ensemble", "45", 0, 100, "points", "full evidence of sections that move together costs this much for each whole tolerance of delay between them",
           "common practice; docs/method-seating.md"),
    NUMBER("weights", "three", "44", 0, 100, "points", "full evidence of violins in three parts sets seating them together this far ahead of opposed",
           "common practice; docs/method-seating.md"),
    NUMBER("weights", "bass", "12", 0, 100, "points", "music over a bass line gains this much where cellos and basses are in the middle of the sound rather than at its edge",
           "common practice; docs/method-seating.md"),
    NUMBER("weights", "melody", "5", 0, 100, "points", "melody in the second violins gains this much for each blur's width between them and the first",
           "common practice; docs/method-seating.md"),
    NUMBER("weights", "turned", "3", 0, 100, "points", "melody in the second violins loses this much where their instruments turn away from the audience",
           "Del Mar, Anatomy of the Orchestra (1981), holds that players make up for it; small for that reason"),
    NUMBER("weights", "era", "6", 0, 100, "points", "how much the year of composition alone may speak for violins opposed (before about 1930) or together (since)", "common practice"),
    NUMBER("weights", "house", "6", 0, 100, "points", "gained by an arrangement that the house prefers", "common practice"),
    NUMBER("weights", "violins", "1", 0, 5, "", "share of a weight that counts between violin sections", "common practice"),
    NUMBER("weights", "violas and cellos", "0.5", 0, 5, "", "share of a weight that counts between violas and cellos", "common practice"),
    NUMBER("weights", "violins and lower strings", "0.2", 0, 5, "", "share of a weight that counts between all violins and the lower strings", "common practice"),
    NUMBER("weights", "other pairs", "0.3", 0, 5, "", "share of a weight that counts between any other two sections", "common practice"),
    NUMBER("weights", "imitation", "0.6", 0, 2, "", "share of an exchange that an imitation counts: the answer is covered while the first part goes on", "common practice"),

    TEXT("house", "language", "", "language of the documents, by its code or name; none: English. In a settings file it may stand before the first section", ""),
    TEXT("house", "usual", "violins together, cellos outside", "the seating that stands when nothing else is asked for; settles ties", "common practice"),
    TEXT("house", "preferred", "", "arrangements that the house prefers, '|' between their names", ""),
    TEXT("house", "forbidden", "", "arrangements that the house doesn't allow, '|' between their names", ""),

    YES_NO("concert", "change before", "yes", "the stage may be set up for each concert; no: every concert begins in the house's usual seating", "common practice"),
    YES_NO("concert", "change at interval", "yes", "the seating may change at the interval", "common practice"),
    YES_NO("concert", "change between works", "yes", "the seating may change between two works, while the audience waits", "common practice"),
    YES_NO("concert", "change between movements", "no", "the seating may change between two movements of a work", "out of the question: common practice"),
    NUMBER("concert", "price before", "0", 0, 1000, "points", "evidence that setting up for a concert has to gain", "free: common practice"),
    NUMBER("concert", "price at interval", "1", 0, 1000, "points", "evidence that a change at the interval has to gain; 0: any gain is enough",
           "free as to time: common practice; 1 leaves the chairs where nobody would hear the difference"),
    NUMBER("concert", "price between works", "10", 0, 1000, "points", "evidence that a change between works has to gain", "dear: common practice"),
    NUMBER("concert", "price between movements", "40", 0, 1000, "points", "evidence that a change between movements has to gain, where it is allowed", "common practice"),
    NUMBER("concert", "price of a minute", "1", 0, 100, "points", "further evidence for each minute that the audience waits between works or movements", "common practice"),
    NUMBER("concert", "interval", "20", 1, 60, "minutes", "length of the interval; a change that takes longer is not made there", "common practice"),
    NUMBER("concert", "longest wait", "6", 0, 60, "minutes", "longest that the audience may wait between works or movements for a change", "common practice"),
    NUMBER("concert", "crew", "4", 1, 40, "people", "who carry chairs and stands", "common practice"),
    NUMBER("concert", "chair", "15", 1, 300, "seconds", "for one of the crew to move a chair", "common practice"),
    NUMBER("concert", "stand", "20", 1, 300, "seconds", "for one of the crew to move a stand with its music", "common practice"),
    NUMBER("concert", "settling", "1", 0, 30, "minutes", "until everybody has sat down and looked about them after a change", "common practice"),
    NUMBER("concert", "near", "0.3", 0, 2, "m", "a desk that is this near to a place where one stood before is not counted as moved", "common practice"),
};
const size_t settings_table_count = sizeof settings_table / sizeof settings_table[0];

const char *const settings_free_sections[] = { "sections", "arrangement ", "bars", "bars ", "passages", "passages " };
const size_t settings_free_section_count = sizeof settings_free_sections / sizeof settings_free_sections[0];
