#include "cli/places/engraver_place.h"
#include "cli/messages.h"
#include <stdlib.h>
#include <string.h>

/* What is built runs what lies in its own tree; what is installed is compiled without the name of that tree (Makefile). */
#ifdef SPEZZATO_BUILD_DATADIR
static const char fixed[] = SPEZZATO_BUILD_DATADIR "/engraver";
#else
static const char fixed[] = SPEZZATO_DATADIR "/engraver";
#endif

static void tell(const char *folder, const char *cause)
{
    Voice voice = {.most_doubts = 0};
    spz_sink sink = voice_sink(&voice);
    spz_message message = {.severity = SPZ_NOTE, .file = folder, .text = cause};
    sink.say(sink.context, &message);
}

static const char *of_environment(void)
{
    const char *folder = getenv("SPEZZATO_ENGRAVER");
    if (!folder || !*folder || *folder == '/' || strcmp(folder, "none") == 0)
        return folder && *folder ? folder : NULL;
    tell(folder, "SPEZZATO_ENGRAVER is not followed: it has to name its folder from the root (/...)");
    return NULL;
}

const char *engraver_place(const char *given)
{
    const char *folder = given ? given : of_environment();
    if (!folder)
        folder = fixed;
    if (strcmp(folder, "none") == 0)
        return NULL;
    switch (spz_engraver_state(folder)) {
    case SPZ_ENGRAVER_READY: return folder;
    case SPZ_ENGRAVER_ABSENT: tell(folder, "no engraver is installed there; the notes are drawn without it"); break;
    case SPZ_ENGRAVER_WITHOUT_NODE: tell(folder, "the engraver needs node, which is not installed; the notes are drawn without it"); break;
    }
    return NULL;
}
