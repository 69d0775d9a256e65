/* Linked to the program, this makes it a program whose host has chosen a language before anything else runs, as a client of the library may. The
 * language is SPEZZATO_HOST_LOCALE; whoever asks for one that can't be had, or that writes decimals with a point, is told so at once. */
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

__attribute__((constructor)) static void choose_language(void)
{
    const char *wanted = getenv("SPEZZATO_HOST_LOCALE");
    char number[16];
    if (!wanted || !setlocale(LC_ALL, wanted)) {
        fprintf(stderr, "the language %s can't be had\n", wanted ? wanted : "of the host");
        exit(99);
    }
    snprintf(number, sizeof number, "%.1f", 84.3);
    if (strcmp(number, "84,3") != 0 || strtod("84.3", NULL) != 84) {
        fprintf(stderr, "%s writes decimals with a point\n", wanted);
        exit(99);
    }
}
