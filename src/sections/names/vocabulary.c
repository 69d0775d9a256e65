/* Sources: the names of instruments in the five languages as the scores of the trade print them (common practice). */
#include "sections/names/vocabulary_tables.h"
#include <string.h>

static const Word words[] = {
    /* violins */
    VIOLIN("violin"), VIOLINS("violins"), VIOLINS("violini"), VIOLIN("violino"), VIOLIN("violine"), VIOLINS("violinen"),
    VIOLINS("violines"), VIOLINS("violinos"), VIOLIN("violon"), VIOLINS("violons"), VIOLIN("vn"), VIOLINS("vns"), VIOLIN("vno"),
    VIOLINS("vni"), VIOLINS("vnos"), VIOLIN("vln"), VIOLINS("vlns"), VIOLIN("vlno"), VIOLINS("vlni"), VIOLIN("vl"),
    VIOLINS("vls"), VIOLIN("viol"), VIOLIN("vio"), VIOLIN("v"), VIOLINS("vv"), VIOLIN("von"), VIOLINS("vons"), VIOLIN("geige"),
    VIOLINS("geigen"), VIOLIN("geig"), VIOLIN("gg"), VIOLIN("fiddle"), VIOLINS("fiddles"), VIOLINS("vlon"),
    VIOLINS("v ni"), VIOLIN("v no"), VIOLIN("v n"), VIOLIN("v l"), VIOLIN("dessus de violon"), VIOLINS("dessus de violons"), VIOLIN("violi"), EITHER("dessus", VIOLIN),
    { "soloviolin*", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false }, { "sologeige*", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false },
    { "violino piccolo", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false },
    { "violini piccoli", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, true },
    { "violin piccolo", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false },
    { "piccolo violin*", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false },
    { "konzertmeister*", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false },
    { "concertmaster*", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false },
    { "concertino de violin", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false },
    { "violino di spalla", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false }, { "primgeige*", WORD_STRING, INSTRUMENT_VIOLIN, true },
    /* violas */
    VIOLA("viola"), VIOLAS("violas"), VIOLAS("viole"), VIOLAS("violen"), VIOLA("va"), VIOLAS("vas"), VIOLA("vla"),
    VIOLAS("vlas"), VIOLAS("vle"), VIOLA("bratsche"), VIOLAS("bratschen"), VIOLA("br"), VIOLA("bra"), VIOLA("brat"),
    VIOLA("bratsch"), VIOLA("v la"), VIOLAS("v le"), VIOLA("v a"), VIOLA("altviola"), VIOLAS("altviolen"), VIOLAS("altviolas"), VIOLA("violetta"), VIOLAS("violette"),
    VIOLA("viola da braccio"), VIOLAS("viole da braccio"), VIOLA("tenor violin"), VIOLA("tenore viola"), VIOLAS("altos"),
    VIOLA("altgeige*"), VIOLA("tenorgeige*"), VIOLA("alto viola"), VIOLAS("alti viole"), VIOLA("haute contre de violon"),
    VIOLA("taille de violon"), VIOLA("quinte de violon"), VIOLA("alto de violon"), EITHER("alto", VIOLA), EITHER("alti", VIOLA),
    EITHER("alt", VIOLA), EITHER("taille*", VIOLA), EITHER("haute contre*", VIOLA), EITHER("quinte*", VIOLA),
    { "soloviola", WORD_SOLO_KIND, INSTRUMENT_VIOLA, false }, { "solobratsche", WORD_SOLO_KIND, INSTRUMENT_VIOLA, false },
    /* cellos */
    CELLO("violoncello"), CELLOS("violoncellos"), CELLOS("violoncelli"), CELLO("violoncelle"), CELLOS("violoncelles"),
    CELLO("violonchelo"), CELLOS("violonchelos"), CELLO("violoncell"), CELLO("violoncel*"), CELLO("violonchel*"),
    CELLO("cello"), CELLOS("cellos"), CELLOS("celli"), CELLO("chelo"), CELLOS("chelos"), CELLO("vc"), CELLOS("vcs"),
    CELLOS("vcelli"), CELLO("vcello"), CELLOS("vcellos"), CELLO("vcl"), CELLOS("vcls"), CELLO("vlc"), CELLOS("vlcs"),
    CELLO("vlcl"), CELLO("vcll"), CELLO("vlle"), CELLOS("vlles"), CELLO("velle"), CELLO("vclo"), CELLO("vello"),
    CELLO("v c"), CELLO("v lle"), CELLO("v cello"), CELLOS("v celli"), CELLO("violonc"), CELLO("violcello"), CELLO("basse de violon"),
    CELLOS("basses de violon"), { "violoncello piccolo", WORD_SOLO_KIND, INSTRUMENT_CELLO, false },
    { "solocello", WORD_SOLO_KIND, INSTRUMENT_CELLO, false }, { "soloviolonc*", WORD_SOLO_KIND, INSTRUMENT_CELLO, false },
    /* basses */
    BASS("contrabass"), BASS("contrabasses"), BASS("contrabasso"), BASS("contrabassi"), BASS("contrabbasso"),
    BASS("contrabbassi"), BASS("contrebasse"), BASS("contrebasses"), BASS("contrabajo"), BASS("contrabajos"),
    BASS("kontrabass"), BASS("kontrabasse"), BASS("kontrabassen"), BASS("kontrabaesse"), BASS("kontrabasso"),
    BASS("kontrabassi"), BASS("contrabaesse"), BASS("contrabasse"), BASS("doublebass"), BASS("doublebasses"),
    BASS("double bass"), BASS("double basses"), BASS("string bass"), BASS("string basses"), BASS("upright bass"),
    BASS("contra bass"), BASS("contra basso"), BASS("contra bassi"), BASS("contre basse"), BASS("contre basses"),
    BASS("bass fiddle"), BASS("cb"), BASS("cbs"), BASS("kb"), BASS("kbs"), BASS("db"), BASS("dbs"), BASS("d bass"), BASS("d b"),
    BASS("c b"), BASS("k b"), BASS("cbss"), BASS("ctb"), BASS("cbass"), BASS("kbass"), BASS("cbasso"), BASS("ctrb"),
    BASS("contrab"), BASS("kontrab"), BASS("violone"), BASS("violoni"), BASS("violones"), BASS("vne"), BASS("violone grosso"),
    BASS("octobass*"), BASS("bassgeige*"), BASS("streichbass*"), BASS("dbl bass"),
    { "solokontrabass", WORD_SOLO_KIND, INSTRUMENT_BASS, false }, BASS_LINE("bassi"), BASS_LINE("baesse"),
    BASS_LINE("tutti bassi"), BASS_LINE("tutti i bassi"), BASS_LINE("bassi tutti"), BASS_LINE("basso ripieno"),
    BASS_LINE("fondamento"), EITHER("bass", BASS), EITHER("basse", BASS), EITHER("basses", BASS), EITHER("basso", BASS),
    EITHER("bassen", BASS), EITHER("bajo", BASS), EITHER("bajos", BASS), EITHER("bs", BASS), CONTINUO("continuo"),
    CONTINUO("basso continuo"), CONTINUO("bassi continui"), CONTINUO("basse continue"), CONTINUO("bajo continuo"),
    CONTINUO("generalbass*"), CONTINUO("general bass"), CONTINUO("thoroughbass"), CONTINUO("thorough bass"),
    CONTINUO("figured bass"), CONTINUO("bc"), CONTINUO("b c"), CONTINUO("cont"), CONTINUO("bezifferter bass"),
    CONTINUO("basse chiffree"), CONTINUO("basso cont"), CONTINUO("contin"),
    /* strings without saying which, and those of no section */
    STRINGS("strings"), STRINGS("streicher"), STRINGS("archi"), STRINGS("cordes"), STRINGS("cuerdas"), STRINGS("str"),
    STRINGS("string orchestra"), STRINGS("streichorchester"), STRINGS("string ensemble"), STRINGS("string section"),
    STRINGS("cuerda"), STRINGS("arcos"), STRINGS("string choir"), STRINGS("synth strings"), STRINGS("string"),
    STRINGS("string quartet"), STRINGS("streichquartett"), STRINGS("quartetto d archi"), BOWED("viola d amore"),
    BOWED("viole d amore"), BOWED("viola d amour"), BOWED("viole d amour"), BOWED("viola damore"), BOWED("viola de amor"),
    BOWED("viola pomposa"), BOWED("viola da gamba"), BOWED("viole da gamba"), BOWED("viola di gamba"), BOWED("viole di gamba"),
    BOWED("viole de gambe"), BOWED("violes de gambe"), BOWED("viola de gamba"), BOWED("violas da gamba"), BOWED("gamba"),
    BOWED("gamben"), BOWED("gambe"), BOWED("viola bastarda"), BOWED("treble viol*"), BOWED("tenor viol"), BOWED("tenor viols"),
    BOWED("bass viol"), BOWED("bass viols"), BOWED("alto viol"), BOWED("alto viols"), BOWED("viols"), BOWED("baryton"),
    BOWED("arpeggione"), BOWED("lirone"), BOWED("basse de viole"), BOWED("dessus de viole"), BOWED("pardessus*"),
    BOWED("violotta"), BOWED("violetta marina"), BOWED("stroh violin*"), BOWED("stroviol*"), BOWED("hardanger fiddle"),
    BOWED("hurdy gurdy"), BOWED("drehleier"), BOWED("vielle"), BOWED("nyckelharpa"), BOWED("erhu"), BOWED("rebec"),
    BOWED("tromba marina"), BOWED("violino tromba"),
    /* woodwind */
    WIND("flute*"), WIND("flaut*"), WIND("flote*"), WIND("floete*"), WIND("flauta*"), WIND("fl"), WIND("fls"), WIND("flt"),
    WIND("fltn"), WIND("flutes a bec"), REGISTER("piccolo*"), REGISTER("picc"), REGISTER("pic"), REGISTER("ottavin*"), WIND("flautin*"),
    WIND("kleine flote"), WIND("kl fl"), WIND("recorder*"), WIND("blockflo*"), WIND("traverso*"), WIND("querflo*"),
    WIND("flageolet*"), WIND("fife"), WIND("flutina"), WIND("oboe*"), WIND("oboi"), WIND("ob"), WIND("obs"), WIND("hautb*"),
    WIND("hoboe*"), WIND("hobo*"), WIND("hb"), WIND("htb"), SURELY("english", WOODWIND), SURELY("englisch*", WOODWIND),
    SURELY("engl", WOODWIND), SURELY("eng hn", WOODWIND), SURELY("e hn", WOODWIND), SURELY("anglais", WOODWIND),
    SURELY("ingles*", WOODWIND), SURELY("ca", WOODWIND), SURELY("e h", WOODWIND), SURELY("c ing", WOODWIND),
    SURELY("c a", WOODWIND), SURELY("eh", WOODWIND), WIND("clarinet*"), WIND("clarinett*"), WIND("klarinet*"),
    WIND("clarinete*"), WIND("cl"), WIND("cls"), WIND("clar"), WIND("klar"), WIND("kl"), WIND("clarone"),
    SURELY("basset*", WOODWIND), SURELY("di bassetto", WOODWIND), WIND("requinto"), WIND("chalumeau*"), WIND("bassoon*"),
    WIND("basson"), WIND("bassons"), WIND("fagot*"), WIND("fag"), WIND("fagg"), WIND("fg"), WIND("bn"), WIND("bns"),
    WIND("bsn"), WIND("bsns"), WIND("bon"), WIND("bons"), WIND("fgt"), WIND("contrabassoon*"), WIND("contrebasson*"),
    WIND("contrabasson*"), WIND("contrafag*"), WIND("kontrafag*"), WIND("controfag*"), WIND("double bassoon*"), WIND("cbsn"),
    WIND("cfag"), WIND("kfag"), WIND("cfg"), WIND("kfg"), WIND("dulcian*"), WIND("sarrus*"), WIND("heckelphon*"), WIND("sax*"),
    WIND("altsax*"), WIND("tenorsax*"), WIND("barytonsax*"), WIND("shawm*"), WIND("schalmei*"), WIND("crumhorn*"),
    WIND("krummhorn*"), WIND("woodwind*"), WIND("holzbl*"), WIND("legni"), WIND("bois"), WIND("winds"), WIND("bassklar*"),
    WIND("bassflo*"), WIND("altflo*"), WIND("harmonica"), WIND("bagpipe*"), WIND("oboen"), WIND("maderas"),
    WIND("contrabass flute"), WIND("bcl"),
    /* brass */
    BRASS("horn*"), BRASS("hoerner*"), BRASS("corno"), BRASS("corni"), BRASS("cor"), BRASS("cors"), BRASS("corn"),
    BRASS("trompa"), BRASS("trompas"), BRASS("hn"), BRASS("hns"), BRASS("hrn"), BRASS("hr"), BRASS("waldhorn*"),
    BRASS("ventilhorn*"), BRASS("corni da caccia"), BRASS("trumpet*"), BRASS("trompet*"), BRASS("trompete*"), BRASS("tromba"),
    BRASS("trombe"), BRASS("trombette"), BRASS("tpt"), BRASS("tpts"), BRASS("trp"), BRASS("trpt"), BRASS("tr"), BRASS("trb"),
    BRASS("tbe"), BRASS("clarin"), BRASS("clarini"), BRASS("clarino"), BRASS("clarinen"), BRASS("clarinos"), BRASS("cornet*"),
    BRASS("kornett*"), BRASS("zink*"), BRASS("cornetto"), BRASS("bugle*"), BRASS("flugel*"), BRASS("fluegel horn"),
    BRASS("trombon*"), BRASS("posaun*"), BRASS("altposaun*"), BRASS("tenorposaun*"), BRASS("bassposaun*"),
    BRASS("kontrabassposaun*"), BRASS("tbn"), BRASS("tbns"), BRASS("trbn"), BRASS("trbne"), BRASS("trbni"), BRASS("pos"),
    BRASS("sackbut*"), BRASS("bass trumpet"), BRASS("basstrompet*"), BRASS("tromboni"), BRASS("cimbasso"), BRASS("tuba*"),
    BRASS("tube"), BRASS("tuben"), BRASS("tba"), BRASS("tb"), BRASS("basstuba*"), BRASS("kontrabasstuba*"), BRASS("wagner*"),
    BRASS("tenortuba*"), BRASS("ophicl*"), BRASS("ofic*"), BRASS("ophik*"), BRASS("serpent*"), BRASS("serpentone"),
    BRASS("euphon*"), BRASS("baritone horn"), BRASS("tenorhorn*"), BRASS("brass*"), BRASS("blechbl*"), BRASS("ottoni"),
    BRASS("cuivres"), BRASS("metales"), BRASS("saxhorn*"), BRASS("sousaphon*"),
    /* percussion */
    DRUM("timpan*"), DRUM("timp"), DRUM("pauk*"), DRUM("pk"), DRUM("timbal*"), DRUM("tp"), DRUM("kettledrum*"), DRUM("drum*"),
    DRUM("side drum"), DRUM("snare*"), DRUM("tambur*"), DRUM("tambour*"), DRUM("tamb"), DRUM("trommel*"),
    DRUM("kleine trommel"), DRUM("kl trommel"), DRUM("gr trommel"), DRUM("kl tr"), DRUM("gr tr"), DRUM("grosse trommel"), DRUM("caisse*"), DRUM("grosse caisse"), DRUM("cassa"), DRUM("gran cassa"),
    DRUM("grancassa"), DRUM("bombo"), DRUM("caja"), DRUM("bass drum*"), DRUM("ruhrtrommel"), DRUM("tenor drum*"),
    DRUM("cymbal*"), DRUM("becken"), DRUM("piatt*"), DRUM("platill*"), DRUM("cinell*"), DRUM("platos"), DRUM("cym"),
    DRUM("triang*"), DRUM("tri"), DRUM("trgl"), DRUM("tamtam*"), DRUM("tam tam"), DRUM("gong*"), DRUM("perc*"), DRUM("schlag*"),
    DRUM("percuss*"), DRUM("batt*"), DRUM("glockensp*"), DRUM("campan*"), DRUM("carillon"), DRUM("glocken"),
    DRUM("jeu de timbres"), DRUM("xylo*"), DRUM("silof*"), DRUM("xilof*"), DRUM("marimba*"), DRUM("vibra*"), DRUM("crotal*"),
    DRUM("castan*"), DRUM("kastag*"), DRUM("castag*"), DRUM("wood block*"), DRUM("woodblock*"), DRUM("temple block*"),
    DRUM("bells"), DRUM("chimes"), DRUM("tubular bells"), DRUM("rohrenglo*"), DRUM("whip"), DRUM("peitsche"), DRUM("ratchet"),
    DRUM("ratsche"), DRUM("wind machine"), DRUM("windmaschine"), DRUM("anvil"), DRUM("amboss"), DRUM("pandero"),
    DRUM("pandereta"), DRUM("schellen*"), DRUM("cymbales"), DRUM("tom toms"), DRUM("bongos"), DRUM("cimbal*"),
    DRUM("hackbrett"), DRUM("cowbell*"), DRUM("kuhglocke*"), DRUM("maraca*"), DRUM("guiro*"), DRUM("claves"), DRUM("hi hat"),
    DRUM("sleigh*"), DRUM("flexatone"), DRUM("slapstick"), DRUM("thunder*"), DRUM("lastra"),
    /* keyboard, plucked */
    KEYS("piano*"), KEYS("pianoforte"), KEYS("klavier*"), KEYS("hammerklavier"), KEYS("fortepiano"), KEYS("pf"), KEYS("pft"),
    KEYS("pno"), KEYS("klav"), FIGURED("harpsichord*", KEYBOARD), FIGURED("cembalo*", KEYBOARD), FIGURED("cemb", KEYBOARD),
    FIGURED("clavecin*", KEYBOARD), FIGURED("clavicemb*", KEYBOARD), FIGURED("clave", KEYBOARD), KEYS("clav"), KEYS("clavier*"),
    FIGURED("hch", KEYBOARD), FIGURED("hpsd", KEYBOARD), FIGURED("hpschd", KEYBOARD), KEYS("virginal*"), KEYS("spinet*"),
    KEYS("organ"), KEYS("organs"), KEYS("organo*"), KEYS("orgel*"), KEYS("orgue*"), KEYS("organi"), KEYS("org"),
    KEYS("harmonium*"), KEYS("armonio"), KEYS("celest*"), KEYS("cel"), KEYS("accordion*"), KEYS("akkordeon*"),
    KEYS("fisarmonica"), KEYS("keyboard*"), KEYS("tastiera"), KEYS("regal"), KEYS("ondes martenot"), KEYS("synth*"),
    PLUCK("harp"), PLUCK("harps"), PLUCK("harpe*"), PLUCK("harfe*"), PLUCK("arpa"), PLUCK("arpe"), PLUCK("arpas"), PLUCK("hrp"),
    PLUCK("hp"), PLUCK("hps"), PLUCK("hf"), PLUCK("hfe"), PLUCK("guit*"), PLUCK("gitar*"), PLUCK("chitarr*"), PLUCK("lut*"),
    PLUCK("laut*"), PLUCK("liut*"), PLUCK("laud"), FIGURED("theorb*", PLUCKED), FIGURED("tiorb*", PLUCKED),
    FIGURED("teorb*", PLUCKED), FIGURED("chitarrone", PLUCKED), FIGURED("archlute", PLUCKED), FIGURED("arciliuto", PLUCKED),
    PLUCK("mandol*"), PLUCK("bass guitar"), PLUCK("electric bass"), PLUCK("e bass"), PLUCK("banjo*"), PLUCK("ukulele*"),
    PLUCK("zither*"), PLUCK("balalaika*"), PLUCK("vihuela"), PLUCK("psalter*"), PLUCK("sitar"), PLUCK("koto"),
    /* voices */
    VOICE("sopran*"), VOICE("mezzo*"), VOICE("contralto*"), VOICE("altist*"), VOICE("tenor*"), VOICE("tenore"), VOICE("tenori"),
    VOICE("bariton*"), VOICE("barytone"), VOICE("treble"), VOICE("trebles"), VOICE("cantus"), VOICE("canto"), VOICE("canti"),
    VOICE("voice*"), VOICE("voix"), VOICE("voce"), VOICE("voci"), VOICE("voz"), VOICE("voces"), VOICE("stimme*"),
    VOICE("singstimme*"), VOICE("gesang"), VOICE("vocal*"), VOICE("solist*"), VOICE("countertenor*"), VOICE("altus"),
    VOICE("bassus"), VOICE("women"), VOICE("men"), VOICE("kinderchor"), VOICE("frauenchor"),
    VOICE("mannerchor"), VOICE("narrator"), VOICE("sprecher*"), VOICE("sop"), VOICE("bass solo voice"),
    VOICE("basso voce"), VOICE("bassi voci"), VOICE("s solo"), VOICE("evangelist*"),
    /* ordinals */
    NTH("first", 1), NTH("firsts", 1), NTH("second", 2), NTH("seconds", 2), NTH("third", 3), NTH("fourth", 4), NTH("one", 1),
    NTH("two", 2), NTH("three", 3), NTH("erste*", 1), NTH("zweite*", 2), NTH("dritte*", 3), NTH("vierte*", 4),
    NTH("premier", 1), NTH("premiers", 1), NTH("premiere", 1), NTH("premieres", 1), NTH("prem", 1), NTH("deuxieme*", 2),
    NTH("seconde", 2), NTH("secondes", 2), NTH("troisieme*", 3), NTH("quatrieme*", 4), NTH("primo", 1), NTH("prima", 1),
    NTH("primi", 1), NTH("prime", 1), NTH("pmo", 1), NTH("imo", 1), NTH("io", 1), NTH("ier", 1), NTH("iers", 1), NTH("ire", 1),
    NTH("ma", 1), NTH("secondo", 2), NTH("seconda", 2), NTH("secondi", 2), NTH("iido", 2), NTH("iio", 2), NTH("iie", 2),
    NTH("iia", 2), NTH("iida", 2), NTH("sdo", 2), NTH("terzo", 3), NTH("terza", 3), NTH("terzi", 3), NTH("iiio", 3),
    NTH("iiie", 3), NTH("quarto", 4), NTH("quarta", 4), NTH("primero*", 1), NTH("primera*", 1), NTH("primer", 1),
    NTH("segundo*", 2), NTH("segunda*", 2), NTH("tercero*", 3), NTH("tercera*", 3), NTH("tercer", 3), NTH("primus", 1),
    NTH("secundus", 2), NTH("tertius", 3), SAYS("st", SUFFIX), SAYS("nd", SUFFIX), SAYS("rd", SUFFIX), SAYS("th", SUFFIX),
    SAYS("er", SUFFIX), SAYS("ers", SUFFIX), SAYS("re", SUFFIX), SAYS("res", SUFFIX), SAYS("ere", SUFFIX), SAYS("eres", SUFFIX),
    SAYS("eme", SUFFIX), SAYS("emes", SUFFIX), SAYS("me", SUFFIX), SAYS("mes", SUFFIX), SAYS("de", SUFFIX), SAYS("do", SUFFIX),
    SAYS("da", SUFFIX), SAYS("mo", SUFFIX), SAYS("o", SUFFIX), SAYS("os", SUFFIX), SAYS("as", SUFFIX), SAYS("es", SUFFIX),
    SAYS("te", SUFFIX), SAYS("ten", SUFFIX), SAYS("ter", SUFFIX), SAYS("ste", SUFFIX), SAYS("r", SUFFIX), SAYS("tes", SUFFIX),
    SAYS("zo", SUFFIX), SAYS("rs", SUFFIX), SAYS("d", SUFFIX), SAYS("ds", SUFFIX),
    /* what else names say */
    SAYS("and", AND), SAYS("und", AND), SAYS("u", AND), SAYS("et", AND), SAYS("e", AND), SAYS("ed", AND), SAYS("y", AND),
    SAYS("to", AND), SAYS("bis", AND), SAYS("with", AND), SAYS("mit", AND), SAYS("avec", AND), SAYS("con", AND),
    SAYS("col", AND), SAYS("solo", SOLO), SAYS("soli", SOLO), SAYS("sola", SOLO), SAYS("solos", SOLO),
    SAYS("solis", SOLO), SAYS("solist", SOLO), SAYS("solistin", SOLO), SAYS("soloist*", SOLO), SAYS("solista", SOLO),
    SAYS("soliste", SOLO), SAYS("solistes", SOLO), SAYS("solistas", SOLO), SAYS("seul", SOLO), SAYS("seule", SOLO),
    SAYS("allein", SOLO), SAYS("principal", SOLO), SAYS("principale", SOLO), SAYS("principali", SOLO), SAYS("princ", SOLO),
    SAYS("prinz*", SOLO), SAYS("prinzipal", SOLO), SAYS("pr", SOLO), SAYS("ppale", SOLO), SAYS("leader", SOLO),
    SAYS("spalla", SOLO), SAYS("obbligato", SOLO), SAYS("obligato", SOLO), SAYS("obligat", SOLO), SAYS("oblig", SOLO),
    SAYS("obligee", SOLO), SAYS("concertante", SOLO), SAYS("concertanti", SOLO), SAYS("concertant", SOLO),
    SAYS("conzertant", SOLO), SAYS("konzertant", SOLO), SAYS("concertino", CONCERTINO), SAYS("concertini", CONCERTINO),
    SAYS("concertato", CONCERTINO), SAYS("concertati", CONCERTINO), SAYS("conc", CONCERTINO), SAYS("concino", CONCERTINO),
    SAYS("del concertino", CONCERTINO), SAYS("favoriti", CONCERTINO), SAYS("solo quartet", CONCERTINO),
    SAYS("soloquartett", CONCERTINO), SAYS("petit choeur", CONCERTINO), SAYS("soli group", CONCERTINO), SAYS("tutti", TUTTI),
    SAYS("ripieno", TUTTI), SAYS("ripieni", TUTTI), SAYS("rip", TUTTI), SAYS("grosso", TUTTI), SAYS("ripienist*", TUTTI),
    SAYS("concerto grosso", TUTTI), SAYS("grand choeur", TUTTI), SAYS("tous", TUTTI), SAYS("toutes", TUTTI),
    SAYS("alle", TUTTI), SAYS("todos", TUTTI), SAYS("full", TUTTI), SAYS("altri", REST), SAYS("altre", REST),
    SAYS("gli altri", REST), SAYS("le altre", REST), SAYS("ubrige*", REST), SAYS("uebrige*", REST), SAYS("die ubrigen", REST),
    SAYS("andere*", REST), SAYS("others", REST), SAYS("the others", REST), SAYS("rest", REST), SAYS("the rest", REST),
    SAYS("autres", REST), SAYS("les autres", REST), SAYS("los demas", REST), SAYS("demas", REST), SAYS("remaining", REST),
    SAYS("remainder", REST), SAYS("orchestra", ORCHESTRA), SAYS("orchestre", ORCHESTRA), SAYS("orchester", ORCHESTRA),
    SAYS("orquesta", ORCHESTRA), SAYS("orch", ORCHESTRA), SAYS("orchestrina", ORCHESTRA), SAYS("group", ORCHESTRA),
    SAYS("gruppe", ORCHESTRA), SAYS("groupe", ORCHESTRA), SAYS("gruppo", ORCHESTRA), SAYS("grupo", ORCHESTRA),
    SAYS("ensemble", ORCHESTRA), SAYS("band", ORCHESTRA), SAYS("coro", CHOIR), SAYS("cori", CHOIR), SAYS("choir", CHOIR),
    SAYS("chor", CHOIR), SAYS("choeur", CHOIR), SAYS("ch", CHOIR), SAYS("chori", CHOIR), SAYS("chorus", CHOIR),
    SAYS("choro", CHOIR), SAYS("coros", CHOIR), SAYS("pult", DESK), SAYS("pulte", DESK), SAYS("pultes", DESK),
    SAYS("desk", DESK), SAYS("desks", DESK), SAYS("stand", DESK), SAYS("stands", DESK), SAYS("leggio", DESK),
    SAYS("leggii", DESK), SAYS("legg", DESK), SAYS("pupitre", DESK), SAYS("pupitres", DESK), SAYS("pup", DESK),
    SAYS("atril", DESK), SAYS("atriles", DESK), SAYS("pultweise", DESK), SAYS("inside", DESK), SAYS("outside", DESK),
    SAYS("player", COUNTED), SAYS("players", COUNTED), SAYS("spieler", COUNTED), SAYS("div", DIVIDED), SAYS("divisi", DIVIDED),
    SAYS("divise", DIVIDED), SAYS("divises", DIVIDED), SAYS("divisee", DIVIDED), SAYS("divisees", DIVIDED),
    SAYS("divided", DIVIDED), SAYS("divididos", DIVIDED), SAYS("divididas", DIVIDED), SAYS("geteilt", DIVIDED),
    SAYS("getheilt", DIVIDED), SAYS("get", DIVIDED), SAYS("divis", DIVIDED), SAYS("line", DIVIDED),
   
    SAYS("in", COUNT), SAYS("a", COUNT), SAYS("fach", COUNTED), SAYS("musicians", COUNTED), SAYS("esecutori", COUNTED), SAYS("instruments", COUNTED), SAYS("by", COUNT), SAYS("zu", COUNT), SAYS("en", COUNT),
    SAYS("half", HALF), SAYS("halfte", HALF), SAYS("haelfte", HALF), SAYS("meta", HALF), SAYS("moitie", HALF),
    SAYS("mitad", HALF), SAYS("reduction", REDUCTION), SAYS("reduktion", REDUCTION), SAYS("riduzione", REDUCTION),
    SAYS("reduccion", REDUCTION), SAYS("klavierauszug*", REDUCTION), SAYS("particell*", REDUCTION),
    SAYS("rehearsal", REDUCTION), SAYS("for rehearsal only", REDUCTION), SAYS("short score", REDUCTION),
    SAYS("cues", REDUCTION), SAYS("cue", REDUCTION), SAYS("melody", REDUCTION), SAYS("hauptstimme*", REDUCTION),
    SAYS("guide", REDUCTION), SAYS("guida", REDUCTION), SAYS("klavier auszug", REDUCTION), SAYS("red", REDUCTION),
    SAYS("the", FILLER), SAYS("die", FILLER), SAYS("les", FILLER), SAYS("le", FILLER), SAYS("gli", FILLER),
    SAYS("di", FILLER), SAYS("der", FILLER), SAYS("of", FILLER), SAYS("du", FILLER), SAYS("des", FILLER), SAYS("la", FILLER),
    SAYS("los", FILLER), SAYS("las", FILLER), SAYS("section", FILLER),
};

