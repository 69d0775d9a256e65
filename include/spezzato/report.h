/* report.h - findings and verdicts as pages, tables and data. Nothing is computed here. */
#ifndef SPEZZATO_REPORT_H
#define SPEZZATO_REPORT_H

#include "spezzato/language.h"
#include "spezzato/reading.h"
#include "spezzato/stage.h"

SPZ_C_BEGIN

typedef enum spz_format { SPZ_AS_TEXT, SPZ_AS_JSON, SPZ_AS_CSV, SPZ_AS_HTML, SPZ_AS_SVG, SPZ_AS_MARKDOWN, SPZ_AS_ODT, SPZ_AS_ICS } spz_format;

/* A finished document in memory; `text` is UTF-8, ended with a zero byte. */
typedef struct spz_document spz_document;
SPZ_API const char *spz_document_text(const spz_document *document, size_t *length); /* `*length` in bytes without the closing zero; may be NULL */
SPZ_API void spz_document_free(spz_document *document); /* takes NULL */
/* Writes the whole document under `path`, or not at all (written beside it, flushed, then renamed); NULL or "-" is standard
 * output. A path that names no ordinary file (a pipe, a device) is written straight. On failure nothing stays behind, an older
 * file under `path` is as it was, and one SPZ_ERROR has gone to the sink. SPZ_CANNOT_WRITE, SPZ_NO_MEMORY. A signal that kills the
 * process in between leaves a file '.spezzato-...' beside `path`: hold signals back during the call. */
SPZ_API spz_status spz_document_save(const spz_document *document, const char *path, const spz_sink *sink);

/* What engraves passages: `folder` (borrowed) holds engrave.mjs and, in node_modules, what that needs; node is looked for in those folders of
 * PATH that are named from the root. Where something is missing the passages are drawn by pitch and time. */
typedef enum spz_engraver { SPZ_ENGRAVER_READY, SPZ_ENGRAVER_ABSENT, SPZ_ENGRAVER_WITHOUT_NODE } spz_engraver;
SPZ_API spz_engraver spz_engraver_state(const char *folder); /* what there is and what is missing; nothing is run */

/* A passage that was made audible (listen.h) for the page: `file` names its sounds, one 'FILE-SEAT.js' for each seat, beside the page. Views. */
typedef struct spz_page_sound {
    size_t movement, passage; /* of the reading; of its findings */
    const char *file;
    const char *arrangements[SPZ_LISTEN_VERSIONS];
    const spz_seat *seats;
    size_t seat_count;
    const char *first_bar, *last_bar; /* what is heard of it */
} spz_page_sound;

/* Names for the pages of many score files in one folder, no two alike whatever their capitals: 'symphony-1.html' for 'scores/symphony-1.mxl'. Where
 * several would be called the same, their folders tell them apart ('autumn-score.html', 'spring-score.html'), else a number; so does it where a name is one of
 * `taken`. */
typedef struct spz_page_names spz_page_names;
SPZ_API spz_status spz_page_names_make(const char *const *paths, size_t count, const char *const *taken, size_t taken_count, spz_page_names **out);
SPZ_API const char *spz_page_names_of(const spz_page_names *names, const char *path); /* NULL: a path that is not among them */
SPZ_API void spz_page_names_free(spz_page_names *names); /* takes NULL */

