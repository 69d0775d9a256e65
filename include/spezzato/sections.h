/* sections.h - which part, staff or voice is which string section. */
#ifndef SPEZZATO_SECTIONS_H
#define SPEZZATO_SECTIONS_H

#include "spezzato/score.h"
#include "spezzato/settings.h"
#include <stdbool.h>

SPZ_C_BEGIN

/* In score order. SPZ_VIOLINS, SPZ_STRINGS and SPZ_WINDS name sets of sections in findings, never a line of the score. */
typedef enum spz_section {
    SPZ_NO_SECTION = 0,
    SPZ_VN1, SPZ_VN2, SPZ_VN3, SPZ_VA, SPZ_VC, SPZ_DB,
    SPZ_VIOLINS, SPZ_STRINGS, SPZ_WINDS,
    SPZ_SECTION_COUNT
} spz_section;

/* "Vn I", "Vn II", "Vn III", "Va", "Vc", "Db", "Violins", "Strings", "Winds"; "" for none. */
SPZ_API const char *spz_section_name(spz_section section);
/* "first violins", "second violins", "third violins", "violas", "cellos", "basses", "violins", "strings", "winds". */
SPZ_API const char *spz_section_words(spz_section section);
SPZ_API spz_section spz_section_from_name(const char *name); /* SPZ_NO_SECTION when unknown */

typedef enum spz_family {
    SPZ_FAMILY_UNKNOWN = 0, SPZ_FAMILY_STRINGS, SPZ_FAMILY_WOODWIND, SPZ_FAMILY_BRASS, SPZ_FAMILY_PERCUSSION,
    SPZ_FAMILY_KEYBOARD, SPZ_FAMILY_PLUCKED, SPZ_FAMILY_VOICES, SPZ_FAMILY_COUNT
} spz_family;
SPZ_API const char *spz_family_name(spz_family family); /* "strings", "woodwind", ... "not known" */

typedef enum spz_role {
    SPZ_TUTTI = 0, /* the section, or a line of it */
    SPZ_DESK,      /* named desks of a section */
    SPZ_SOLO,      /* one player before the section: leader, concertino, soloist */
    SPZ_CONTINUO,  /* plays along with the bass; sits with it */
    SPZ_ROLE_COUNT
} spz_role;
SPZ_API const char *spz_role_name(spz_role role); /* as in data; "" outside the list */

/* What tells which instrument or section a part is. In brackets: what `text` or `number` holds. */
typedef enum spz_clue_kind {
    SPZ_CLUE_NAME,               /* of the part [text: the name] */
    SPZ_CLUE_ABBREVIATION,       /* [text] */
    SPZ_CLUE_INSTRUMENT,         /* name of its instrument [text] */
    SPZ_CLUE_GROUP,              /* of parts in which it stands [text: its name] */
    SPZ_CLUE_SOUND,              /* MusicXML sound id [text] */
    SPZ_CLUE_MIDI_PROGRAM,       /* [number: 1..128] */
    SPZ_CLUE_SETTINGS,           /* the user's corrections */
    SPZ_CLUE_ABBREVIATION_TOO,   /* fills what the name leaves open [text] */
    SPZ_CLUE_INSTRUMENT_TOO,     /* likewise */
    SPZ_CLUE_PLACE,              /* no name tells: its clef, range and place in the score; a guess */
    SPZ_CLUE_AMONG_VOICES,       /* for names that are a voice or an instrument: its neighbours */
    SPZ_CLUE_AMONG_STRINGS,
    SPZ_CLUE_NO_VOICES,          /* beside it */
    SPZ_CLUE_BASS_LINE_APART,    /* cellos or basses have a part of their own */
    SPZ_CLUE_CELLOS_APART,
    SPZ_CLUE_BASSES_APART,
    SPZ_CLUE_NO_BASS_LINE,       /* no other part for cellos or basses */
    SPZ_CLUE_CONCERTINO,         /* a fuller set of strings follows */
    SPZ_CLUE_ORCHESTRAS,         /* the sections start over */
    SPZ_CLUE_SOLO_MARKS,         /* 'Solo' beside the fuller part of its section */
    SPZ_CLUE_ABOVE_VIOLINS,      /* while its section has its place below them */
    SPZ_CLUE_BELOW_STRINGS,      /* without a number, below the full strings */
    SPZ_CLUE_SHARED_NOTES,       /* with other parts at the same time [number: per cent of its notes] */
    SPZ_CLUE_ONE_LINE,           /* for most of the time: one section of violins */
    SPZ_CLUE_TWO_STAVES,         /* first and second violins */
    SPZ_CLUE_PLURAL,             /* without a number: both violin sections */
    SPZ_CLUE_FIRST_OF_VIOLINS,   /* by its place among violin parts without numbers */
    SPZ_CLUE_SECOND_OF_VIOLINS,
    SPZ_CLUE_THIRD_OF_VIOLINS,   /* or a later one */
    SPZ_CLUE_BEFORE_SECONDS,     /* without a number beside numbered violins */
    SPZ_CLUE_AFTER_FIRSTS,
    SPZ_CLUE_BEFORE_NUMBERED,
    SPZ_CLUE_ANOTHER_LINE,
    SPZ_CLUE_UPPER_STAFF,        /* of two sections on one part */
    SPZ_CLUE_LOWER_STAFF,
    SPZ_CLUE_UPPER_VOICE,
    SPZ_CLUE_LOWER_VOICE,
    SPZ_CLUE_KIND_COUNT
} spz_clue_kind;

