/* growing_report.h - a report under way. Each kind and format is a Form: three small functions over the same state. */
#ifndef PAGES_GROWING_REPORT_H
#define PAGES_GROWING_REPORT_H
#include "writing/facts.h"
#include "writing/markup.h"
#include "spezzato/report.h"
#include "support/buffer.h"
#include "wording/passage_words.h"

typedef struct ShownMovement { /* one movement to be shown */
    spz_movement_reading reading;
    const char *path;  /* as given by the user */
    const char *file;  /* the last part of its path */
    const char *title; /* the file's name where the score gives none */
    size_t number, of; /* from 1, in its file; how many the file has */
} ShownMovement;

typedef struct Form {
    void (*begin)(spz_report *report);
    void (*movement)(spz_report *report, const ShownMovement *shown); /* failures of memory are remembered in report->out */
    void (*end)(spz_report *report);
} Form;

struct spz_report {
    const Form *form;
    spz_depth depth;
    spz_report_options options;
    Buffer out;
    FactsOut facts; /* the writers, both over `out`; a form uses one of them */
    Markup html;
    size_t movements; /* added so far */
    const spz_verdict *work; /* one seating for all; NULL when not asked for */
    size_t longest;   /* overview: bars of the longest movement so far */
    Buffer work_told; /* overview: the work that the last row belongs to */
    bool named;       /* streams as CSV: with the columns file and movement */
};

/* Movement `index` of the reading, as it is shown. */
ShownMovement shown_movement(const spz_reading *reading, size_t index);

/* Who speaks of this movement, in the reader's language; data are English. */
static inline Speaker report_speaker(const spz_report *report, const ShownMovement *shown)
{
    return (Speaker){report->options.language, shown->reading.sections};
}
static inline Speaker data_speaker(const ShownMovement *shown)
{
    return (Speaker){SPZ_ENGLISH, shown->reading.sections};
}

/* 'passages symphony.mxl 2': the section of a settings file that rules the passages of the movement. Returns `out`. */
char *ruling_section(const ShownMovement *shown, char *out, size_t size);

/* What the user asked to see of the passages. */
bool report_shows(const spz_report_options *options, const spz_passage *passage);

extern const Form text_movements, text_sections, text_streams, text_passages, text_seating, text_considered, text_corrections;
extern const Form html_movements;
extern const Form json_movements, json_sections, json_streams, json_passages, json_seating;
extern const Form csv_movements, csv_sections, csv_streams, csv_passages, csv_seating;

/* The cautions that go with every proposal for a stage; one paragraph. */
static inline const char *report_cautions(spz_language language)
{
    return phrase_text(language, PHRASE_CAUTIONS);
}
#endif
