/* choices.h - a fuzzer's bytes as a row of decisions: what happens, where, with which value. */
#ifndef FUZZ_CHOICES_H
#define FUZZ_CHOICES_H
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct Choices {
    const uint8_t *at;
    size_t left;
} Choices;

/* Any number below `limit`, 0 where no byte is left. Two bytes are taken where one doesn't reach that far. */
size_t choose(Choices *choices, size_t limit);
/* One of a list that ends with NULL. */
const char *choose_text(Choices *choices, const char *const *texts);

/* What holds whatever happens; ends the run with the line of the statement that doesn't. */
#define must(holds) ((holds) ? (void)0 : fuzz_broken(__FILE__, __LINE__, #holds))
_Noreturn void fuzz_broken(const char *file, int line, const char *what);

/* The whole file, to be freed; ends the run where it can't be read. */
char *file_bytes(const char *path, size_t *size);
void file_save(const char *path, const void *bytes, size_t size);
/* The folder that SPEZZATO_FUZZ_PLACE names: it holds small scores. */
const char *fuzz_place(void);
/* Paths of these scores, at most `most`; how many there are. */
enum { FUZZ_PATH = 512 };
size_t fuzz_scores(char (*paths)[FUZZ_PATH], size_t most);
#endif
