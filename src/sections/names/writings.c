/* Letters are written as they sound, near ISO 9 and ISO 843, but without accents. The words are those of the trade (common practice, from memory). */
#include "sections/names/writings.h"
#include "support/text/utf8.h"
#include <string.h>

static const char greek_capitals[][4] = { /* U+0391 to U+03A9; the small letters follow in the same order */
    "a", "v", "g", "d", "e", "z", "i", "th", "i", "k", "l", "m", "n", "x", "o", "p", "r", "s", "s", "t", "y", "f", "ch", "ps", "o", "i", "y",
};
static const char cyrillic[][4] = { /* U+0410 to U+042F; the small letters follow in the same order */
    "a", "b", "v", "g", "d", "e", "zh", "z", "i", "i", "k", "l", "m", "n", "o", "p", "r", "s", "t", "u", "f", "h", "c", "ch", "sh", "sch",
    "", "y", "", "e", "yu", "ya",
};
static const struct { uint16_t code; char latin[4]; } single[] = {
    { 0x386, "a" }, { 0x388, "e" }, { 0x389, "i" }, { 0x38A, "i" }, { 0x38C, "o" }, { 0x38E, "y" }, { 0x38F, "o" }, { 0x390, "i" },
    { 0x3AC, "a" }, { 0x3AD, "e" }, { 0x3AE, "i" }, { 0x3AF, "i" }, { 0x3B0, "y" }, { 0x3CC, "o" }, { 0x3CD, "y" }, { 0x3CE, "o" },
    { 0x401, "e" }, { 0x402, "dj" }, { 0x403, "g" }, { 0x404, "e" }, { 0x405, "z" }, { 0x406, "i" }, { 0x407, "i" }, { 0x408, "j" },
    { 0x409, "lj" }, { 0x40A, "nj" }, { 0x40B, "c" }, { 0x40C, "k" }, { 0x40E, "u" }, { 0x40F, "dz" }, { 0x490, "g" }, { 0x491, "g" },
};

const char *writing_letter(uint32_t code)
{
    if (code >= 0x450 && code <= 0x45F) /* small letters of the row above */
        code -= 0x50;
    for (size_t i = 0; i < sizeof single / sizeof single[0]; i++)
        if (single[i].code == code)
            return single[i].latin;
    if (code >= 0x391 && code <= 0x3AB)
        return greek_capitals[code - 0x391];
    if (code >= 0x3B1 && code <= 0x3CB)
        return greek_capitals[code - 0x3B1];
    if (code >= 0x410 && code <= 0x44F)
        return cyrillic[(code - 0x410) % 32];
    return NULL;
}

