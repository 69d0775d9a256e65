/* What names of parts say by themselves. The names are facts of the trade: how scores in five languages print them (common
 * practice; forms and abbreviations also in Del Mar, Anatomy of the Orchestra, 1981, and Gould, Behind Bars, 2011: from memory). */
#include "sections/names/name_reading.h"
#include "support/suite.h"
#include <stdio.h>
#include <string.h>

static const char *instrument_word(const NameReading *reading, Instrument instrument)
{
    switch (instrument) {
    case INSTRUMENT_NONE: return "nothing";
    case INSTRUMENT_VIOLIN: return "violin";
    case INSTRUMENT_VIOLA: return "viola";
    case INSTRUMENT_CELLO: return "cello";
    case INSTRUMENT_BASS: return "bass";
    case INSTRUMENT_BASS_LINE: return "bass line";
    case INSTRUMENT_CONTINUO: return "figured bass";
    case INSTRUMENT_STRINGS: return "strings";
    case INSTRUMENT_OTHER_STRING: return "bowed";
    case INSTRUMENT_OTHER: return spz_family_name(reading->family);
    case INSTRUMENT_EITHER_BASS: return "bass or voice";
    case INSTRUMENT_EITHER_VIOLA: return "viola or voice";
    case INSTRUMENT_EITHER_VIOLIN: return "violin or voice";
    }
    return "?";
}

/* 'violin 1+2', 'cello+bass', 'violin 1 line 2 solo orchestra 2'. */
static const char *in_words(const char *name)
{
    static char text[200];
    NameReading r;
    name_read(name, &r);
    char *at = text, *end = text + sizeof text;
    at += snprintf(at, (size_t)(end - at), "%s", instrument_word(&r, r.instrument));
    if (r.also)
        at += snprintf(at, (size_t)(end - at), "+%s", instrument_word(&r, r.also));
    bool counts = r.instrument != INSTRUMENT_OTHER; /* which flute it is doesn't matter */
    if (r.ordinal && counts)
        at += snprintf(at, (size_t)(end - at), r.ordinal2 ? " %d+%d" : " %d", r.ordinal, r.ordinal2);
    if (r.division && counts)
        at += snprintf(at, (size_t)(end - at), " line %d", r.division);
    if (r.lines && counts)
        at += snprintf(at, (size_t)(end - at), " %d lines", r.lines);
    if (r.orchestra)
        at += snprintf(at, (size_t)(end - at), " orchestra %d", r.orchestra);
    if (r.desk)
        at += snprintf(at, (size_t)(end - at), " desk '%.*s'", (int)(r.desk_end - r.desk_start), name + r.desk_start);
    if (r.special)
        at += snprintf(at, (size_t)(end - at), " special");
    if (r.solo)
        at += snprintf(at, (size_t)(end - at), " solo");
    if (r.concertino)
        at += snprintf(at, (size_t)(end - at), " concertino");
    if (r.rest)
        at += snprintf(at, (size_t)(end - at), " rest");
    else if (r.tutti)
        at += snprintf(at, (size_t)(end - at), " tutti");
    if (r.continuo && r.instrument != INSTRUMENT_CONTINUO)
        at += snprintf(at, (size_t)(end - at), " continuo");
    if (r.reduction)
        snprintf(at, (size_t)(end - at), " reduction");
    return text;
}

struct Named {
    const char *name, *means;
};

static void check_names(const struct Named *names, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        const char *got = in_words(names[i].name);
        if (strcmp(got, names[i].means) != 0)
            printf("\n    '%s' is read as '%s', not '%s'", names[i].name, got, names[i].means);
        CU_ASSERT_STRING_EQUAL(got, names[i].means);
    }
}

