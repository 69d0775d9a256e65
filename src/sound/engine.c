#include "sound/engine.h"
#include "support/message.h"
#include <dlfcn.h>
#include <stdio.h>

/* Where Debian, Fedora and Arch put their General MIDI SoundFont; `default-GM` is whichever the system's owner has chosen. */
static const char *const fonts[] = {
    "/usr/share/sounds/sf3/default-GM.sf3", "/usr/share/sounds/sf2/default-GM.sf2", "/usr/share/sounds/sf2/FluidR3_GM.sf2",
    "/usr/share/sounds/sf2/TimGM6mb.sf2",   "/usr/share/soundfonts/default.sf2",    "/usr/share/soundfonts/FluidR3_GM.sf2",
};
static const char *const ears[] = {"/usr/share/libmysofa/default.sofa", "/usr/share/libmysofa/MIT_KEMAR_normal_pinna.sofa"};

static const char *first_there(const char *const *paths, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        FILE *file = fopen(paths[i], "rb");
        if (file) {
            fclose(file);
            return paths[i];
        }
    }
    return NULL;
}

const char *engine_font(void)
{
    return first_there(fonts, sizeof fonts / sizeof fonts[0]);
}

const char *engine_ears(void)
{
    return first_there(ears, sizeof ears / sizeof ears[0]);
}

static spz_status refuse(const spz_sink *sink, const char *why)
{
    message_send(sink, &(spz_message){.severity = SPZ_ERROR}, "no sound can be made: %.150s. `make sounds` installs it; on Debian: apt install " SOUND_PACKAGES, why);
    return SPZ_CANNOT_OPEN;
}

spz_status engine_open(const char *path, const spz_sink *sink, const SoundEngine **out)
{
    *out = NULL;
    FILE *file = path ? fopen(path, "rb") : NULL;
    if (!file)
        return refuse(sink, "this program was built without its library of sound");
    fclose(file);
    void *library = dlopen(path, RTLD_NOW | RTLD_LOCAL);
    if (!library)
        return refuse(sink, dlerror());
    const SoundEngine *found = dlsym(library, SOUND_ENGINE_NAME);
    if (!found || found->edition != SOUND_EDITION) {
        dlclose(library);
        return refuse(sink, "the library of sound belongs to another version of this program");
    }
    *out = found;
    return SPZ_OK;
}
