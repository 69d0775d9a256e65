#include "reader/files/foreign_files.h"
#include "support/text/ascii.h"
#include <string.h>

#define EXPORT "; what is read here is MusicXML, which the program that the score was written with can export"

static const struct {
    const char *bytes;
    size_t count;
    const char *sentence;
} kinds[] = {
    {"%PDF", 4, "this is a PDF, a picture of a score" EXPORT},
    {"MThd", 4, "this is a MIDI file: it has the notes, but not who plays what from which part" EXPORT},
    {"\x89PNG", 4, "this is a picture" EXPORT},
    {"\xff\xd8\xff", 3, "this is a picture" EXPORT},
    {"GIF8", 4, "this is a picture" EXPORT},
    {"II*\0", 4, "this is a picture" EXPORT},
    {"MM\0*", 4, "this is a picture" EXPORT},
    {"RIFF", 4, "this is a sound recording" EXPORT},
    {"ID3", 3, "this is a sound recording" EXPORT},
    {"\x1f\x8b", 2, "this is packed with gzip; unpack it first (a compressed score is a zip archive, .mxl)"},
};

static bool is_wide(const unsigned char *text, size_t count)
{
    return count >= 2 && ((text[0] == 0xFF && text[1] == 0xFE) || (text[0] == 0xFE && text[1] == 0xFF) || !text[0] != !text[1]);
}

const char *foreign_file(const void *bytes, size_t count, spz_status *status)
{
    const unsigned char *text = bytes;
    size_t at = count >= 3 && memcmp(text, "\xef\xbb\xbf", 3) == 0 ? 3 : 0;
    *status = SPZ_NOT_MUSICXML;
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
        if (count >= kinds[i].count && memcmp(text, kinds[i].bytes, kinds[i].count) == 0)
            return kinds[i].sentence;
    if (is_wide(text, count))
        return NULL;
    while (at < count && ascii_is_blank(text[at]))
        at++;
    if (at == count || text[at] == '<')
        return NULL;
    *status = SPZ_NOT_XML;
    for (size_t i = 0; i < count && i < FOREIGN_LOOK; i++)
        if (text[i] == 0)
            return "this is no text; if it is a notation program's own file, the score has to be exported as MusicXML from there";
    return "this is no MusicXML: it does not begin as XML does; if it is a notation program's own file, the score has to be exported as MusicXML from there";
}
