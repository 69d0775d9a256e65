#include "sound/rendering/sound_file.h"
#include "support/array.h"
#include "support/message.h"
#include <sndfile.h>
#include <string.h>

static SF_INFO info_of(spz_sound_form form)
{
    static const int formats[SPZ_SOUND_FORM_COUNT] = {SF_FORMAT_WAV | SF_FORMAT_PCM_24, SF_FORMAT_FLAC | SF_FORMAT_PCM_24, SF_FORMAT_OGG | SF_FORMAT_OPUS};
    return (SF_INFO){.samplerate = SOUND_RATE, .channels = 2, .format = formats[form]};
}

bool sound_file_writes(spz_sound_form form)
{
    SF_INFO info = info_of(form);
    return sf_format_check(&info);
}

/* A file that is a piece of memory. */
typedef struct Memory {
    ARRAY(char) bytes;
    size_t at;
    bool failed;
} Memory;

static sf_count_t memory_length(void *data)
{
    return (sf_count_t)((Memory *)data)->bytes.count;
}

static sf_count_t memory_seek(sf_count_t offset, int whence, void *data)
{
    Memory *memory = data;
    sf_count_t from = whence == SEEK_SET ? 0 : whence == SEEK_CUR ? (sf_count_t)memory->at : (sf_count_t)memory->bytes.count;
    if (from + offset < 0)
        return -1;
    memory->at = (size_t)(from + offset);
    return (sf_count_t)memory->at;
}

static sf_count_t memory_read(void *out, sf_count_t count, void *data)
{
    Memory *memory = data;
    size_t there = memory->at < memory->bytes.count ? memory->bytes.count - memory->at : 0;
    size_t now = (size_t)count < there ? (size_t)count : there;
    memcpy(out, memory->bytes.at + memory->at, now);
    memory->at += now;
    return (sf_count_t)now;
}

static sf_count_t memory_write(const void *from, sf_count_t count, void *data)
{
    Memory *memory = data;
    size_t end = memory->at + (size_t)count;
    while (memory->bytes.capacity < end && !memory->failed)
        memory->failed = !array_grow((void **)&memory->bytes.at, &memory->bytes.capacity, 1);
    if (memory->failed)
        return 0;
    if (memory->at > memory->bytes.count)
        memset(memory->bytes.at + memory->bytes.count, 0, memory->at - memory->bytes.count);
    memcpy(memory->bytes.at + memory->at, from, (size_t)count);
    memory->at = end;
    memory->bytes.count = end > memory->bytes.count ? end : memory->bytes.count;
    return count;
}

static sf_count_t memory_tell(void *data)
{
    return (sf_count_t)((Memory *)data)->at;
}

spz_status sound_file_make(const float *frames, size_t count, spz_sound_form form, const spz_sink *sink, char **bytes, size_t *size)
{
    SF_VIRTUAL_IO doors = {memory_length, memory_seek, memory_read, memory_write, memory_tell};
    SF_INFO info = info_of(form);
    Memory memory = {0};
    *bytes = NULL;
    SNDFILE *file = sf_open_virtual(&doors, SFM_WRITE, &info, &memory);
    sf_count_t written = 0;
    if (file) {
        sf_command(file, SFC_SET_CLIPPING, NULL, SF_TRUE);
        written = sf_writef_float(file, frames, (sf_count_t)count);
        sf_close(file);
    }
    if (!file || written != (sf_count_t)count || memory.failed) {
        spz_status status = memory.failed ? SPZ_NO_MEMORY : SPZ_CANNOT_WRITE;
        message_send(sink, &(spz_message){.severity = SPZ_ERROR}, "a sound file of this form (%s) can't be made: %s", spz_sound_form_name(form), sf_strerror(NULL));
        array_free(&memory.bytes);
        return status;
    }
    *bytes = memory.bytes.at;
    *size = memory.bytes.count;
    return SPZ_OK;
}