/* What a report shows. Start from SPZ_REPORT_USUAL and change what is wanted. */
typedef struct spz_report_options {
    bool brief;      /* movements as text or HTML: one line each instead of a page; in HTML it leads to the page (spz_report_page_name) */
    bool all;        /* text: every passage; false: the clear and striking ones that weigh most */
    bool played;     /* streams: repeats unfolded, in playing order */
    bool named;      /* streams as CSV: two further columns, file and movement (always there where a file has several movements) */
    unsigned kinds;  /* passages: sum of 1u << spz_kind; 0 for all kinds */
    double strength; /* passages: this strength at least, 0..1 */
    int width;       /* text: columns, 60..200; 0 for the usual 96 */
    const char *engraver; /* pages as HTML: folder that engraves the passages (spz_engraver_state); NULL: they are drawn by pitch and time */
    const char *cache;    /* folder that keeps what was engraved; NULL: none */
    const char *season;   /* overview as HTML: name of the page with the season's plan, to lead to it; NULL: none */
    /* Pages as HTML: the stage to draw the plan on; NULL: no plan. Passages as text: the players who share out divided lines; NULL: no
     * desks. Borrowed until the report is closed. */
    const spz_settings *settings;
    const char *bar; /* SPZ_REPORT_CONSIDERED: the bar, as printed */
    spz_language language; /* of text and HTML; JSON and CSV are English */
    const char *house_rules; /* spz_settings_house, told on the page; NULL: none. Borrowed until the report is closed */
    const char *work;      /* overview as HTML: name of the page with one seating for all (spz_report_work), to lead to it; NULL: none */
    /* Pages as HTML: names of the overview and of the pages before and after this one, to lead to them; NULL: none. Borrowed likewise. */
    const char *overview, *before, *after;
    const spz_page_sound *sounds; /* pages as HTML: passages with a player. Borrowed likewise */
    size_t sound_count;
    const spz_page_names *pages; /* overview as HTML: names of the pages that it leads to; NULL: spz_report_page_name. Borrowed likewise */
    const char *before_title, *after_title; /* what `before` and `after` are called there ('Work: movement'); NULL: 'movement before'. Borrowed likewise */
} spz_report_options;
#define SPZ_REPORT_USUAL \
    (SPZ_VALUE(spz_report_options){ false, false, false, false, 0, 0.0, 0, NULL, NULL, NULL, NULL, NULL, SPZ_ENGLISH, NULL, NULL, NULL, NULL, NULL, NULL, 0, NULL, NULL, NULL })

typedef enum spz_report_kind {
    SPZ_REPORT_MOVEMENTS, /* the page: sections, seating, reasons, passages; wants SPZ_TO_SEATING; also SPZ_AS_HTML */
    SPZ_REPORT_SECTIONS,  /* how each part was understood; wants SPZ_TO_SECTIONS */
    SPZ_REPORT_STREAMS,   /* the notes of each part, ties joined; wants SPZ_TO_SECTIONS; SPZ_AS_CSV, SPZ_AS_JSON, SPZ_AS_TEXT */
    SPZ_REPORT_PASSAGES,  /* wants SPZ_TO_PASSAGES */
    SPZ_REPORT_SEATING,   /* wants SPZ_TO_SEATING */
    SPZ_REPORT_CONSIDERED, /* what was compared in one bar, and why it was or was not reported; wants SPZ_TO_PASSAGES; SPZ_AS_TEXT */
    SPZ_REPORT_CORRECTIONS, /* a settings file that says of each part what it was taken for, with why and what else can be written as remarks; wants
                             * SPZ_TO_SECTIONS; SPZ_AS_TEXT */
    SPZ_REPORT_KIND_COUNT
} spz_report_kind;

/* The passages of a movement that decide its seating most, three at most, as the page shows them on top; places in its findings. Wants SPZ_TO_SEATING. */
enum { SPZ_DECISIVE_MOST = 3 };
SPZ_API size_t spz_report_decisive(const spz_reading *reading, size_t movement, const spz_report_options *options, size_t chosen[SPZ_DECISIVE_MOST]);

/* A report that grows reading by reading, so that a long row of scores need not be held in memory: a reading may be freed as soon
 * as it was added. */
typedef struct spz_report spz_report;
/* SPZ_BAD_ARGUMENT for a format that the report doesn't have. `options` NULL: the usual. */
SPZ_API spz_status spz_report_open(spz_report_kind kind, spz_format format, const spz_report_options *options, spz_report **out);
/* Adds all movements of the reading. SPZ_BAD_ARGUMENT where the reading stops before what the report shows; the report is then as
 * it was. After SPZ_NO_MEMORY the report can only be freed. */
