/* stage_words.h - what stands on and under a plan of the stage. */
#ifndef WORDING_STAGE_WORDS_H
#define WORDING_STAGE_WORDS_H
#include "spezzato/stage.h"
#include "wording/phrase.h"

/* 'stage 18 m wide, 11 m deep for the strings, which take 12.3 m by 9.2 m' */
void say_stage_size(Buffer *out, spz_language language, const spz_plan *plan);
/* The least stage that would hold them, and what had to give way on this one. */
void say_stage_room(Buffer *out, spz_language language, const spz_plan *plan);
/* 'first violins 14, second violins 12, ...' */
void say_stage_players(Buffer *out, spz_language language, const spz_plan *plan);
/* 'first violins to second violins: front desks 4.1 m (12 ms), ...'; nothing where one of them isn't there. */
void say_stage_distance(Buffer *out, spz_language language, const spz_plan *plan, const spz_section pair[2]);
/* 'degrees between them as heard in the hall: front 56, ...' */
void say_stage_hearing(Buffer *out, spz_language language, const spz_plan *plan, const spz_section pair[2]);
/* What a place of the audience hears of a pair: degrees, microseconds between the ears, times what can be told apart. */
void say_stage_heard(Buffer *out, spz_language language, const spz_plan *plan, const spz_section pair[2], size_t place);
/* '8.4 m, 24 ms', beside the way between the two. */
void say_stage_way(Buffer *out, spz_language language, const spz_distance *way);
/* 'Vn I - Vn II', over what is heard of the two. */
void say_stage_pair(Buffer *out, spz_language language, const spz_section pair[2]);
const char *words_listener(spz_language language, size_t place);     /* 'front', 'left side' */
const char *words_desk_mark(spz_language language, spz_section section); /* 'I', 'Va': before the number of a desk in the letters of a terminal */
#endif
