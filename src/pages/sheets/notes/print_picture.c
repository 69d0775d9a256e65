#include "pages/sheets/notes/print_picture.h"
#include "support/program.h"

enum { PRINT_MOST = 32 << 20 };
static const char converter[] = "rsvg-convert";

bool spz_picture_possible(spz_picture form)
{
    char path[PROGRAM_PATH];
    return form == SPZ_PICTURE_SVG || ((form == SPZ_PICTURE_PDF || form == SPZ_PICTURE_EPS) && program_find(converter, path));
}

static void read_all(FILE *file, Buffer *out)
{
    char bytes[8192];
    for (size_t got; (got = fread(bytes, 1, sizeof bytes, file)) > 0 && out->length < PRINT_MOST;)
        buffer_add(out, bytes, got);
}

spz_status print_picture(spz_picture form, Buffer *picture)
{
    char path[PROGRAM_PATH], option[] = "--format", svg_form[8];
    char *const words[] = {path, option, svg_form, NULL};
    FILE *in = tmpfile(), *out = tmpfile();
    snprintf(svg_form, sizeof svg_form, "%s", form == SPZ_PICTURE_PDF ? "pdf" : "eps");
    bool good = in && out && program_find(converter, path) && picture->length && fwrite(picture->text, 1, picture->length, in) == picture->length &&
                fflush(in) == 0 && fseek(in, 0, SEEK_SET) == 0 && program_run(words, in, out) && fseek(out, 0, SEEK_SET) == 0;
    if (good) {
        buffer_clear(picture);
        read_all(out, picture);
    }
    if (in)
        fclose(in);
    if (out)
        fclose(out);
    return picture->failed ? SPZ_NO_MEMORY : good && picture->length ? SPZ_OK : SPZ_BAD_ARGUMENT;
}