/* How many tokens `pattern` covers from `index` on; 0 when it doesn't match. */
static size_t match(const char *pattern, const NameTokens *tokens, size_t index)
{
    size_t taken = 0;
    for (const char *at = pattern;; taken++) {
        size_t length = strcspn(at, " ");
        if (index + taken >= tokens->count)
            return 0;
        const NameToken *token = &tokens->at[index + taken];
        bool open = at[length - 1] == '*';
        if (token->used || (taken && (token->joint && token->joint != '.' && token->joint != '-')))
            return 0;
        if (open ? strncmp(token->text, at, length - 1) != 0 : strlen(token->text) != length || strncmp(token->text, at, length) != 0)
            return 0;
        at += length;
        if (!*at)
            return taken + 1;
        at++;
    }
}

typedef struct Best {
    const Word *word;
    size_t size, taken;
} Best;

static void look_up(const Word *table, size_t count, const NameTokens *tokens, size_t index, Best *best)
{
    for (size_t i = 0; i < count; i++) {
        if (table[i].text[0] != tokens->at[index].text[0])
            continue;
        size_t taken = match(table[i].text, tokens, index), size = strlen(table[i].text);
        bool open = size && table[i].text[size - 1] == '*';
        size = size * 2 - (open ? 3 : 0); /* an exact word goes before an open one of the same length */
        if (taken && (taken > best->taken || (taken == best->taken && size > best->size)))
            *best = (Best){&table[i], size, taken};
    }
}

const Word *vocabulary_find(const NameTokens *tokens, size_t index, size_t *taken)
{
    Best best = {0};
    look_up(words, sizeof words / sizeof words[0], tokens, index, &best);
    look_up(further_words, further_word_count, tokens, index, &best);
    *taken = best.taken;
    return best.word;
}
