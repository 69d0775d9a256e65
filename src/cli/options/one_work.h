/* one_work.h - the verdicts of the movements, kept until one seating for all of them is asked for. */
#ifndef CLI_ONE_WORK_H
#define CLI_ONE_WORK_H
#include "spezzato/spezzato.h"

typedef struct Verdicts {
    spz_verdict **at;
    size_t count, capacity;
    spz_verdict *work; /* one for all; NULL until judged */
} Verdicts;

/* Takes the verdicts out of a reading that has been reported. */
spz_status verdicts_take(Verdicts *verdicts, spz_reading *reading);
spz_status verdicts_judge(Verdicts *verdicts, const spz_settings *settings, const spz_sink *sink);
void verdicts_free(Verdicts *verdicts);
#endif