#define VIOLIN " violin "
#define VIOLA " viola "
#define CELLO " cello "
#define BASS " contrabass "
static const struct { const char *word, *means; } words[] = {
    /* Japanese */
    { "ヴァイオリン", VIOLIN }, { "バイオリン", VIOLIN }, { "ヴィオリン", VIOLIN }, { "提琴", VIOLIN }, { "ヴィオラ", VIOLA }, { "ビオラ", VIOLA },
    { "チェロ", CELLO }, { "ヴィオロンチェロ", CELLO }, { "コントラバス", BASS }, { "ダブルベース", BASS }, { "ダブル・ベース", BASS },
    { "弦バス", BASS }, { "ベース", " bass " }, { "バス", " bass " }, { "弦楽", " strings " }, { "ストリングス", " strings " },
    { "通奏低音", " continuo " }, { "フルート", " flute " }, { "ピッコロ", " piccolo " }, { "オーボエ", " oboe " },
    { "イングリッシュホルン", " english horn " }, { "イングリッシュ・ホルン", " english horn " }, { "コールアングレ", " english horn " },
    { "コール・アングレ", " english horn " }, { "クラリネット", " clarinet " }, { "サクソフォン", " sax " }, { "サックス", " sax " },
    { "ファゴット", " bassoon " }, { "バスーン", " bassoon " }, { "コントラファゴット", " contrabassoon " }, { "ホルン", " horn " },
    { "トランペット", " trumpet " }, { "コルネット", " cornet " }, { "トロンボーン", " trombone " }, { "チューバ", " tuba " }, { "テューバ", " tuba " },
    { "ティンパニ", " timpani " }, { "打楽器", " percussion " }, { "パーカッション", " percussion " }, { "大太鼓", " drum " }, { "小太鼓", " drum " },
    { "ドラム", " drum " }, { "シンバル", " cymbal " }, { "トライアングル", " triangle " }, { "グロッケンシュピール", " glockenspiel " },
    { "シロフォン", " xylophone " }, { "ハープ", " harp " }, { "ピアノ", " piano " }, { "チェレスタ", " celesta " }, { "オルガン", " organ " },
    { "チェンバロ", " cembalo " }, { "ギター", " guitar " }, { "ソプラノ", " soprano " }, { "アルト", " alto " }, { "テノール", " tenor " },
    { "テナー", " tenor " }, { "バリトン", " bariton " }, { "合唱", " choir " }, { "ソロ", " solo " }, { "独奏", " solo " }, { "プルト", " desk " },
    /* Chinese, both writings */
    { "小提琴", VIOLIN }, { "中提琴", VIOLA }, { "大提琴", CELLO }, { "低音提琴", BASS }, { "低音大提琴", BASS }, { "倍大提琴", BASS },
    { "倍低音提琴", BASS }, { "倍低音大提琴", BASS }, { "弦乐", " strings " }, { "弦樂", " strings " }, { "长笛", " flute " }, { "長笛", " flute " },
    { "短笛", " piccolo " }, { "双簧管", " oboe " }, { "雙簧管", " oboe " }, { "英国管", " english horn " }, { "英國管", " english horn " },
    { "单簧管", " clarinet " }, { "單簧管", " clarinet " }, { "黑管", " clarinet " }, { "萨克斯", " sax " }, { "薩克斯", " sax " }, { "大管", " bassoon " },
    { "巴松", " bassoon " }, { "低音管", " bassoon " }, { "低音大管", " contrabassoon " }, { "圆号", " horn " }, { "圓號", " horn " },
    { "法国号", " horn " }, { "法國號", " horn " }, { "小号", " trumpet " }, { "小號", " trumpet " }, { "长号", " trombone " }, { "長號", " trombone " },
    { "大号", " tuba " }, { "大號", " tuba " }, { "低音号", " tuba " }, { "低音號", " tuba " }, { "定音鼓", " timpani " }, { "打击乐", " percussion " },
    { "打擊樂", " percussion " }, { "大鼓", " drum " }, { "小鼓", " drum " }, { "军鼓", " drum " }, { "軍鼓", " drum " }, { "钹", " cymbal " },
    { "鈸", " cymbal " }, { "三角铁", " triangle " }, { "三角鐵", " triangle " }, { "竖琴", " harp " }, { "豎琴", " harp " }, { "钢琴", " piano " },
    { "鋼琴", " piano " }, { "钢片琴", " celesta " }, { "鋼片琴", " celesta " }, { "管风琴", " organ " }, { "管風琴", " organ " },
    { "独奏", " solo " }, { "獨奏", " solo " }, { "女高音", " soprano " }, { "女低音", " contralto " }, { "男高音", " tenor " }, { "男低音", " bariton " },
    { "女中音", " mezzo " }, { "男中音", " bariton " },
    /* Korean */
    { "바이올린", VIOLIN }, { "비올라", VIOLA }, { "첼로", CELLO }, { "콘트라베이스", BASS }, { "콘트라바스", BASS }, { "더블베이스", BASS },
    { "더블 베이스", BASS }, { "베이스", " bass " }, { "현악", " strings " }, { "플루트", " flute " }, { "플룻", " flute " }, { "피콜로", " piccolo " },
    { "오보에", " oboe " }, { "잉글리시 호른", " english horn " }, { "잉글리쉬 호른", " english horn " }, { "클라리넷", " clarinet " },
    { "바순", " bassoon " }, { "파곳", " bassoon " }, { "호른", " horn " }, { "트럼펫", " trumpet " }, { "트롬본", " trombone " }, { "튜바", " tuba " },
    { "팀파니", " timpani " }, { "타악기", " percussion " }, { "하프", " harp " }, { "피아노", " piano " }, { "첼레스타", " celesta " },
    { "오르간", " organ " }, { "소프라노", " soprano " }, { "알토", " alto " }, { "테너", " tenor " }, { "합창", " choir " }, { "독주", " solo " },
    /* numbers */
    { "第", " " }, { "제", " " }, { "一", " 1 " }, { "二", " 2 " }, { "三", " 3 " }, { "四", " 4 " }, { "Ⅲ", "iii" }, { "Ⅳ", "iv" },
    { "①", " 1 " }, { "②", " 2 " }, { "③", " 3 " }, { "・", " " }, { "　", " " }, { "（", "(" }, { "）", ")" }, { "、", "," }, { "．", "." },
    { "Α΄", " 1 " }, { "Β΄", " 2 " }, { "Γ΄", " 3 " }, { "Α'", " 1 " }, { "Β'", " 2 " }, { "Γ'", " 3 " }, { "Α’", " 1 " }, { "Β’", " 2 " }, { "Γ’", " 3 " }, { "Αʹ", " 1 " }, { "Βʹ", " 2 " }, { "Γʹ", " 3 " },
};

/* Digits and Latin letters as wide as the characters of East Asia. */
static const char *wide_character(uint32_t code)
{
    static const char ascii[] = "0\0" "1\0" "2\0" "3\0" "4\0" "5\0" "6\0" "7\0" "8\0" "9\0"
                                "a\0" "b\0" "c\0" "d\0" "e\0" "f\0" "g\0" "h\0" "i\0" "j\0" "k\0" "l\0" "m\0" "n\0" "o\0" "p\0" "q\0" "r\0" "s\0" "t\0" "u\0" "v\0" "w\0" "x\0" "y\0" "z";
    if (code >= 0xFF10 && code <= 0xFF19)
        return &ascii[2 * (code - 0xFF10)];
    if (code >= 0xFF21 && code <= 0xFF3A)
        return &ascii[2 * (10 + code - 0xFF21)];
    return code >= 0xFF41 && code <= 0xFF5A ? &ascii[2 * (10 + code - 0xFF41)] : NULL;
}

const char *writing_word(const char **at)
{
    size_t longest = 0;
    const char *means = NULL, *after = *at;
    if (!(**at & 0x80)) /* all begin outside ASCII */
        return NULL;
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        size_t length = strlen(words[i].word);
        if (length > longest && strncmp(*at, words[i].word, length) == 0) {
            longest = length;
            means = words[i].means;
        }
    }
    if (!means) {
        means = wide_character(utf8_next(&after));
        longest = (size_t)(after - *at);
    }
    *at += means ? longest : 0;
    return means;
}
