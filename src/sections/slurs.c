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
        book->lines[i].length = 0;
        book->count++;
    }
    return i;
}

/* A slur may end in another voice of the staff than the one it began in: there it ends where none is open here. */
static void close_slur(SlurBook *book, size_t line)
{
    for (size_t i = 0; i < book->count && !book->lines[line].open; i++)
        if (book->lines[i].open && book->lines[i].part == book->lines[line].part && book->lines[i].staff == book->lines[line].staff)
            line = i;
    book->lines[line].open -= book->lines[line].open > 0;
}

static void count_slurs(SlurBook *book, size_t line, uint32_t flags)
{
    if (flags & NOTE_SLUR_STOP)
        close_slur(book, line);
    if (flags & NOTE_SLUR_START)
        book->lines[line].open++;
}

/* Most moments have no slur's beginning or end. */
static bool has_slur(const GroupSound *sounds, size_t count)
{
    bool found = false;
    for (size_t i = 0; i < count && sounds[i].onset == sounds[0].onset; i++)
        found |= (sounds[i].note->flags & (NOTE_SLUR_START | NOTE_SLUR_STOP)) != 0 || sounds[i].slur_stops || sounds[i].slur_starts;
    return found;
}

/* A chord's slurs stand on one of its notes, a grace note's end on the note at the same moment; what hangs on a tied note comes last. */
static void count_moment(SlurBook *book, size_t line, const GroupSound *sounds, size_t count)
{
    static const uint32_t turns[] = {NOTE_SLUR_START | NOTE_SLUR_STOP, NOTE_SLUR_STOP, NOTE_SLUR_START}; /* grace notes; ends; beginnings */
    enum { TURNS = sizeof turns / sizeof *turns };
    for (size_t turn = 0; turn <= TURNS; turn++)
        for (size_t i = 0; i < count && sounds[i].onset == sounds[0].onset; i++) {
            if (!same_line(&sounds[0], &sounds[i]))
                continue;
            if (turn == TURNS)
                count_slurs(book, line, (sounds[i].slur_stops ? NOTE_SLUR_STOP : 0) | (sounds[i].slur_starts ? NOTE_SLUR_START : 0));
            else if (!(sounds[i].note->flags & NOTE_GRACE) == (turn > 0))
                count_slurs(book, line, sounds[i].note->flags & turns[turn]);
        }
}

SlurPlace slur_place(SlurBook *book, const GroupSound *sounds, size_t count, size_t index)
{
    size_t line = line_of(book, &sounds[index]);
    if (line == SLUR_LINES)
        return (SlurPlace){false, false};
    if (book->lines[line].moment != sounds[index].onset) {
        Ticks silence = sounds[index].onset - book->lines[line].moment - book->lines[line].length;
        if (silence > book->lines[line].length + sounds[index].duration)
            book->lines[line].open = 0; /* none leads over a silence longer than the notes around it: its end is missing */
        book->lines[line].moment = sounds[index].onset;
        book->lines[line].length = sounds[index].duration;
        book->lines[line].before = book->lines[line].open;
        if (has_slur(sounds + index, count - index))
            count_moment(book, line, sounds + index, count - index);
    }
    return (SlurPlace){book->lines[line].before > 0, book->lines[line].open > 0};
}