static void first_and_second_violins_are_told_in_five_languages(void)
{
    static const struct Named names[] = {
        { "Violin I", "violin 1" }, { "Violin 1", "violin 1" }, { "Violins I", "violin 1" }, { "1st Violin", "violin 1" },
        { "1st Violins", "violin 1" }, { "First Violins", "violin 1" }, { "Second Violins", "violin 2" }, { "2nd Violins", "violin 2" },
        { "VIOLIN II", "violin 2" }, { "violins 2", "violin 2" }, { "Violin III", "violin 3" }, { "3rd Violins", "violin 3" },
        { "Vln. I", "violin 1" }, { "Vln 2", "violin 2" }, { "Vlns. II", "violin 2" }, { "Vn. I", "violin 1" }, { "Vn.2", "violin 2" },
        { "Vn1", "violin 1" }, { "Vln2", "violin 2" }, { "V. I", "violin 1" }, { "V.2", "violin 2" }, { "Vl. I", "violin 1" }, { "Vl.2", "violin 2" },
        { "Violine I", "violin 1" }, { "Violinen II", "violin 2" }, { "1. Violine", "violin 1" }, { "2. Violine", "violin 2" },
        { "I. Violine", "violin 1" }, { "II. Violinen", "violin 2" }, { "Erste Violinen", "violin 1" }, { "Zweite Violine", "violin 2" },
        { "Dritte Violine", "violin 3" }, { "1. Geige", "violin 1" }, { "Geigen II", "violin 2" }, { "Viol. I", "violin 1" }, { "Viol. 2", "violin 2" },
        { "Violons I", "violin 1" }, { "Violon 2", "violin 2" }, { "1ers Violons", "violin 1" }, { "1er Violon", "violin 1" }, { "2ds Violons", "violin 2" },
        { "2es Violons", "violin 2" }, { "2mes Violons", "violin 2" }, { "2\u00e8mes Violons", "violin 2" }, { "Premiers Violons", "violin 1" },
        { "Seconds Violons", "violin 2" }, { "Deuxi\u00e8mes violons", "violin 2" }, { "Premier Violon", "violin 1" }, { "Vons 1", "violin 1" }, { "Vons II", "violin 2" },
        { "Violino I", "violin 1" }, { "Violino primo", "violin 1" }, { "Violino secondo", "violin 2" }, { "Violino 1mo", "violin 1" },
        { "Violino 2do", "violin 2" }, { "Violino 1\u00b0", "violin 1" }, { "Violino 2\u00ba", "violin 2" }, { "Violini primi", "violin 1" }, { "Violini secondi", "violin 2" },
        { "Violini I", "violin 1" }, { "Violini II", "violin 2" }, { "Primi Violini", "violin 1" }, { "Violino Imo", "violin 1" }, { "Violino IIdo", "violin 2" }, { "Violino terzo", "violin 3" },
        { "Vni I", "violin 1" }, { "Vni. 2", "violin 2" }, { "Vno. I", "violin 1" }, { "Violines I", "violin 1" }, { "Viol\u00edn 2", "violin 2" },
        { "Violines primeros", "violin 1" }, { "Violines segundos", "violin 2" }, { "Primer viol\u00edn", "violin 1" }, { "Segundo viol\u00edn", "violin 2" }, { "Viol\u00ednes Primeros", "violin 1" },
        { "Violin \u2160", "violin 1" }, { "VIOLINO PRIMO.", "violin 1" }, { "Violin\nII", "violin 2" }, { "  violin   1 ", "violin 1" },
        { "1rs Violons", "violin 1" }, { "2d Violon", "violin 2" }, { "V-ni I", "violin 1" }, { "Violines 1os", "violin 1" }, { "Violins I (8 players)", "violin 1" }, { "Strings (Violin II)", "violin 2" },
        { "Dessus de violon", "violin" }, { "Violin", "violin" }, { "Violins", "violin" }, { "Fiddle", "violin" },
    };
    check_names(names, COUNT(names));
}

