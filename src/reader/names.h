/* names.h - the elements and attributes of MusicXML 4.0 that move a pitch, a time, a bar or the way a musician finds them. Whatever
 * is not named here is passed over with all it holds. */
#ifndef READER_NAMES_H
#define READER_NAMES_H

#define ELEMENT_NAMES(X)                                                                                                          \
    X(SCORE_PARTWISE, "score-partwise") X(SCORE_TIMEWISE, "score-timewise") X(OPUS, "opus") X(OPUS_TITLE, "title")                \
    X(OPUS_LINK, "opus-link") X(OPUS_SCORE, "score")                                                                              \
    X(WORK, "work") X(WORK_TITLE, "work-title") X(MOVEMENT_NUMBER, "movement-number") X(MOVEMENT_TITLE, "movement-title")         \
    X(IDENTIFICATION, "identification") X(CREATOR, "creator") X(MISCELLANEOUS, "miscellaneous")                                   \
    X(MISCELLANEOUS_FIELD, "miscellaneous-field")                   \
    X(CREDIT, "credit") X(CREDIT_TYPE, "credit-type") X(CREDIT_WORDS, "credit-words")                                             \
    X(PART_LIST, "part-list") X(PART_GROUP, "part-group") X(GROUP_NAME, "group-name") X(GROUP_SYMBOL, "group-symbol") X(SCORE_PART, "score-part")                 \
    X(PART_NAME, "part-name") X(PART_NAME_DISPLAY, "part-name-display") X(DISPLAY_TEXT, "display-text")                           \
    X(PART_ABBREVIATION, "part-abbreviation") X(SCORE_INSTRUMENT, "score-instrument") X(INSTRUMENT_NAME, "instrument-name")       \
    X(INSTRUMENT_SOUND, "instrument-sound") X(SOLO, "solo") X(ENSEMBLE, "ensemble") X(MIDI_INSTRUMENT, "midi-instrument")         \
    X(MIDI_PROGRAM, "midi-program")                                                                                               \
    X(PART, "part") X(MEASURE, "measure") X(PRINT, "print") X(ATTRIBUTES, "attributes") X(DIVISIONS, "divisions") X(KEY, "key")                     \
    X(FIFTHS, "fifths") X(TIME, "time") X(BEATS, "beats") X(BEAT_TYPE, "beat-type") X(SENZA_MISURA, "senza-misura")               \
    X(STAVES, "staves") X(TRANSPOSE, "transpose") X(DIATONIC, "diatonic") X(CHROMATIC, "chromatic")                               \
    X(OCTAVE_CHANGE, "octave-change") X(CLEF, "clef") X(SIGN, "sign") X(CLEF_LINE, "line") X(DOUBLE, "double") X(MEASURE_STYLE, "measure-style")                                       \
    X(MEASURE_REPEAT, "measure-repeat") X(BEAT_REPEAT, "beat-repeat") X(SLASH, "slash")                                           \
    X(NOTE, "note") X(GRACE, "grace") X(CUE, "cue") X(CHORD, "chord") X(PITCH, "pitch") X(STEP, "step") X(ALTER, "alter")         \
    X(OCTAVE, "octave") X(UNPITCHED, "unpitched") X(DISPLAY_STEP, "display-step") X(DISPLAY_OCTAVE, "display-octave")             \
    X(REST, "rest") X(DURATION, "duration") X(VALUE, "type") X(TIE, "tie") X(VOICE, "voice") X(STAFF, "staff") X(NOTEHEAD, "notehead")             \
    X(BACKUP, "backup") X(FORWARD, "forward")                                                                                     \
    X(NOTATIONS, "notations") X(TIED, "tied") X(SLUR, "slur") X(FERMATA, "fermata") X(ARPEGGIATE, "arpeggiate")                   \
    X(ARTICULATIONS, "articulations") X(STACCATO, "staccato") X(STACCATISSIMO, "staccatissimo") X(SPICCATO, "spiccato")           \
    X(TENUTO, "tenuto") X(DETACHED_LEGATO, "detached-legato") X(ACCENT, "accent") X(STRONG_ACCENT, "strong-accent") X(ORNAMENTS, "ornaments") X(TREMOLO, "tremolo")                         \
    X(TRILL_MARK, "trill-mark") X(TECHNICAL, "technical") X(HARMONIC, "harmonic") X(UP_BOW, "up-bow") X(DOWN_BOW, "down-bow") X(DYNAMICS, "dynamics")                         \
    X(DYNAMIC_SIGN, "*") X(DIRECTION, "direction") X(DIRECTION_TYPE, "direction-type") X(WORDS, "words")                          \
    X(REHEARSAL, "rehearsal") X(WEDGE, "wedge") X(METRONOME, "metronome") X(BEAT_UNIT, "beat-unit")                               \
    X(BEAT_UNIT_DOT, "beat-unit-dot") X(PER_MINUTE, "per-minute") X(SEGNO, "segno") X(CODA, "coda") X(OFFSET, "offset")           \
    X(SOUND, "sound") X(BARLINE, "barline") X(BAR_STYLE, "bar-style") X(ENDING, "ending") X(REPEAT, "repeat")

typedef enum Element {
    ELEMENT_OTHER = 0,
#define X(id, name) ELEMENT_##id,
    ELEMENT_NAMES(X)
#undef X
    ELEMENT_COUNT
} Element;

#define ATTRIBUTE_NAMES(X)                                                                                                        \
    X(ID, "id") X(TYPE, "type") X(NUMBER, "number") X(NAME, "name") X(TEXT, "text") X(IMPLICIT, "implicit")                       \
    X(DIRECTION, "direction") X(TIMES, "times") X(TEMPO, "tempo") X(DACAPO, "dacapo") X(DALSEGNO, "dalsegno")                     \
    X(SEGNO, "segno") X(CODA, "coda") X(TOCODA, "tocoda") X(FINE, "fine") X(FORWARD_REPEAT, "forward-repeat")                     \
    X(PIZZICATO, "pizzicato") X(TIME_ONLY, "time-only") X(AFTER_JUMP, "after-jump") X(STEAL_PREVIOUS, "steal-time-previous") X(HREF, "href") X(ABOVE, "above") X(PAGE, "page") X(LOCATION, "location") X(NEW_PAGE, "new-page") X(PAGE_NUMBER, "page-number")

typedef enum AttributeName {
#define X(id, name) ATTRIBUTE_##id,
    ATTRIBUTE_NAMES(X)
#undef X
    ATTRIBUTE_COUNT
} AttributeName;
#endif
