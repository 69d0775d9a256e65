/* A library's answers for the terminal: the works, their movements, and below each what was found in it. */
#include "pages/season_forms.h"
#include "pages/shelf_forms.h"
#include "wording/seatings/change_words.h"
#include "wording/phrase.h"
#include "wording/seatings/seating_words.h"
#include "wording/seasons/shelf_words.h"

typedef struct Text {
    const spz_shelf *shelf;
    const spz_season_look *look;
    Buffer *out;
    Buffer words; /* a paragraph under way */
} Text;

static void end_paragraph(Text *text, int indent, const char *lead)
{
    if (text->words.length)
        layout_flow(text->out, indent, lead, &text->words, text->look->width);
}

static void put_length(Text *text, double seconds, size_t unknown)
{
    if (seconds > 0)
        buffer_puts(&text->words, ", ");
    say_shelf_length(&text->words, text->look->language, seconds, unknown);
}

static void put_points(Text *text, double points)
{
    buffer_puts(&text->words, ": ");
    say_points(&text->words, text->look->language, points);
}

static void put_work(Text *text, const spz_shelf_work *work)
{
    spz_shelf_kind kind = spz_shelf_kind_of(text->shelf);
    buffer_puts(text->out, "\n");
    buffer_printf(&text->words, "%s%s%s", work->composer, *work->composer ? ": " : "", work->name);
    if (work->year)
        buffer_printf(&text->words, " (%d)", work->year);
    put_length(text, work->seconds, work->lengths_unknown);
    if (kind == SPZ_SHELF_FITS || kind == SPZ_SHELF_PARTNERS)
        put_points(text, work->points + work->partner);
    if (kind == SPZ_SHELF_PARTNERS)
        buffer_printf(&text->words, ", %s", words_arrangement(text->look->language, work->seating));
    end_paragraph(text, 0, "");
    if (kind == SPZ_SHELF_SHOWN)
        say_shelf_needs(&text->words, text->look->language, work);
    end_paragraph(text, 2, "");
}

static void put_weakened(Text *text, const spz_shelf_movement *movement)
{
    Buffer losses = {0};
    if (!*movement->weakens)
        return;
    say_shelf_losses(&losses, text->look->language, movement->weakens);
    SAY(&text->words, text->look->language, PHRASE_ARRANGEMENTS_WEAKENED, slot_text("losses", losses.text));
    end_paragraph(text, 4, "");
    buffer_let_go(text->out, &losses);
}

static void put_movement(Text *text, const spz_shelf_work *work, const spz_shelf_movement *movement)
{
    buffer_puts(&text->words, words_shelf_title(work, movement));
    put_length(text, movement->seconds, 0);
    if (*movement->arrangement)
        buffer_printf(&text->words, "; %s", words_arrangement(text->look->language, movement->arrangement));
    if (movement->points > 0)
        put_points(text, movement->points);
    end_paragraph(text, 2, "- ");
    say_shelf_passages(&text->words, text->look->language, movement);
    end_paragraph(text, 4, "");
    put_weakened(text, movement);
    if (spz_shelf_kind_of(text->shelf) == SPZ_SHELF_SHOWN)
        buffer_puts(&text->words, movement->file);
    end_paragraph(text, 4, "");
}

void shelf_text(const spz_shelf *shelf, const spz_season_look *look, Buffer *out)
{
    Text text = {.shelf = shelf, .look = look, .out = out};
    buffer_init(&text.words);
    say_shelf_question(&text.words, look->language, shelf);
    end_paragraph(&text, 0, "");
    for (size_t i = 0; i < spz_shelf_count(shelf); i++) {
        const spz_shelf_work *work = spz_shelf_at(shelf, i);
        put_work(&text, work);
        for (size_t m = 0; m < work->movement_count; m++)
            put_movement(&text, work, &work->movements[m]);
    }
    buffer_let_go(out, &text.words);
}
