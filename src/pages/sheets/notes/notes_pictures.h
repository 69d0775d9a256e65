/* notes_pictures.h - the notes of a citation as an image for the booklet: the first call and its answer, a stave for each who plays there. */
#ifndef PAGES_SHEETS_NOTES_PICTURES_H
#define PAGES_SHEETS_NOTES_PICTURES_H
#include "pages/sheets/notes/notes_sheet.h"

/* Fills pictures[i] (SVG, whole files) for each citation: engraved where an engraver is at hand and can do it, else drawn. Empty where there is nothing
 * to show. `path`: of the score's file. Only SPZ_NO_MEMORY is an error. */
spz_status notes_pictures(const char *path, const spz_note_options *options, const MovementNotes *notes, Buffer *pictures);
/* Width and height by the viewBox, and back to a name for the file: '2-bars-66-71'. */
void notes_picture_size(const Buffer *picture, double *width, double *height);
#endif
