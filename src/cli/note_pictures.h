/* note_pictures.h - the notes of each citation as files for the booklet. */
#ifndef CLI_NOTE_PICTURES_H
#define CLI_NOTE_PICTURES_H
#include "cli/commands/command_sheets.h"

extern const Option option_pictures, option_picture_form;

/* What --picture-format says; false after one line. */
bool note_picture_form(const Arguments *arguments, spz_picture *form);
/* The folder of --pictures is made when it isn't there. Exit status. */
int note_pictures_write(const Arguments *arguments, const Readings *readings, const spz_note_options *notes, spz_picture form);
#endif
