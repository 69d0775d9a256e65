/* score_mutator.h - changes a score as music and keeps it a score: notes, bars, parts and marks are moved, copied, changed, taken out. So a
 * fuzzer gets behind the parser: most of what it makes can be read, and what it copies from one part to another is what the ear listens for. */
#ifndef FUZZ_SCORE_MUTATOR_H
#define FUZZ_SCORE_MUTATOR_H
#include <stddef.h>
#include <stdint.h>

/* `data` holds `size` bytes of MusicXML and room for `most`; gives the new size, 0 where it is no well-formed score or grows too large. The same seed makes the same
 * change. */
size_t score_mutate(uint8_t *data, size_t size, size_t most, unsigned seed);
#endif