static void violas_cellos_and_basses_are_told_in_five_languages(void)
{
    static const struct Named names[] = {
        { "Viola", "viola" }, { "Violas", "viola" }, { "Viole", "viola" }, { "Vla.", "viola" }, { "Va.", "viola" }, { "Vle", "viola" }, { "Bratsche", "viola" },
        { "Bratschen", "viola" }, { "Br.", "viola" }, { "Altos", "viola" }, { "Altviolen", "viola" }, { "Altviola", "viola" }, { "Violetta", "viola" }, { "Viola da braccio", "viola" },
        { "Violen", "viola" }, { "Haute-contre de violon", "viola" }, { "Taille de violon", "viola" }, { "Viola 2", "viola 2" }, { "V-le", "viola" }, { "V-c.", "cello" }, { "V-celli", "cello" }, { "C-b.", "bass" }, { "Viola II", "viola 2" },
        { "Violoncello", "cello" }, { "Violoncelli", "cello" }, { "Violoncelle", "cello" }, { "Violoncelles", "cello" }, { "Violoncell", "cello" }, { "Violonchelo", "cello" },
        { "Violonchelos", "cello" }, { "Cello", "cello" }, { "Cellos", "cello" }, { "'Cello", "cello" }, { "Celli", "cello" }, { "Vc.", "cello" }, { "Vcl.", "cello" }, { "Vlc.", "cello" }, { "Vcs", "cello" },
        { "Vlles", "cello" }, { "V.cello", "cello" }, { "Violoncello 2", "cello 2" }, { "1. Violoncell", "cello 1" }, { "Chelos", "cello" },
        { "Contrabass", "bass" }, { "Double Bass", "bass" }, { "Double Basses", "bass" }, { "Doublebass", "bass" }, { "Double-bass", "bass" }, { "D.B.", "bass" }, { "String Bass", "bass" }, { "Cb.", "bass" }, { "C.B.", "bass" },
        { "Contrabasso", "bass" }, { "Contrabassi", "bass" }, { "Contrabbassi", "bass" }, { "Contrebasse", "bass" }, { "Contrebasses", "bass" }, { "Contrabajo", "bass" }, { "Contrabajos", "bass" },
        { "Kontrabass", "bass" }, { "Kontrab\u00e4sse", "bass" }, { "Kontraba\u00df", "bass" }, { "Contra-Bass", "bass" }, { "Kb.", "bass" }, { "Kontrabaesse", "bass" }, { "Violone", "bass" }, { "Vne", "bass" }, { "Contraba\u00df", "bass" },
        { "Bassi", "bass line" }, { "Basso", "bass or voice" }, { "Bass", "bass or voice" }, { "B\u00e4sse", "bass or voice" }, { "Basse", "bass or voice" }, { "Alto", "viola or voice" }, { "Basses", "bass or voice" },
        { "Basso continuo", "figured bass" }, { "B.c.", "figured bass" }, { "Continuo", "figured bass" }, { "Basse continue", "figured bass" }, { "Generalba\u00df", "figured bass" }, { "Bajo continuo", "figured bass" },
    };
    check_names(names, COUNT(names));
}

static void one_name_may_hold_two_sections(void)
{
    static const struct Named names[] = {
        { "Violini I e II", "violin 1+2" }, { "Violin I & II", "violin 1+2" }, { "Violin I/II", "violin 1+2" }, { "Violin 1, 2", "violin 1+2" },
        { "Violins 1 and 2", "violin 1+2" }, { "Violinen I und II", "violin 1+2" }, { "Violons 1 et 2", "violin 1+2" }, { "Violines I y II", "violin 1+2" },
        { "1st & 2nd Violins", "violin 1+2" }, { "Violin I-II", "violin 1+2" }, { "Violino primo e secondo", "violin 1+2" }, { "2 Violini", "violin 1+2" }, { "Violin I + II", "violin 1+2" },
        { "First and Second Violins", "violin 1+2" }, { "1. und 2. Violine", "violin 1+2" }, { "Violini 1\u00b0 e 2\u00b0", "violin 1+2" }, { "Violine I.II.", "violin 1+2" }, { "1.2. Violine", "violin 1+2" }, { "Violin I\nViolin II", "violin 1+2" }, { "Violin 1 & Violin 2", "violin 1+2" },
        { "I. und II. Violine", "violin 1+2" },
        { "Violoncello e Basso", "cello+bass" }, { "Violoncelli e Bassi", "cello+bass" }, { "Vc. & Kb.", "cello+bass" }, { "Violoncello e Contrabbasso", "cello+bass" },
        { "Cello/Bass", "cello+bass" }, { "Celli, Contrabassi", "cello+bass" }, { "Violoncell und Kontrabass", "cello+bass" }, { "Violoncelle et Contrebasse", "cello+bass" },
        { "Cellos and Basses", "cello+bass" }, { "Basso e Violoncello", "cello+bass" }, { "Vlc. e Cb.", "cello+bass" }, { "Vc. e B.", "cello+bass" }, { "Vcl. u. B.", "cello+bass" }, { "Violoncelli\nContrabassi", "cello+bass" },
    };
    check_names(names, COUNT(names));
}

