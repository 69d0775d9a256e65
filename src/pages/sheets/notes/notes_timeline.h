/* notes_timeline.h - a movement for its listeners, as one picture: who plays, and above it what to listen for, each at its time; minutes below. */
#ifndef PAGES_SHEETS_NOTES_TIMELINE_H
#define PAGES_SHEETS_NOTES_TIMELINE_H
#include "pages/sheets/notes/notes_sheet.h"

extern const NotesForm timeline_html, timeline_svg;
#endif
