/* What was made audible, for the terminal: seats, files, levels, and what it is not. */
#include "spezzato/listen.h"
#include "wording/seatings/seating_words.h"
#include "wording/seatings/stage_words.h"
#include "writing/document.h"
#include "writing/text_layout.h"
#include <string.h>

static void say_head(Buffer *out, spz_language language, const spz_listening *listening)
{
    spz_seat seat = spz_listening_seat(listening);
    const char *place = seat == SPZ_SEAT_PODIUM ? phrase_text(language, PHRASE_SOUND_PODIUM) : words_listener(language, seat);
    Phrase use = spz_listening_for_loudspeakers(listening) ? PHRASE_SOUND_LOUDSPEAKERS : PHRASE_SOUND_HEADPHONES;
    const char *first = spz_listening_bar(listening, false), *last = spz_listening_bar(listening, true);
    SAY(out, language, strcmp(first, last) ? PHRASE_SOUND_HEAD : PHRASE_SOUND_HEAD_ONE, slot_text("first", first), slot_text("last", last),
        slot_decimal("seconds", spz_listening_seconds(listening), 1), slot_number("sources", (long)spz_listening_sources(listening)),
        slot_text("place", place), slot_phrase("use", use));
}

static void say_version(Buffer *out, spz_language language, const spz_listening *listening, size_t version)
{
    spz_level level = spz_listening_level(listening, version);
    SAY(out, language, PHRASE_SOUND_VERSION, slot_text("arrangement", words_arrangement(language, spz_listening_arrangement(listening, version))),
        slot_decimal("loudness", level.loudness, 1), slot_decimal("peak", level.peak, 1));
}

spz_status spz_report_listening(const spz_listening *listening, const char *const *files, size_t count, spz_language language, spz_document **out)
{
    Buffer text, line;
    buffer_init(&text);
    buffer_init(&line);
    *out = NULL;
    say_head(&line, language, listening);
    layout_flow(&text, 0, "", &line, LAYOUT_USUAL_WIDTH);
    for (size_t version = 0; version < SPZ_LISTEN_VERSIONS; version++) {
        say_version(&line, language, listening, version);
        layout_flow(&text, 0, "", &line, LAYOUT_USUAL_WIDTH);
        for (size_t i = 0; i < count; i++) {
            if (i % SPZ_LISTEN_VERSIONS != version)
                continue;
            buffer_puts(&text, "  ");
            layout_words(&text, files[i]);
            buffer_putc(&text, '\n');
        }
    }
    layout_paragraph(&text, 0, "", phrase_text(language, PHRASE_SOUND_CAUTION), LAYOUT_USUAL_WIDTH);
    text.failed = text.failed || buffer_failed(&line);
    spz_status status = document_take(&text, out);
    buffer_free(&line);
    return status;
}