static void lines_of_a_divided_section_are_not_sections(void)
{
    static const struct Named names[] = {
        { "Violin I.1", "violin 1 line 1" }, { "Violin I.2", "violin 1 line 2" }, { "Violin 1b", "violin 1 line 2" }, { "Violine IIa", "violin 2 line 1" },
        { "Violin I A", "violin 1 line 1" }, { "Violins I A B C", "violin 1 3 lines" }, { "Violin 1 div(2) ", "violin 1 line 2" }, { "Vln. 1 div(3)", "violin 1 line 3" },
        { "Vl. I div.", "violin 1" }, { "Vl. II div. a 2", "violin 2" }, { "Violons I (div. \u00e0 3)", "violin 1" }, { "Violinen I 3fach geteilt", "violin 1" },
        { "Violin I (1)", "violin 1 line 1" }, { "Viola (2nd half)", "viola line 2" }, { "Violoncelli (1. H\u00e4lfte)", "cello line 1" }, { "Violine I 2", "violin 1 line 2" },
        { "Viola div. in 3", "viola" }, { "Violas divisi", "viola" }, { "Violin II gli altri", "violin 2 rest" }, { "Violon I (les autres)", "violin 1 rest" },
    };
    check_names(names, COUNT(names));
}

static void desks_and_soloists_are_told_from_the_section(void)
{
    static const struct Named names[] = {
        { "Violine I (1. Pult)", "violin 1 desk '1. Pult'" }, { "Violine I 1.-2. Pult", "violin 1 desk '1.-2. Pult'" }, { "Violin I, desks 1-2", "violin 1 desk 'desks 1-2'" },
        { "Violin 1 (1st desk)", "violin 1 desk '1st desk'" }, { "1. Pult Violinen II", "violin 2 desk '1. Pult'" }, { "Violons I (1er pupitre)", "violin 1 desk '1er pupitre'" },
        { "Viola 1\u00b0 leggio", "viola desk '1\u00b0 leggio'" }, { "Violin solo", "violin solo" }, { "Solo Violin", "violin solo" }, { "Violino principale", "violin solo" },
        { "Principal Violin", "violin solo" }, { "Pr Vln", "violin solo" }, { "Violon solo", "violin solo" }, { "Soloviolin", "violin special" }, { "Solo-Violine", "violin solo" }, { "Konzertmeister", "violin special" },
        { "Violini soli", "violin solo" }, { "Violoncello solo", "cello solo" }, { "Vc. Solo", "cello solo" }, { "Viola solista", "viola solo" }, { "Solobratsche", "viola special" }, { "Vln. 2 Solo", "violin 2 solo" },
        { "Violin 1 tutti", "violin 1 tutti" }, { "Violino I concertino", "violin 1 concertino" }, { "Violino I ripieno", "violin 1 tutti" }, { "Violino II di concertino", "violin 2 concertino" },
        { "Violin II rip.", "violin 2 tutti" }, { "Violino di spalla", "violin special" }, { "Solo Violin 2", "violin 2 solo" }, { "Violino piccolo", "violin special" }, { "Violoncello piccolo", "cello special" },
    };
    check_names(names, COUNT(names));
}

