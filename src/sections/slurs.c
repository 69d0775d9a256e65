#include "sections/slurs.h"

static bool same_line(const GroupSound *a, const GroupSound *b)
{
    return a->part == b->part && a->note->staff == b->note->staff && a->note->voice == b->note->voice;
}

/* The sound's line in the book; SLUR_LINES where it has no room. */
static size_t line_of(SlurBook *book, const GroupSound *sound)
{
    const Note *note = sound->note;
    size_t i = 0;
    while (i < book->count && (book->lines[i].part != sound->part || book->lines[i].staff != note->staff || book->lines[i].voice != note->voice))
        i++;
    if (i == book->count && i < SLUR_LINES) {
        book->lines[i].part = sound->part;
        book->lines[i].staff = note->staff;
        book->lines[i].voice = note->voice;
        book->lines[i].open = 0;
        book->lines[i].moment = -1;
        book->count++;
    }
    return i;
}

static void count_slurs(int *open, const Note *note, uint32_t flags)
{
    if (note->flags & flags & NOTE_SLUR_STOP && *open > 0)
        --*open;
    if (note->flags & flags & NOTE_SLUR_START)
        ++*open;
}

/* A chord's slurs stand on one of its notes, a grace note's end on the note at the same moment. */
static void count_moment(int *open, const GroupSound *sounds, size_t count)
{
    static const uint32_t turns[] = {NOTE_SLUR_START | NOTE_SLUR_STOP, NOTE_SLUR_STOP, NOTE_SLUR_START}; /* grace notes; ends; beginnings */
    for (size_t turn = 0; turn < sizeof turns / sizeof *turns; turn++)
        for (size_t i = 0; i < count && sounds[i].onset == sounds[0].onset; i++)
            if (same_line(&sounds[0], &sounds[i]) && !(sounds[i].note->flags & NOTE_GRACE) == (turn > 0))
                count_slurs(open, sounds[i].note, turns[turn]);
}

SlurPlace slur_place(SlurBook *book, const GroupSound *sounds, size_t count, size_t index)
{
    size_t line = line_of(book, &sounds[index]);
    if (line == SLUR_LINES)
        return (SlurPlace){false, false};
    if (book->lines[line].moment != sounds[index].onset) {
        book->lines[line].moment = sounds[index].onset;
        book->lines[line].before = book->lines[line].open;
        count_moment(&book->lines[line].open, sounds + index, count - index);
    }
    return (SlurPlace){book->lines[line].before > 0, book->lines[line].open > 0};
}
