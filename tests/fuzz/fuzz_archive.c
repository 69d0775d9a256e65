/* Any bytes as the packed score of an archive that is otherwise sound, and as a whole archive. The first byte chooses. */
#include "spezzato/score.h"
#include "support/scores/archive_text.h"
#include <stdint.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    ArchiveText archive = {0};
    spz_score *score = NULL;
    if (size == 0)
        return 0;
    if (data[0] == 'P') { /* PK.. */
        spz_score_read_memory(data, size, "fuzz", NULL, &score);
    } else if (data[0] & 1) {
        archive_text_add_string(&archive, "META-INF/container.xml", CONTAINER("a.xml"));
        archive_text_add(&archive, "a.xml", data + 1, size - 1, true);
        archive_text_close(&archive);
        spz_score_read_memory(archive.bytes, archive.size, "fuzz", NULL, &score);
    } else {
        archive_text_add(&archive, "META-INF/container.xml", data + 1, size - 1, false);
        archive_text_add_string(&archive, "a.xml", "<score-partwise/>");
        archive_text_close(&archive);
        spz_score_read_memory(archive.bytes, archive.size, "fuzz", NULL, &score);
    }
    spz_score_free(score);
    archive_text_free(&archive);
    return 0;
}
