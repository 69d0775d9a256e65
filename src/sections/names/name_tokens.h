/* name_tokens.h - the name of a part cut into words and numbers, without case and accents: 'Violoncelles I/II' and
 * 'VIOLONCELLES 1 / 2' give the same. */
#ifndef SECTIONS_NAME_TOKENS_H
#define SECTIONS_NAME_TOKENS_H
#include <stdbool.h>
#include <stddef.h>

enum { TOKEN_LIMIT = 24, TOKEN_TEXT = 24 };

typedef struct NameToken {
    char text[TOKEN_TEXT]; /* folded; longer words are cut */
    size_t start, end;     /* bytes of the name */
    int number;            /* digits or a Roman numeral up to IV; 0 for none */
    bool roman;
    bool attached;         /* nothing stands between it and the token before */
    bool bracketed;        /* inside ( ) or [ ] */
    char joint;            /* '&', '+', ',', '/', '-', ';' or '.' where one stands before it, else 0; '.' only without a space */
    bool dot;              /* a point or degree sign follows directly: '1.' */
    bool used;             /* some rule has taken it */
} NameToken;

typedef struct NameTokens {
    NameToken at[TOKEN_LIMIT];
    size_t count;
} NameTokens;

/* Words past the limit are left out. */
void name_tokens(const char *name, NameTokens *out);

/* Folded copy: lower case, no accents, blanks and line ends as single spaces, none at the ends. */
void name_fold(const char *name, char *out, size_t size);
#endif
