/* sha256.h - SHA-256 (FIPS 180-4): names a file by its content. */
#ifndef SUPPORT_SHA256_H
#define SUPPORT_SHA256_H
#include <stddef.h>
#include <stdint.h>

typedef struct Sha256 {
    uint32_t state[8];
    uint64_t length; /* bytes so far */
    unsigned char block[64];
} Sha256;

enum { SHA256_BYTES = 32, SHA256_TEXT = 2 * SHA256_BYTES + 1 };
void sha256_begin(Sha256 *sum);
void sha256_add(Sha256 *sum, const void *data, size_t size);
void sha256_add_text(Sha256 *sum, const char *text); /* its closing zero too, so that 'ab' 'c' is not 'a' 'bc' */
void sha256_end_bytes(Sha256 *sum, unsigned char bytes[SHA256_BYTES]);
void sha256_end(Sha256 *sum, char text[SHA256_TEXT]); /* in hexadecimal */
void sha256_of(const void *data, size_t size, char text[SHA256_TEXT]); /* all in one */
#endif
