/* stretches.c - a new movement begins after a final barline where the bars are numbered from the beginning again, or a new title stands: on the
 * page (<credit>), or over the bar as 'II. Andante'. A final barline alone separates nothing (before a coda, after a minuet), and a stretch that
 * leads back into the one before it by a da capo stays with it. */
#include "reader/stretches.h"
#include "support/text/ascii.h"
#include <string.h>

/* 0 for '0', 1 for '1'; -1 for what is no plain number. */
static long plain_number(const char *text)
{
    int64_t number = -1;
    return number_whole(text, &number) && number >= 0 && number < 1000000 ? (long)number : -1;
}

/* By bar: is it numbered from the beginning again, and what title in words stands over it? */
typedef struct Signs {
    bool anew;
    const char *title;
} Signs;

static const char *title_on_page(const Reader *reader, size_t bar)
{
    int page = reader->pages.at[bar];
    if (page <= reader->pages.at[bar - 1])
        return NULL;
    for (size_t i = 0; i < reader->titles.on_pages.count; i++)
        if (reader->titles.on_pages.at[i].page == page)
            return reader->titles.on_pages.at[i].text;
    return NULL;
}

/* 'II. Andante', 'IV - Finale': a Roman number, a sign, a word. */
static bool is_numbered_title(const char *text)
{
    size_t numerals = strspn(text, "IVX");
    if (numerals == 0 || numerals > 5)
        return false;
    text += numerals;
    size_t signs = strspn(text, ".:- ");
    return signs > 0 && ascii_is_letter((unsigned char)text[signs]) && strlen(text) >= 4;
}

static Signs *signs_of_bars(const Reader *reader)
{
    size_t bars = reader->bars.count;
    Signs *signs = memory_resize(NULL, bars, sizeof *signs);
    if (!signs)
        return NULL;
    memset(signs, 0, bars * sizeof *signs);
    long last = -1;
    for (size_t i = 0; i < bars; i++) {
        long now = plain_number(reader->bars.at[i].number);
        signs[i].anew = now >= 0 && now <= 1 && last > 1;
        last = now >= 0 ? now : last;
    }
    for (size_t p = reader->parts.count; p-- > 0;)
        for (size_t i = 0; i < reader->parts.at[p].marks.count; i++) {
            const Direction *mark = &reader->parts.at[p].marks.at[i];
            if (mark->kind == DIRECTION_WORDS && is_numbered_title(mark->text))
                signs[mark->bar].title = mark->text;
        }
    return signs;
}

/* Does the stretch from `bar` on play the one before it again, up to its 'fine'? */
static bool leads_back(const Reader *reader, const Signs *signs, size_t first, size_t bar)
{
    bool fine_before = false;
    for (size_t i = first; i < bar; i++)
        fine_before |= reader->bars.at[i].fine;
    for (size_t i = bar; i < reader->bars.count && fine_before; i++) {
        const Bar *at = &reader->bars.at[i];
        if (at->fine || (i > bar && signs[i].anew))
            return false;
        if (at->da_capo || at->dal_segno)
            return true;
    }
    return false;
}

bool stretches_find(Reader *reader, StretchList *out)
{
    Stretch now = {0, reader->bars.count, NULL};
    Signs *signs = signs_of_bars(reader);
    bool done = signs != NULL;
    for (size_t bar = 1; bar < reader->bars.count && done && out->count < LIMIT_MOVEMENTS; bar++) {
        if (!reader->bars.at[bar - 1].final)
            continue;
        const char *title = title_on_page(reader, bar);
        if (!title)
            title = signs[bar].title;
        if ((!title && !signs[bar].anew) || leads_back(reader, signs, now.first, bar))
            continue;
        now.end = bar;
        done = array_push(out, now);
        now = (Stretch){bar, reader->bars.count, title};
    }
    memory_free(signs);
    return done && array_push(out, now);
}
