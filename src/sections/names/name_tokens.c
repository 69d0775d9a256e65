#include "sections/names/name_tokens.h"
#include "sections/names/writings.h"
#include "support/text/utf8.h"
#include <string.h>

/* One letter of Latin writing without its accents. */
static const struct { uint16_t code; char plain[3]; } plain_letters[] = {
    { 0xAA, "a" }, { 0xBA, "o" }, { 0xC6, "ae" }, { 0xC7, "c" }, { 0xD0, "d" }, { 0xD1, "n" }, { 0xD8, "o" }, { 0xDF, "ss" }, { 0xE6, "ae" },
    { 0xE7, "c" }, { 0xF1, "n" }, { 0xF8, "o" }, { 0x152, "oe" }, { 0x153, "oe" },
    { 0x1E9E, "ss" }, { 0x2160, "i" }, { 0x2161, "ii" }, { 0x2170, "i" }, { 0x2171, "ii" }, { 0xFB01, "fi" }, { 0xFB02, "fl" },
};
static const struct { uint16_t first, last; char plain; } letter_ranges[] = {
    { 0xC0, 0xC5, 'a' }, { 0xC8, 0xCB, 'e' }, { 0xCC, 0xCF, 'i' }, { 0xD2, 0xD6, 'o' }, { 0xD9, 0xDC, 'u' }, { 0xDD, 0xDD, 'y' },
    { 0xE0, 0xE5, 'a' }, { 0xE8, 0xEB, 'e' }, { 0xEC, 0xEF, 'i' }, { 0xF2, 0xF6, 'o' }, { 0xF9, 0xFC, 'u' }, { 0xFD, 0xFF, 'y' },
    { 0x100, 0x105, 'a' }, { 0x106, 0x10D, 'c' }, { 0x10E, 0x111, 'd' }, { 0x112, 0x11B, 'e' }, { 0x11C, 0x123, 'g' }, { 0x128, 0x131, 'i' }, { 0x136, 0x138, 'k' }, { 0x139, 0x142, 'l' },
    { 0x143, 0x148, 'n' }, { 0x14C, 0x151, 'o' }, { 0x154, 0x159, 'r' }, { 0x15A, 0x161, 's' }, { 0x162, 0x167, 't' }, { 0x168, 0x173, 'u' },
    { 0x179, 0x17E, 'z' }, { 0x218, 0x219, 's' }, { 0x21A, 0x21B, 't' },
};

/* Next code point; broken UTF-8 gives its bytes one by one, as if it were Latin-1. */
static unsigned next_code(const char **at)
{
    const char *before = *at;
    uint32_t code = utf8_next(at);
    return *at == before + 1 ? (unsigned char)*before : code;
}

/* Letters, digits or one mark for a code point; "" for what is to be dropped. Marks: ' ' & + , / - ; . ( ) and '*' for the degree
 * sign of an ordinal. */
static void fold_ascii(unsigned code, char out[4])
{
    out[1] = '\0';
    if (code >= 'A' && code <= 'Z')
        out[0] = (char)(code - 'A' + 'a');
    else if ((code >= 'a' && code <= 'z') || (code >= '0' && code <= '9') || (code && strchr("&+,/-;.()", (int)code)))
        out[0] = (char)code;
    else
        out[0] = code == '[' || code == '{' ? '(' : code == ']' || code == '}' ? ')' : ' ';
}

static void fold_code(unsigned code, char out[4])
{
    if (code < 128) {
        fold_ascii(code, out);
        return;
    }
    out[0] = out[1] = '\0';
    for (size_t i = 0; i < sizeof plain_letters / sizeof plain_letters[0]; i++)
        if (plain_letters[i].code == code)
            memcpy(out, plain_letters[i].plain, 3);
    for (size_t i = 0; i < sizeof letter_ranges / sizeof letter_ranges[0] && !out[0]; i++)
        if (code >= letter_ranges[i].first && code <= letter_ranges[i].last)
            out[0] = letter_ranges[i].plain;
    if (code == 0xB0)
        out[0] = '*';
    else if (code >= 0x2010 && code <= 0x2015)
        out[0] = '-';
    else if (code == 0xA0 || code == 0x2018 || code == 0x2019 || code == 0x202F || code == 0xB7)
        out[0] = ' ';
}