typedef struct spz_clue {
    spz_clue_kind kind;
    const char *text; /* as the file has it; NULL where the kind has none */
    int number;
} spz_clue;

/* One line of the score as understood. A part gives one line, or one for each staff or voice where these hold different
 * sections. */
typedef struct spz_line {
    size_t part;
    int staff;            /* 0: all staves of the part */
    const char *voice;    /* NULL: all voices */
    spz_family family;
    spz_section section;  /* SPZ_NO_SECTION for all but strings */
    spz_section also;     /* second section that reads the same notes ('Violoncello e Basso'), or SPZ_NO_SECTION */
    int orchestra;        /* 1, 2 for double orchestras or choirs; 0 when there is one */
    int number;           /* 1.. where a section is written as several parts of equal standing (Viola 1, 2, 3); else 0 */
    int division;         /* 1.. where parts or staves are lines of one divided section (Violin I.1, I.2); else 0 */
    spz_role role;
    const char *desk;     /* the words of its name about desks, as printed ('1. Pult', 'desks 1-2'); NULL when there are none */
    bool several;         /* its name speaks of several players: 'Violins', 'Violini I' */
    bool left_out;        /* not played with the others: a piano reduction, a guide part below the score; in no stream */
    const spz_clue *clues; /* by which it was told, its own names first */
    size_t clue_count;     /* 0: nothing in the file says what it is */
} spz_line;

/* One body of players that sits in one place: what antiphony is heard between. */
typedef struct spz_group {
    spz_section section;
    int orchestra, number; /* as in spz_line */
    bool solo;             /* concertino or soloists */
    bool single;           /* one player: a soloist, or a part of chamber music */
    const char *name;      /* 'Vn I', 'Va 2', 'Vn I (orchestra 2)' */
} spz_group;

typedef struct spz_sections spz_sections;

/* Names every part of the movement. `settings` may hold corrections (section [sections]); NULL for none. Doubts go to the sink. The
 * movement must outlive the result. */
SPZ_API spz_status spz_sections_find(const spz_movement *movement, const spz_settings *settings, const spz_sink *sink,
                                     spz_sections **out);
SPZ_API void spz_sections_free(spz_sections *sections); /* takes NULL */
SPZ_API size_t spz_sections_lines(const spz_sections *sections); /* every part, staff or voice that was understood by itself, in score order */
SPZ_API const spz_line *spz_sections_line(const spz_sections *sections, size_t index); /* NULL past the end */
SPZ_API size_t spz_sections_groups(const spz_sections *sections); /* string groups, in score order */
SPZ_API const spz_group *spz_sections_group(const spz_sections *sections, size_t index); /* NULL past the end */
/* Whether every string part is one player's: a usual combination of single strings, duo to octet, without basses. */
SPZ_API bool spz_sections_chamber_music(const spz_sections *sections);

/* What to write into a settings file to make this line what it was taken for, or to change that: "[sections]\nViolins = Vn II staff 2".
 * The part is named so that the entry fits no other part. A view. */
SPZ_API const char *spz_sections_advice(const spz_sections *sections, size_t line);

SPZ_C_END
#endif
