/* Words of further languages: Dutch, Swedish, Norwegian, Danish, Finnish, Estonian, Polish, Czech, Slovak, Slovene, Croatian, Hungarian,
 * Romanian, Portuguese, Catalan, Turkish; Greek, Russian, Ukrainian, Bulgarian and Serbian in the letters that writings.c gives them. Sources:
 * common practice of the scores, from memory. */
#include "sections/names/vocabulary_tables.h"

const Word further_words[] = {
    /* violins */
    VIOLIN("viool"), VIOLINS("violiner"), VIOLINS("violinerna"), VIOLIN("fiol"), VIOLINS("fioler"), VIOLIN("fiolin"), VIOLINS("fioliner"), VIOLIN("viulu"),
    VIOLINS("viulut"), VIOLIN("ensiviulu*"), VIOLIN("viiul"), VIOLINS("viiulid"), VIOLINS("skrzypce"), VIOLIN("skrzypiec"), VIOLINS("skrz"),
    VIOLINS("housle"), VIOLINS("housli"), VIOLINS("husle"), VIOLINS("husli"), VIOLIN("violina"), VIOLIN("hegedu"), VIOLINS("hegeduk"),
    VIOLIN("heg"), VIOLIN("vioara"), VIOLINS("viori"), VIOLIN("keman"), VIOLINS("kemanlar"), VIOLINS("violia"), VIOLIN("skripka"), VIOLINS("skripki"),
    VIOLIN("skr"), VIOLIN("skrypka"), VIOLINS("skrypky"), VIOLIN("cigulka"), VIOLINS("cigulki"),
    { "viool solo", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false }, { "soloviool", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false },
    { "solofiol*", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false }, { "sooloviulu", WORD_SOLO_KIND, INSTRUMENT_VIOLIN, false },
    /* violas */
    VIOLA("altviool"), VIOLA("altvl"), VIOLA("altviolin"), VIOLAS("altvioliner"), VIOLA("altfiol"), VIOLAS("altfioler"), VIOLAS("violor"), VIOLA("bratsj"), VIOLAS("bratsjer"),
    VIOLAS("bratscher"), VIOLA("alttoviulu"), VIOLAS("alttoviulut"), VIOLA("alttov"), VIOLA("vioola"), VIOLAS("vioolad"), VIOLA("altowka"),
    VIOLAS("altowki"), VIOLA("altow"), VIOLAS("violy"), VIOLA("bracsa"), VIOLAS("bracsak"), VIOLA("melyhegedu"), VIOLAS("melyhegeduk"), VIOLA("viyola"),
    VIOLAS("viyolalar"), VIOLAS("violes"), VIOLAS("alty"), 
    /* cellos */
    CELLO("sello"), CELLOS("sellot"), CELLO("tsello"), CELLOS("tsellod"), CELLOS("celloer"), CELLOS("celler"), CELLOS("violonceller"), CELLO("wiolonczela"), CELLOS("wiolonczele"), CELLO("wiol"), CELLO("wcz"),
    CELLO("violonchela"), CELLO("gordonka"), CELLOS("gordonkak"), CELLO("csello"), CELLOS("csellok"), CELLO("viyolonsel*"),
    CELLO("violontselo"), CELLOS("violontsela"), CELLO("tselo"), CELLOS("tsela"), CELLO("vlch"), CELLO("vch"), CELLO("celo"), CELLOS("cela"),
    /* basses */
    BASS("contrabas"), BASS("contrabassen"), BASS("kontrabas"), BASS("kontrabasar"), BASS("kontrabaser"), BASS("kontrabasser"), BASS("kontrabassar"),
    BASS("kontrabassot"), BASS("kontrabassid"), BASS("kontrabasy"), BASS("nagybogo"), BASS("nagybogok"), BASS("bogo"), BASS("contrabaixo"),
    BASS("contrabaixos"), BASS("contrabaix"), BASS("kontrbas*"), BASS("kontrampaso"), BASS("kontrampasa"), BASS("kontra mpaso"),
    EITHER("baixo", BASS), EITHER("baixos", BASS), EITHER("bas", BASS), EITHER("bassar", BASS), EITHER("basy", BASS), EITHER("mpasa", BASS),
    /* strings without saying which */
    STRINGS("strijkers"), STRINGS("strakar"), STRINGS("strykere"), STRINGS("strygere"), STRINGS("jouset"), STRINGS("jousisto"), STRINGS("smyczki"),
    STRINGS("smycce"), STRINGS("smyccove"), STRINGS("slaciky"), STRINGS("vonosok"), STRINGS("vonos"), STRINGS("cordas"), STRINGS("corda"), STRINGS("yaylilar"),
    STRINGS("strunnye"), STRINGS("strunni"), STRINGS("enchorda"), STRINGS("godala"), STRINGS("gudaci"), STRINGS("coarde"),
    /* woodwind */
    WIND("fluit*"), WIND("flojt*"), WIND("floyte*"), WIND("huilu*"), WIND("flet"), WIND("flety"), WIND("fletn*"), WIND("fuvol*"), WIND("flut"), WIND("fleit*"),
    WIND("fleyt*"), WIND("flaoyt*"), WIND("flavt*"), REGISTER("pikkol*"), REGISTER("pikol*"), WIND("fletnia"), WIND("obo"), WIND("oboja*"),
    WIND("oboj"), WIND("oboje"), WIND("hoboj*"), WIND("goboi*"), WIND("obua*"), WIND("ompoe"), SURELY("althobo", WOODWIND), SURELY("engelse", WOODWIND),
    SURELY("engelsk", WOODWIND), SURELY("englannintorvi", WOODWIND), SURELY("angielski", WOODWIND), SURELY("anglicky", WOODWIND),
    SURELY("angolkurt", WOODWIND), SURELY("angles", WOODWIND), SURELY("korangle", WOODWIND), SURELY("angliisk*", WOODWIND), SURELY("anglik*", WOODWIND),
    SURELY("angliysk*", WOODWIND), SURELY("engleski", WOODWIND), WIND("klarnet*"), WIND("basklarin*"), WIND("basuklarin*"), WIND("bassoklar*"), WIND("fagkot*"),
    WIND("saksof*"), WIND("szaxof*"), WIND("puhaltimet"), WIND("fafuvok"),
    /* brass */
    BRASS("hoorn*"), BRASS("kayratorv*"), BRASS("torvi"), BRASS("waltorni*"), BRASS("valtorn*"), BRASS("rog"), BRASS("rogi"), BRASS("rohy"), BRASS("roh"), BRASS("lesni roh"),
    BRASS("lesny roh"), BRASS("kurt"), BRASS("kurtok"), BRASS("korno*"), BRASS("trumpetti*"), BRASS("trabk*"), BRASS("trubk*"),
    BRASS("truba"), BRASS("truby"), BRASS("trub"), BRASS("trubi"), BRASS("trombit*"), BRASS("basun*"), BRASS("bazuin*"), BRASS("pasuun*"), BRASS("puzon*"),
    BRASS("pozoun*"), BRASS("pozaun*"), BRASS("harson*"), BRASS("trompon*"), BRASS("tuuba*"), BRASS("toympa"), BRASS("vasket"),
    /* percussion */
    DRUM("pukor"), DRUM("patarumm*"), DRUM("kotly"), DRUM("tympan*"), DRUM("ustdob*"), DRUM("litavr*"), DRUM("slagverk*"), DRUM("slagwerk*"),
    DRUM("slagtoj*"), DRUM("lyomasoit*"), DRUM("perkus*"), DRUM("bici*"), DRUM("utok"), DRUM("utohangszer*"), DRUM("vurmali*"), DRUM("udarn*"),
    DRUM("udaralj*"), DRUM("kroysta"), DRUM("baraban*"), DRUM("tarelki"), DRUM("treugoln*"), DRUM("trojuheln*"), DRUM("trojkat"), DRUM("talerze"), DRUM("cinely"), DRUM("beben*"),
    DRUM("buben*"), DRUM("trumma*"), DRUM("rumpu*"), DRUM("tromme*"), DRUM("bekkens"), DRUM("cintanyer"), DRUM("symbal*"), DRUM("kolokol*"),
    /* keyboard, plucked */
    KEYS("fortepian*"), KEYS("klavir*"), KEYS("zongora*"), KEYS("chelest*"), KEYS("czelest*"), KEYS("orgona"), KEYS("varhany"), KEYS("urut"), 
    FIGURED("klavecimb*", KEYBOARD), FIGURED("klavesin*", KEYBOARD), FIGURED("klawesyn*", KEYBOARD), FIGURED("csembalo*", KEYBOARD), FIGURED("cravo*", KEYBOARD),
    PLUCK("harpa"), PLUCK("harpor"), PLUCK("harper"), PLUCK("harpp*"), PLUCK("harpen"), PLUCK("arp"), PLUCK("arfa"), PLUCK("arfy"),
    PLUCK("harfa*"), PLUCK("kitara"), PLUCK("harf"),
    /* voices */
    VOICE("szopran*"), VOICE("glos*"), VOICE("golos*"), VOICE("sang*"), VOICE("stem*"), VOICE("laulu*"), VOICE("enek*"),
    SAYS("kor", CHOIR), SAYS("koor", CHOIR), SAYS("kuoro", CHOIR), SAYS("sbor", CHOIR), SAYS("zbor", CHOIR), SAYS("korus", CHOIR), SAYS("hor", CHOIR), SAYS("chorodia", CHOIR),
    SAYS("koro", CHOIR),
    /* ordinals */
    NTH("eerste", 1), NTH("tweede", 2), NTH("derde", 3), NTH("forsta", 1), NTH("andra", 2), NTH("tredje", 3), NTH("forste", 1), NTH("andre", 2),
    NTH("annen", 2), NTH("anden", 2), NTH("ensimmai*", 1), NTH("toinen", 2), NTH("toiset", 2), NTH("kolmas", 3), NTH("esimene", 1), NTH("teine", 2), NTH("pierwsz*", 1), NTH("drug*", 2), NTH("trzeci*", 3), NTH("prvni", 1),
    NTH("prve", 1), NTH("prva", 1), NTH("prvi", 1), NTH("druh*", 2), NTH("treti", 3), NTH("tretie", 3), NTH("elso", 1), NTH("masodik", 2), NTH("harmadik", 3), NTH("primeir*", 1),
    NTH("terceir*", 3), NTH("primers", 1), NTH("segon", 2), NTH("segons", 2), NTH("tercers", 3), NTH("birinci", 1), NTH("ikinci", 2), NTH("ucuncu", 3), NTH("prota", 1), NTH("proto", 1),
    NTH("deytera", 2), NTH("deytero", 2), NTH("trita", 3), NTH("trito", 3), NTH("perv*", 1), NTH("vtor*", 2), NTH("tret*", 3), NTH("persh*", 1),
    SAYS("ya", SUFFIX), SAYS("ye", SUFFIX), SAYS("aya", SUFFIX),
    /* what else names say */
    SAYS("och", AND), SAYS("og", AND), SAYS("ja", AND), SAYS("ve", AND), SAYS("kai", AND), SAYS("soolo", SOLO), SAYS("szolo", SOLO),
    SAYS("orkest", ORCHESTRA), SAYS("orkester", ORCHESTRA), SAYS("orkesteri", ORCHESTRA), SAYS("orkestr", ORCHESTRA), SAYS("orkiestra", ORCHESTRA), SAYS("zenekar", ORCHESTRA),
    SAYS("lessenaar", DESK), SAYS("pulpit", DESK), SAYS("pultit", DESK), SAYS("allen", TUTTI), SAYS("vse", TUTTI),
};
const size_t further_word_count = sizeof further_words / sizeof further_words[0];
