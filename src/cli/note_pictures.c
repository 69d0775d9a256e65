#include "cli/note_pictures.h"
#include "cli/messages.h"
#include "cli/output.h"
#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

const Option option_pictures = {"pictures", 0, "FOLDER", "the notes of each citation too, the first call and its answer, a file each in that folder"};
const Option option_picture_form = {"picture-format", 0, "FORM", "svg, or pdf or eps for print (needs rsvg-convert)"};

static const char *const endings[] = {[SPZ_PICTURE_SVG] = "svg", [SPZ_PICTURE_PDF] = "pdf", [SPZ_PICTURE_EPS] = "eps"};
enum { FORMS = sizeof endings / sizeof *endings, PATH_SIZE = 4096 };

typedef struct Pictures {
    const char *folder;
    spz_picture form;
    int result; /* exit status */
} Pictures;

bool note_picture_form(const Arguments *arguments, spz_picture *form)
{
    const char *said = arguments_value(arguments, &option_picture_form, "svg");
    for (int i = 0; i < FORMS; i++)
        if (!strcmp(said, endings[i])) {
            *form = (spz_picture)i;
            if (spz_picture_possible(*form))
                return true;
            complain_usage(arguments->command, "--picture-format %s: needs rsvg-convert, which is not installed (Debian package librsvg2-bin)", said);
            return false;
        }
    complain_usage(arguments->command, "--picture-format %s: it is svg, pdf or eps", said);
    return false;
}

static spz_status save(void *context, const char *name, spz_document *picture)
{
    Pictures *pictures = context;
    char path[PATH_SIZE];
    int length = snprintf(path, sizeof path, "%s/%s.%s", pictures->folder, name, endings[pictures->form]);
    pictures->result = length > 0 && length < PATH_SIZE ? output_save(picture, path) : EXIT_INPUT;
    spz_document_free(picture);
    return pictures->result ? SPZ_BAD_ARGUMENT : SPZ_OK;
}

int note_pictures_write(const Arguments *arguments, const Readings *readings, const spz_note_options *notes, spz_picture form)
{
    Pictures pictures = {.folder = arguments_value(arguments, &option_pictures, NULL), .form = form};
    struct stat about;
    if (mkdir(pictures.folder, 0777) != 0 && (errno != EEXIST || stat(pictures.folder, &about) != 0 || !S_ISDIR(about.st_mode))) {
        complain_usage(arguments->command, "--pictures %s: the folder can't be made", pictures.folder);
        return EXIT_INPUT;
    }
    spz_status status = spz_sheet_notes_pictures((const spz_reading *const *)readings->at, readings->count, notes, form, save, &pictures);
    if (status && !pictures.result)
        complain_status(pictures.folder, status);
    return pictures.result ? pictures.result : status ? EXIT_INPUT : 0;
}