/* Takes the next character off `*at`, or a word of another writing; what it is in plain letters. */
static void fold_next(const char **at, char out[WRITING_LONGEST])
{
    const char *word = writing_word(at), *letters = NULL;
    unsigned code = 0;
    if (!word) {
        code = next_code(at);
        letters = writing_letter(code);
    }
    if (word || letters)
        strcpy(out, word ? word : letters);
    else
        fold_code(code, out);
}

void name_fold(const char *name, char *out, size_t size)
{
    const char *at = name;
    size_t length = 0;
    while (*at && length + WRITING_LONGEST < size) {
        char plain[WRITING_LONGEST];
        fold_next(&at, plain);
        for (const char *c = plain; *c; c++)
            if (*c != ' ' || (length && out[length - 1] != ' '))
                out[length++] = *c;
    }
    while (length && out[length - 1] == ' ')
        length--;
    out[length] = '\0';
}

static bool is_digit(char c) { return c >= '0' && c <= '9'; }
static bool is_letter(char c) { return c >= 'a' && c <= 'z'; }

static void read_number(NameToken *token)
{
    static const char *const romans[] = { "i", "ii", "iii", "iv" };
    for (int i = 0; i < 4; i++)
        if (strcmp(token->text, romans[i]) == 0) {
            token->number = i + 1;
            token->roman = true;
        }
    if (!is_digit(token->text[0]))
        return;
    for (const char *c = token->text; *c && token->number < 1000; c++)
        token->number = token->number * 10 + (*c - '0');
}

typedef struct Cutter {
    NameTokens *out;
    NameToken *open;   /* the token that grows, NULL between tokens */
    int depth;         /* brackets */
    char joint;
    bool gap;          /* a blank or mark stood since the last token */
    bool space;        /* a blank stood since the last token */
} Cutter;

static void close_token(Cutter *cutter)
{
    if (cutter->open)
        read_number(cutter->open);
    cutter->open = NULL;
}

static void add_char(Cutter *cutter, char c, size_t start, size_t end)
{
    NameToken *open = cutter->open;
    if (open && is_digit(open->text[0]) != is_digit(c)) {
        close_token(cutter);
        open = NULL;
    }
    if (!open) {
        if (cutter->out->count == TOKEN_LIMIT)
            return;
        bool first = cutter->out->count == 0;
        open = cutter->open = &cutter->out->at[cutter->out->count++];
        *open = (NameToken){ .start = start, .attached = !first && !cutter->gap, .bracketed = cutter->depth > 0 };
        open->joint = cutter->joint == '.' && cutter->space ? '\0' : cutter->joint;
        cutter->joint = '\0';
        cutter->gap = cutter->space = false;
    }
    size_t length = strlen(open->text);
    if (length + 1 < TOKEN_TEXT)
        open->text[length] = c;
    open->end = end;
}

static void add_mark(Cutter *cutter, char c)
{
    if ((c == '.' || c == '*') && cutter->open)
        cutter->open->dot = true;
    close_token(cutter);
    cutter->gap = true;
    if (c == ' ')
        cutter->space = true;
    else if (c == '(' || c == ')')
        cutter->depth += c == '(' ? 1 : cutter->depth > 0 ? -1 : 0;
    else if (c != '*' && !(c == '.' && cutter->joint))
        cutter->joint = c;
}

void name_tokens(const char *name, NameTokens *out)
{
    const char *at = name;
    Cutter cutter = { out, NULL, 0, '\0', false, false };
    out->count = 0;
    while (*at) {
        const char *from = at;
        char plain[WRITING_LONGEST];
        fold_next(&at, plain);
        for (const char *c = plain; *c; c++)
            if (is_letter(*c) || is_digit(*c))
                add_char(&cutter, *c, (size_t)(from - name), (size_t)(at - name));
            else
                add_mark(&cutter, *c);
    }
    close_token(&cutter);
}
