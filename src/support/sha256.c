#include "support/sha256.h"
#include <string.h>

/* FIPS 180-4, 4.2.2: the first 32 bits of the fractional parts of the cube roots of the first 64 primes. */
static const uint32_t constants[64] = {
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5, 0xd807aa98, 0x12835b01, 0x243185be,
    0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa,
    0x5cb0a9dc, 0x76f988da, 0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85,
    0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85, 0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3,
    0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070, 0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f,
    0x682e6ff3, 0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
};

static uint32_t turn(uint32_t word, int places)
{
    return word >> places | word << (32 - places);
}

static uint32_t big_endian(const unsigned char *bytes)
{
    return (uint32_t)bytes[0] << 24 | (uint32_t)bytes[1] << 16 | (uint32_t)bytes[2] << 8 | bytes[3];
}

static void spread_block(const unsigned char *block, uint32_t words[64])
{
    for (int i = 0; i < 16; i++)
        words[i] = big_endian(block + i * 4);
    for (int i = 16; i < 64; i++) {
        uint32_t a = words[i - 15], b = words[i - 2];
        words[i] = words[i - 16] + (turn(a, 7) ^ turn(a, 18) ^ a >> 3) + words[i - 7] + (turn(b, 17) ^ turn(b, 19) ^ b >> 10);
    }
}

/* One of the 64 rounds. The eight words of the state change their names from round to round instead of their places. */
static inline void mix_round(uint32_t s[8], int round, uint32_t word)
{
    uint32_t *a = &s[(8 - round) & 7], *d = &s[(11 - round) & 7], *h = &s[(15 - round) & 7];
    uint32_t b = s[(9 - round) & 7], c = s[(10 - round) & 7], e = s[(12 - round) & 7], f = s[(13 - round) & 7], g = s[(14 - round) & 7];
    uint32_t first = *h + (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) + ((e & f) ^ (~e & g)) + word;
    *d += first;
    *h = first + (turn(*a, 2) ^ turn(*a, 13) ^ turn(*a, 22)) + ((*a & b) ^ (*a & c) ^ (b & c));
}

static void mix(uint32_t state[8], const unsigned char *block)
{
    uint32_t words[64], s[8];
    spread_block(block, words);
    memcpy(s, state, sizeof s);
    for (int i = 0; i < 64; i += 8) /* eight at a time: then all places are known when this is compiled */
        for (int round = 0; round < 8; round++)
            mix_round(s, round, constants[i + round] + words[i + round]);
    for (int i = 0; i < 8; i++)
        state[i] += s[i];
}

void sha256_begin(Sha256 *sum)
{
    static const uint32_t start[8] = {0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
    memcpy(sum->state, start, sizeof start);
    sum->length = 0;
}

void sha256_add(Sha256 *sum, const void *data, size_t size)
{
    const unsigned char *bytes = data;
    size_t filled = (size_t)(sum->length % 64);
    sum->length += size;
    while (size) {
        if (filled == 0 && size >= 64) {
            mix(sum->state, bytes);
            bytes += 64;
            size -= 64;
            continue;
        }
        size_t taken = 64 - filled < size ? 64 - filled : size;
        memcpy(sum->block + filled, bytes, taken);
        filled += taken;
        bytes += taken;
        size -= taken;
        if (filled == 64) {
            mix(sum->state, sum->block);
            filled = 0;
        }
    }
}

void sha256_add_text(Sha256 *sum, const char *text)
{
    sha256_add(sum, text, strlen(text) + 1);
}

void sha256_end_bytes(Sha256 *sum, unsigned char bytes[SHA256_BYTES])
{
    static const unsigned char padding[64] = {0x80};
    unsigned char length[8];
    uint64_t bits = sum->length * 8;
    for (int i = 0; i < 8; i++)
        length[i] = (unsigned char)(bits >> (56 - 8 * i));
    size_t filled = (size_t)(sum->length % 64);
    sha256_add(sum, padding, filled < 56 ? 56 - filled : 120 - filled);
    sha256_add(sum, length, sizeof length);
    for (int i = 0; i < SHA256_BYTES; i++)
        bytes[i] = (unsigned char)(sum->state[i / 4] >> (24 - 8 * (i % 4)));
}

void sha256_end(Sha256 *sum, char text[SHA256_TEXT])
{
    static const char digits[] = "0123456789abcdef";
    unsigned char bytes[SHA256_BYTES];
    sha256_end_bytes(sum, bytes);
    for (int i = 0; i < SHA256_BYTES; i++) {
        text[2 * i] = digits[bytes[i] >> 4];
        text[2 * i + 1] = digits[bytes[i] & 15];
    }
    text[SHA256_TEXT - 1] = '\0';
}

void sha256_of(const void *data, size_t size, char text[SHA256_TEXT])
{
    Sha256 sum;
    sha256_begin(&sum);
    sha256_add(&sum, data, size);
    sha256_end(&sum, text);
}