static void orchestras_and_choirs_have_numbers_of_their_own(void)
{
    static const struct Named names[] = {
        { "Violin I (Orchestra 2)", "violin 1 orchestra 2" }, { "Orch. II Violin I", "violin 1 orchestra 2" }, { "Violino I Coro II", "violin 1 orchestra 2" }, { "II. Orchester Violine I", "violin 1 orchestra 2" },
        { "2. Orchester, 1. Violine", "violin 1 orchestra 2" }, { "Coro I", "voices orchestra 1" }, { "Viola Orch. 1", "viola orchestra 1" }, { "Soprano (Coro 2)", "voices orchestra 2" },
        { "Orchestra I", "nothing orchestra 1" }, { "Orchestre II", "nothing orchestra 2" }, { "Contrabbasso, coro 1", "bass orchestra 1" }, { "Violin 2 (Group 1)", "violin 2 orchestra 1" },
    };
    check_names(names, COUNT(names));
}

static void names_that_sound_like_strings_are_not(void)
{
    static const struct Named names[] = {
        { "Bass Trombone", "brass" }, { "Bass Clarinet", "woodwind" }, { "Contrabassoon", "woodwind" }, { "Kontrafagott", "woodwind" }, { "Bassetthorn", "woodwind" }, { "Basset Horn", "woodwind" }, { "Contrebasson", "woodwind" },
        { "Viola d'amore", "bowed" }, { "Viola da gamba", "bowed" }, { "Viole d\u2019amour", "bowed" }, { "Bass Viol", "bowed" }, { "Contrabass Clarinet", "woodwind" }, { "Clarinetto contrabbasso", "woodwind" }, { "Kontrabasstuba", "brass" },
        { "Contrabass Trombone", "brass" }, { "Bassposaune", "brass" }, { "Alto Flute", "woodwind" }, { "Alto Saxophone", "woodwind" }, { "Alto Trombone", "brass" }, { "Bass Drum", "percussion" }, { "Bass Guitar", "plucked" }, { "Electric Bass", "plucked" },
        { "Bassoon 1", "woodwind" }, { "Basson I", "woodwind" }, { "Fagotti", "woodwind" }, { "English Horn", "woodwind" }, { "Cor anglais", "woodwind" }, { "Corno inglese", "woodwind" }, { "Englischhorn", "woodwind" }, { "Corno di bassetto", "woodwind" },
        { "F Horn 3", "brass" }, { "B basso Horn 1\n[sic, B not Bb]", "brass" }, { "E Horn 4", "brass" }, { "Corni in Fa", "brass" }, { "Cors", "brass" }, { "H\u00f6rner", "brass" }, { "Trompa", "brass" }, { "Trombe", "brass" }, { "Posaunen", "brass" },
        { "Bb Clarinet 1", "woodwind" }, { "B\u266d Clarinet", "woodwind" }, { "Klarinette in A", "woodwind" }, { "Fl\u00f6te", "woodwind" }, { "Flauto piccolo", "woodwind" }, { "Piccolo Trumpet", "brass" }, { "Piccolo", "woodwind" }, { "Baritone Saxophone", "woodwind" }, { "Tenor Horn", "brass" }, { "Ottavino", "woodwind" }, { "Hautbois", "woodwind" }, { "Oboen", "woodwind" }, { "Bass Sarrusophone", "woodwind" },
        { "B, D, E Timpani", "percussion" }, { "Pauken", "percussion" }, { "Timbales", "percussion" }, { "Gran Cassa", "percussion" }, { "Triangolo", "percussion" }, { "Becken", "percussion" }, { "Piatti", "percussion" }, { "Glockenspiel", "percussion" },
        { "Celesta", "keyboard" }, { "Harpsichord", "keyboard continuo" }, { "Cembalo", "keyboard continuo" }, { "Clavecin", "keyboard continuo" }, { "Organo", "keyboard" }, { "Klavier", "keyboard" }, { "Harp", "plucked" }, { "Arpa", "plucked" }, { "Harfe", "plucked" }, { "Theorbo", "plucked continuo" },
        { "Soprano", "voices" }, { "Tenor", "voices" }, { "Bariton", "voices" }, { "Chor", "voices" }, { "Singstimme", "voices" }, { "Piano reduction", "keyboard reduction" }, { "Klavierauszug", "nothing reduction" },
        { "", "nothing" }, { "Staff 1", "nothing 1" }, { "I", "nothing 1" },
    };
    check_names(names, COUNT(names));
}