SPZ_API spz_status spz_report_add(spz_report *report, const spz_reading *reading);
/* Adds one seating for all the movements (of spz_seating_judge_work) to a report of movements or seating; others drop it. The verdict is
 * borrowed until the report is closed. */
SPZ_API void spz_report_set_work(spz_report *report, const spz_verdict *work);
/* A page of its own for such a verdict: the stage, what each movement says by itself and gives up, in playing order, in bars and minutes too. It leads
 * to index.html, and each movement to the page of its score (`pages`: their names, one for each movement; NULL: it doesn't). `settings`:
 * the stage to draw on; NULL: the usual. SPZ_AS_HTML. */
SPZ_API spz_status spz_report_work(const spz_verdict *work, const char *const *pages, const spz_settings *settings, spz_language language, spz_format format,
                                   spz_document **out);
/* Ends the report; it can only be freed afterwards. */
SPZ_API spz_status spz_report_close(spz_report *report, spz_document **out);
SPZ_API void spz_report_free(spz_report *report); /* takes NULL; the document stays */

/* Movements drawn as strips (calls and answers bar by bar) that wait for the pages of concerts: spz_season_look. Readings may be freed once they
 * are added; adding wants SPZ_TO_SEATING. `options` borrowed: kinds, strength and language count. SPZ_BAD_ARGUMENT, SPZ_NO_MEMORY. */
typedef struct spz_strips spz_strips;
SPZ_API spz_status spz_strips_new(const spz_report_options *options, spz_strips **out); /* with no movement yet */
SPZ_API spz_status spz_strips_add(spz_strips *strips, const spz_reading *reading); /* all movements of the reading, in order */
SPZ_API void spz_strips_free(spz_strips *strips); /* NULL is allowed */

/* The name of the page of a score's file, as the overview in HTML leads to it where no names are given: 'symphony-1.html' for 'scores/symphony-1.mxl'. Cut to fit.
 * Returns `out`. */
SPZ_API char *spz_report_page_name(const char *path, char *out, size_t size);

/* The same in one call. All take readings in the order to be shown, and report with the usual options. SPZ_BAD_ARGUMENT as above. */
SPZ_API spz_status spz_report_movements(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out);
SPZ_API spz_status spz_report_sections(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out);
SPZ_API spz_status spz_report_streams(const spz_reading *const *readings, size_t count, bool played, spz_format format,
                                      spz_document **out);
SPZ_API spz_status spz_report_passages(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out);
SPZ_API spz_status spz_report_seating(const spz_reading *const *readings, size_t count, spz_format format, spz_document **out);

/* All settings with their values in force, defaults, units and sources. SPZ_AS_TEXT is a settings file that spz_settings_read takes
 * and that gives the same settings back; SPZ_AS_JSON, SPZ_AS_CSV. */
SPZ_API spz_status spz_report_settings(const spz_settings *settings, spz_format format, spz_document **out);

/* A seating to scale, with distances and delays between up to two pairs of sections (more are left out; none: first and second
 * violins, first violins and cellos) and the cautions that go with it. SPZ_AS_TEXT for the terminal, SPZ_AS_SVG. SPZ_BAD_ARGUMENT for
 * other formats; SPZ_NO_MEMORY. */
SPZ_API spz_status spz_report_stage(const spz_plan *plan, const spz_section (*pairs)[2], size_t count, spz_format format,
                                    spz_language language, spz_document **out);

/* A verdict in one sentence: the recommendation, or why there is none. Cut to fit; returns `out`. */
SPZ_API char *spz_verdict_sentence(const spz_verdict *verdict, spz_language language, char *out, size_t size);

/* Text from a score made safe for a terminal: control characters and marks that turn the direction of writing are dropped, line
 * ends become blanks, bytes that are no UTF-8 become U+FFFD. Writes at most `size` bytes with the closing zero, never half a
 * character. Returns `out`. */
SPZ_API char *spz_text_clean(const char *text, char *out, size_t size);

SPZ_C_END
#endif
