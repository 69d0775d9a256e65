/* What is told of a passage contradicts itself nowhere, in any score at hand: the bundled season, and the shared scores and quartets where they are there. */
#include "support/suite.h"
#include <dirent.h>
#include <spezzato/spezzato.h>
#include <stdio.h>
#include <string.h>

typedef struct Told {
    int passages;
    int two_pairs;    /* the sentence names other sides than the row */
    int at_one_time;  /* an entry begins before its player has ended another */
    int unheard;      /* one of the two sides is in no link */
    int told_again;   /* all that a passage tells, a longer one tells */
} Told;

static bool is_dialogue(const spz_passage *passage)
{
    return passage->kind == SPZ_EXCHANGE || passage->kind == SPZ_HOCKET || passage->kind == SPZ_IMITATION;
}

static bool same_side(const spz_side *a, const spz_side *b)
{
    return a->section == b->section && a->group == b->group && a->orchestra == b->orchestra;
}

static bool entries_meet(const spz_passage *passage)
{
    for (size_t i = 0; i < passage->entry_count; i++)
        for (size_t k = i + 1; k < passage->entry_count; k++) {
            const spz_entry *a = &passage->entries[i], *b = &passage->entries[k];
            if ((a->players & b->players) && b->onset < a->end && a->onset < b->end)
                return true;
        }
    return false;
}

static bool is_in_a_link(const spz_passage *passage, const spz_side *side)
{
    for (size_t i = 0; i < passage->link_count; i++)
        if (passage->links[i].players & side->players)
            return true;
    return false;
}

static bool has_entry(const spz_passage *passage, const spz_entry *entry)
{
    for (size_t i = 0; i < passage->entry_count; i++)
        if (passage->entries[i].onset == entry->onset && !(entry->players & ~passage->entries[i].players))
            return true;
    return false;
}

static bool tells_all_of(const spz_passage *longer, const spz_passage *other)
{
    bool all = is_dialogue(longer) && longer->first <= other->first && longer->last >= other->last && longer->strength >= other->strength;
    for (size_t i = 0; all && i < other->entry_count; i++)
        all = has_entry(longer, &other->entries[i]);
    return all;
}

/* Strings against winds are told beside what the strings say to each other. */
static bool of_winds(const spz_passage *passage)
{
    return passage->sides[0].section == SPZ_WINDS || passage->sides[1].section == SPZ_WINDS;
}

static bool is_told_again(const spz_findings *findings, const spz_passage *passage)
{
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *other = spz_findings_at(findings, i);
        if (other != passage && of_winds(other) == of_winds(passage) && tells_all_of(other, passage))
            return true;
    }
    return false;
}

static void add(const char *name, const spz_findings *findings, Told *told)
{
    for (size_t i = 0; i < spz_findings_count(findings); i++) {
        const spz_passage *p = spz_findings_at(findings, i);
        if (!is_dialogue(p))
            continue;
        bool pairs = !same_side(&p->sides[0], &p->told.gesture.sides[0]) || !same_side(&p->sides[1], &p->told.gesture.sides[1]);
        bool meet = entries_meet(p), unheard = !is_in_a_link(p, &p->sides[0]) && !is_in_a_link(p, &p->sides[1]), again = is_told_again(findings, p);
        if (pairs || meet || unheard || again)
            printf("\n    %s, %s-%s:%s%s%s%s", name, p->first_bar, p->last_bar, pairs ? " two pairs" : "", meet ? " entries at one time" : "", unheard ? " sides without entries" : "",
                   again ? " told again" : "");
        told->passages++;
        told->two_pairs += pairs;
        told->at_one_time += meet;
        told->unheard += unheard;
        told->told_again += again;
    }
}

static void add_folder(const char *folder, Told *told)
{
    DIR *all = folder ? opendir(folder) : NULL;
    for (struct dirent *entry; all && (entry = readdir(all));) {
        char path[600];
        spz_reading *reading = NULL;
        if (!strstr(entry->d_name, ".m") || strstr(entry->d_name, ".md"))
            continue;
        snprintf(path, sizeof path, "%.300s/%.250s", folder, entry->d_name);
        CU_ASSERT_EQUAL_FATAL(spz_reading_make(path, NULL, 0, SPZ_TO_PASSAGES, NULL, &reading), SPZ_OK);
        for (size_t i = 0; i < spz_reading_count(reading); i++)
            add(entry->d_name, spz_reading_at(reading, i).findings, told);
        spz_reading_free(reading);
    }
    if (all)
        closedir(all);
}

static Told of_all(void)
{
    static Told kept;
    if (kept.passages)
        return kept;
    char quartets[600] = "";
    add_folder("corpus", &kept);
    CU_ASSERT_TRUE(kept.passages > 50);
    snprintf(quartets, sizeof quartets, "%.590s", shared_file("quartets") ? shared_file("quartets") : "");
    add_folder(quartets[0] ? quartets : NULL, &kept);
    add_folder(shared_file("scores"), &kept);
    return kept;
}

static void a_row_and_its_sentence_name_the_same_two_sides(void)
{
    CU_ASSERT_EQUAL(of_all().two_pairs, 0);
    CU_ASSERT_EQUAL(of_all().unheard, 0);
}

static void nobody_has_two_entries_at_one_time(void)
{
    CU_ASSERT_EQUAL(of_all().at_one_time, 0);
}

static void no_passage_tells_what_a_longer_one_tells(void)
{
    CU_ASSERT_EQUAL(of_all().told_again, 0);
}

static const struct Statement statements[] = {
    STATEMENT(a_row_and_its_sentence_name_the_same_two_sides),
    STATEMENT(nobody_has_two_entries_at_one_time),
    STATEMENT(no_passage_tells_what_a_longer_one_tells),
};

void suite_told_once(void);
void suite_told_once(void)
{
    suite_of("what is told, told once", statements, COUNT(statements));
}