/* From memory, as the orchestras of these countries print them. */
static void violins_are_told_in_further_languages(void)
{
    static const struct Named names[] = {
        { "Eerste violen", "violin 1" }, { "1e violen", "violin 1" }, { "Violen 2", "violin 2" }, { "Viool II", "violin 2" }, { "Tweede viool", "violin 2" },
        { "Violiner I", "violin 1" }, { "Första violin", "violin 1" }, { "Andra violin", "violin 2" }, { "Violin II", "violin 2" }, { "Fiol 1", "violin 1" },
        { "Fiolin I", "violin 1" }, { "1. fiolin", "violin 1" }, { "Andre fioliner", "violin 2" }, { "Første fiolin", "violin 1" }, { "2. violiner", "violin 2" }, { "Anden violin", "violin 2" },
        { "Viulu I", "violin 1" }, { "I viulu", "violin 1" }, { "2. viulu", "violin 2" }, { "Toinen viulu", "violin 2" }, { "Viiul 1", "violin 1" },
        { "Skrzypce I", "violin 1" }, { "II skrzypce", "violin 2" }, { "Drugie skrzypce", "violin 2" }, { "Pierwsze skrzypce", "violin 1" }, { "Skrz. 2", "violin 2" },
        { "Housle I", "violin 1" }, { "2. housle", "violin 2" }, { "První housle", "violin 1" }, { "Druhé housle", "violin 2" }, { "Husle II", "violin 2" }, { "Violina 1", "violin 1" },
        { "Hegedű I", "violin 1" }, { "I. hegedű", "violin 1" }, { "Második hegedű", "violin 2" }, { "Hegedűk 2", "violin 2" }, { "Vioara II", "violin 2" },
        { "Violinos I", "violin 1" }, { "Primeiros violinos", "violin 1" }, { "Segundo violino", "violin 2" }, { "2ºs violinos", "violin 2" },
        { "Violí I", "violin 1" }, { "Violins segons", "violin 2" }, { "Primers violins", "violin 1" }, { "Keman 1", "violin 1" }, { "I. Keman", "violin 1" }, { "İkinci kemanlar", "violin 2" },
        { "Βιολί I", "violin 1" }, { "Α΄ Βιολιά", "violin 1" }, { "Β' βιολί", "violin 2" }, { "Δεύτερα βιολιά", "violin 2" },
        { "Скрипки I", "violin 1" }, { "Вторые скрипки", "violin 2" }, { "1-я скрипка", "violin 1" }, { "Скр. 2", "violin 2" }, { "Перші скрипки", "violin 1" }, { "Скрипка ІІ", "violin 2" },
        { "第1ヴァイオリン", "violin 1" }, { "第二ヴァイオリン", "violin 2" }, { "バイオリン１", "violin 1" }, { "ヴァイオリン II", "violin 2" },
        { "第一小提琴", "violin 1" }, { "小提琴II", "violin 2" }, { "바이올린 1", "violin 1" }, { "제2바이올린", "violin 2" },
    };
    check_names(names, COUNT(names));
}

