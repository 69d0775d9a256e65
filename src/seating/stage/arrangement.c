#include "seating/stage/arrangement.h"
#include "spezzato/stage.h"
#include "support/message.h"
#include <string.h>

static const char own_prefix[] = "arrangement ";

static const Arrangement standard[STANDARD_ARRANGEMENTS] = {
    [SPZ_OPPOSED_CELLOS_LEFT] = {"violins opposed, cellos inside left", {{SPZ_VN1, SPZ_VC, SPZ_VA, SPZ_VN2}, 4}, BASSES_BEHIND_CELLOS, true},
    [SPZ_OPPOSED_VIOLAS_LEFT] = {"violins opposed, violas inside left", {{SPZ_VN1, SPZ_VA, SPZ_VC, SPZ_VN2}, 4}, BASSES_BEHIND_CELLOS, true},
    [SPZ_TOGETHER_CELLOS_OUTSIDE] = {"violins together, cellos outside", {{SPZ_VN1, SPZ_VN2, SPZ_VA, SPZ_VC}, 4}, BASSES_BEHIND_CELLOS, false},
    [SPZ_TOGETHER_VIOLAS_OUTSIDE] = {"violins together, violas outside", {{SPZ_VN1, SPZ_VN2, SPZ_VC, SPZ_VA}, 4}, BASSES_BEHIND_CELLOS, false},
};

spz_standard spz_arrangement_standard(const char *name)
{
    size_t at = 0;
    while (at < STANDARD_ARRANGEMENTS && (!name || strcmp(standard[at].name, name) != 0))
        at++;
    return (spz_standard)at;
}

static int place_of(const Arrangement *arrangement, spz_section section)
{
    for (int i = 0; i < arrangement->order.count; i++)
        if (arrangement->order.sections[i] == section)
            return i;
    return -1;
}

bool arrangement_has(const Arrangement *arrangement, spz_section section)
{
    return place_of(arrangement, section) >= 0;
}

static bool has_stranger_between(const Arrangement *arrangement, int a, int b)
{
    int low = a < b ? a : b, high = a < b ? b : a;
    for (int i = low + 1; i < high; i++)
        if (arrangement->order.sections[i] != SPZ_VN3)
            return true;
    return false;
}

static const char *fault_of(const Arrangement *a)
{
    int first = place_of(a, SPZ_VN1), second = place_of(a, SPZ_VN2);
    if (first < 0 || second < 0)
        return "its order must name Vn I and Vn II";
    for (int i = 0; i < a->order.count; i++)
        if (place_of(a, a->order.sections[i]) != i)
            return "its order names a section twice";
    if (!arrangement_has(a, SPZ_VA) || !arrangement_has(a, SPZ_VC))
        return "its order must name Va and Vc";
    return NULL;
}

/* One name of the order, blanks around it dropped; false when it names no section that can be seated. */
static bool add_section(Arrangement *a, const char *from, size_t length)
{
    char name[16];
    while (length && *from == ' ')
        from++, length--;
    while (length && from[length - 1] == ' ')
        length--;
    if (!length || length >= sizeof name || a->order.count == SPZ_ORDER_LIMIT)
        return false;
    memcpy(name, from, length);
    name[length] = '\0';
    spz_section section = spz_section_from_name(name);
    if (section < SPZ_VN1 || section > SPZ_DB)
        return false;
    a->order.sections[a->order.count++] = section;
    return true;
}

static const char *read_order(Arrangement *a, const char *text)
{
    for (;;) {
        size_t length = strcspn(text, ",");
        if (!add_section(a, text, length))
            return "its order must hold sections such as 'Vn I, Vc, Va, Vn II'";
        if (!text[length])
            break;
        text += length + 1;
    }
    return fault_of(a);
}

static const char *read_entries(const spz_settings *settings, const char *section, Arrangement *a)
{
    const char *key, *value, *fault = "it has no order";
    for (size_t i = 0; spz_settings_entry(settings, section, i, &key, &value); i++) {
        if (strcmp(key, "order") == 0)
            fault = read_order(a, value);
        else if (strcmp(key, "basses") != 0)
            return "it may hold 'order' and 'basses' only";
        else if (!bass_place_from_words(value, &a->basses))
            return "basses may stand 'behind cellos', 'behind first violins' or 'along the back'";
        if (strcmp(key, "order") == 0 && fault)
            return fault;
    }
    return fault;
}

static spz_status add_own(const spz_settings *settings, const char *section, BassPlace basses, Arena *arena, ArrangementList *out,
                          const char **fault)
{
    if (out->count == SPZ_ARRANGEMENT_LIMIT) {
        *fault = "there are more arrangements than can be compared";
        return SPZ_BAD_SETTINGS;
    }
    Arrangement own = {.basses = basses};
    own.name = arena_string(arena, section + strlen(own_prefix));
    if (!own.name)
        return SPZ_NO_MEMORY;
    *fault = arrangements_find(out, own.name) ? "its name is taken already" : read_entries(settings, section, &own);
    if (*fault)
        return SPZ_BAD_SETTINGS;
    own.opposed = has_stranger_between(&own, place_of(&own, SPZ_VN1), place_of(&own, SPZ_VN2));
    out->at[out->count++] = own;
    return SPZ_OK;
}

spz_status arrangements_list(const spz_settings *settings, const spz_sink *sink, Arena *arena, ArrangementList *out)
{
    Rules rules;
    rules_read(settings, &rules);
    *out = (ArrangementList){.count = STANDARD_ARRANGEMENTS};
    memcpy(out->at, standard, sizeof standard);
    for (size_t i = 0; i < STANDARD_ARRANGEMENTS; i++)
        out->at[i].basses = rules.basses;
    const char *section, *fault = NULL;
    for (size_t i = 0; (section = spz_settings_section(settings, own_prefix, i)) != NULL; i++) {
        spz_status status = add_own(settings, section, rules.basses, arena, out, &fault);
        if (status == SPZ_BAD_SETTINGS)
            message_send(sink, &(spz_message){.severity = SPZ_ERROR}, "[%s]: %s", section, fault);
        if (status != SPZ_OK)
            return status;
    }
    return SPZ_OK;
}

const Arrangement *arrangements_find(const ArrangementList *list, const char *name)
{
    for (size_t i = 0; i < list->count; i++)
        if (strcmp(list->at[i].name, name) == 0)
            return &list->at[i];
    return NULL;
}

void arrangement_add_thirds(Arrangement *a)
{
    if (arrangement_has(a, SPZ_VN3) || a->order.count == SPZ_ORDER_LIMIT)
        return;
    int first = place_of(a, SPZ_VN1), second = place_of(a, SPZ_VN2);
    bool before = a->opposed ? first < second
                             : first > second; /* inner side: toward the firsts when opposed, away when together */
    int place = before ? second : second + 1;
    for (int i = a->order.count; i > place; i--)
        a->order.sections[i] = a->order.sections[i - 1];
    a->order.sections[place] = SPZ_VN3;
    a->order.count++;
}

spz_status spz_arrangements_list(const spz_settings *settings, const spz_sink *sink, const char **names, size_t *count)
{
    Arena arena;
    ArrangementList list;
    arena_init(&arena);
    spz_status status = arrangements_list(settings, sink, &arena, &list);
    *count = status == SPZ_OK ? list.count : 0;
    for (size_t i = 0; i < *count; i++) /* the list's own names die with the arena */
        names[i] = i < STANDARD_ARRANGEMENTS
                       ? standard[i].name
                       : spz_settings_section(settings, own_prefix, i - STANDARD_ARRANGEMENTS) + strlen(own_prefix);
    arena_release(&arena);
    return status;
}
