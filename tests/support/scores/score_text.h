/* score_text.h - MusicXML from small pieces, read for a test. */
#ifndef TESTS_SCORE_TEXT_H
#define TESTS_SCORE_TEXT_H
#include "support/scores/score_lines.h"

/* Pieces of MusicXML. `more` is further content of the note. */
#define PITCH(step, octave) "<pitch><step>" #step "</step><octave>" #octave "</octave></pitch>"
#define PITCH_ALTERED(step, alter, octave) "<pitch><step>" #step "</step><alter>" #alter "</alter><octave>" #octave "</octave></pitch>"
#define LASTING(duration) "<duration>" #duration "</duration>"
#define NOTE(step, octave, duration, more) "<note>" PITCH(step, octave) LASTING(duration) more "</note>"
#define CHORD(step, octave, duration, more) "<note><chord/>" PITCH(step, octave) LASTING(duration) more "</note>"
#define GRACE(step, octave, more) "<note><grace/>" PITCH(step, octave) more "</note>"
#define REST(duration) "<note><rest/>" LASTING(duration) "</note>"
#define BACKUP(duration) "<backup>" LASTING(duration) "</backup>"
#define FORWARD(duration) "<forward>" LASTING(duration) "</forward>"
#define DIVISIONS(n) "<attributes><divisions>" #n "</divisions></attributes>"
#define TIME(beats, type) "<attributes><time><beats>" #beats "</beats><beat-type>" #type "</beat-type></time></attributes>"
#define BAR(number, content) "<measure number=\"" #number "\">" content "</measure>"
#define WORDS(text) "<direction><direction-type><words>" text "</words></direction-type></direction>"
#define DYNAMICS(sign) "<direction><direction-type><dynamics><" #sign "/></dynamics></direction-type></direction>"
#define TIE_FROM "<tie type=\"start\"/>"
#define TIE_TO "<tie type=\"stop\"/>"
#define LISTED(id, name) "<score-part id=\"" #id "\"><part-name>" name "</part-name></score-part>"
#define PART(id, content) "<part id=\"" #id "\">" content "</part>"
#define SCORE(list, parts) "<score-partwise><part-list>" list "</part-list>" parts "</score-partwise>"
/* One part, named Viola. */
#define PIECE(bars) SCORE(LISTED(P1, "Viola"), PART(P1, bars))

/* Reads the text; the doubts and errors that went to the sink are kept for heard_message. NULL when it was refused. */
spz_score *score_of(const char *xml);
spz_score *score_of_bytes(const void *bytes, size_t size);
spz_status last_status(void);
const char *last_message(void); /* of the last reading: the last doubt or error; "" */
long last_line(void);
int message_count(void);

/* The first movement of score_of; fails the test when it was refused. The score lives until the next call. */
const Movement *movement_of(const char *xml);
#endif