static void lower_strings_are_told_in_further_languages(void)
{
    static const struct Named names[] = {
        { "Altviool", "viola" }, { "Altviolen", "viola" }, { "Altviolin", "viola" }, { "Altfiol", "viola" }, { "Bratsj", "viola" }, { "Bratscher", "viola" }, { "Alttoviulut", "viola" }, { "Altówka", "viola" }, { "Altówki", "viola" },
        { "Violy", "viola" }, { "Brácsa", "viola" }, { "Mélyhegedű", "viola" }, { "Violes", "viola" }, { "Viyola", "viola" }, { "Βιόλα", "viola" }, { "Альт", "viola or voice" }, { "Альты", "viola" },
        { "ヴィオラ", "viola" }, { "中提琴", "viola" }, { "비올라", "viola" },
        { "Sellot", "cello" }, { "Violonceller", "cello" }, { "Wiolonczela", "cello" }, { "Wiolonczele", "cello" }, { "Violoncelos", "cello" }, { "Violončelo", "cello" }, { "Gordonka", "cello" }, { "Cselló", "cello" }, { "Violoncels", "cello" },
        { "Viyolonsel", "cello" }, { "Çello", "cello" }, { "Βιολοντσέλο", "cello" }, { "Виолончель", "cello" }, { "Віолончелі", "cello" }, { "チェロ", "cello" }, { "大提琴", "cello" }, { "첼로", "cello" },
        { "Contrabas", "bass" }, { "Contrabassen", "bass" }, { "Kontrabas", "bass" }, { "Kontrabasar", "bass" }, { "Kontrabassot", "bass" }, { "Kontrabasy", "bass" }, { "Nagybőgő", "bass" }, { "Contrabaixo", "bass" }, { "Contrabaixos", "bass" }, { "Kontrbas", "bass" },
        { "Κοντραμπάσο", "bass" }, { "Контрабас", "bass" }, { "Контрабасы", "bass" }, { "コントラバス", "bass" }, { "低音提琴", "bass" }, { "더블베이스", "bass" },
        { "Celli och basar", "cello" }, { "Cello og kontrabass", "cello+bass" }, { "Stråkar", "strings" },
    };
    check_names(names, COUNT(names));
}

static void winds_of_further_languages_are_no_strings(void)
{
    static const struct Named names[] = {
        { "Hoorn 1", "brass" }, { "Käyrätorvi", "brass" }, { "Waltornia I", "brass" }, { "Róg", "brass" }, { "Lesní roh", "brass" }, { "Kürt", "brass" }, { "Korno", "brass" }, { "Валторна", "brass" }, { "Труба II", "brass" }, { "ホルン", "brass" }, { "圆号", "brass" }, { "호른", "brass" }, { "Basun", "brass" }, { "Puzon basowy", "brass" },
        { "Huilu", "woodwind" }, { "Fløyte", "woodwind" }, { "Fletný", "woodwind" }, { "Fuvola", "woodwind" }, { "Флейта", "woodwind" }, { "Гобой", "woodwind" }, { "Кларнет in B", "woodwind" }, { "フルート", "woodwind" }, { "バスクラリネット", "woodwind" }, { "双簧管", "woodwind" }, { "低音大管", "woodwind" }, { "Althobo", "woodwind" }, { "Angolkürt", "woodwind" },
        { "Pukor", "percussion" }, { "Kotły", "percussion" }, { "Üstdob", "percussion" }, { "Литавры", "percussion" }, { "ティンパニ", "percussion" }, { "Hárfa", "plucked" }, { "Арфа", "plucked" }, { "소프라노", "voices" },
    };
    check_names(names, COUNT(names));
}

void suite_sections_names(void);
void suite_sections_names(void)
{
    static const struct Statement statements[] = {
        STATEMENT(first_and_second_violins_are_told_in_five_languages),
        STATEMENT(violas_cellos_and_basses_are_told_in_five_languages),
        STATEMENT(one_name_may_hold_two_sections),
        STATEMENT(lines_of_a_divided_section_are_not_sections),
        STATEMENT(desks_and_soloists_are_told_from_the_section),
        STATEMENT(orchestras_and_choirs_have_numbers_of_their_own),
        STATEMENT(names_that_sound_like_strings_are_not),
        STATEMENT(violins_are_told_in_further_languages),
        STATEMENT(lower_strings_are_told_in_further_languages),
        STATEMENT(winds_of_further_languages_are_no_strings),
    };
    suite_of("names of parts", statements, COUNT(statements));
}
