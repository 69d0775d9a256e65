/* notes - reads each score beside its table (NAME.mxl and NAME.csv in the folder given) and prints the agreement as Markdown. Exit status 1
 * when more than one entry in ten thousand is left unexplained. */
#include "spezzato/score.h"
#include "support/tables/note_table.h"
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { NAMES_MOST = 200, NAME_MOST = 200 };

static int by_name(const void *a, const void *b)
{
    return strcmp(a, b);
}

static int list(const char *folder, char names[NAMES_MOST][NAME_MOST])
{
    int count = 0;
    DIR *dir = opendir(folder);
    for (struct dirent *entry; dir && count < NAMES_MOST && (entry = readdir(dir));) {
        size_t length = strlen(entry->d_name);
        if (length < 5 || length >= NAME_MOST || strcmp(entry->d_name + length - 4, ".mxl") != 0)
            continue;
        memcpy(names[count], entry->d_name, length - 4);
        names[count++][length - 4] = '\0';
    }
    if (dir)
        closedir(dir);
    qsort(names, (size_t)count, NAME_MOST, by_name);
    return count;
}

static void print_row(const char *name, const NoteTableResult *r)
{
    printf("| %s | %d of %d | %ld | %ld | %.2f %% | %ld | %.3f %% | %ld | %ld | %ld |\n", name, r->parts_compared, r->parts, r->moments, r->moments_agreeing,
           r->moments ? 100.0 * (double)r->moments_agreeing / (double)r->moments : 0, r->compared,
           r->compared ? 100.0 * (double)r->agreeing / (double)r->compared : 0, r->missed, r->doubled, r->unexplained);
}

static void print_places(const char *name, const NoteTableResult *r)
{
    if (r->pauses)
        printf("- %s: clock set right after the general pause in bar %s.\n", name, r->pause_bars);
    if (r->missed)
        printf("- %s: notes that the table misses, in bars %s.\n", name, r->missed_bars);
    if (r->doubled)
        printf("- %s: a second player doubles the first in the table but has a written rest in the file, in bars %s.\n", name, r->doubled_bars);
    if (r->strangers[0])
        printf("- %s: the table has columns that are no part of the file: %s.\n", name, r->strangers);
    if (r->unpitched)
        printf("- %s: %ld entries of percussion without pitch are not compared.\n", name, r->unpitched);
    if (r->unexplained)
        printf("- %s: not explained by a habit: %s.\n", name, r->first_unexplained);
}

static bool measure(const char *folder, const char *name, NoteTableResult *result)
{
    char path[4096];
    spz_score *score = NULL;
    snprintf(path, sizeof path, "%.2000s/%.200s.mxl", folder, name);
    if (spz_score_read(path, NULL, &score) != SPZ_OK)
        return false;
    snprintf(path, sizeof path, "%.2000s/%.200s.csv", folder, name);
    bool done = note_table_compare(path, spz_score_movement(score, 0), result);
    spz_score_free(score);
    return done;
}

static const char head[] =
    "# Accuracy of the notes\n\n"
    "Made by `make accuracy-notes`; not written by hand.\n\n"
    "Each score of the OpenScore Orchestra corpus at hand is read, repeats are unfolded and tied notes joined; then, at every moment that the\n"
    "corpus's own table of the score names, the highest sounding pitch of each part is compared with the table (source of the tables: the\n"
    "Hauptstimme annotations of that corpus, Gotham and others, made with another reader). `moments` agree when all parts agree.\n\n"
    "| score | parts in the table | moments | agree | share | entries (moment x part) | share agreeing | missed by the table | doubled in the table | unexplained |\n"
    "|---|---|---|---|---|---|---|---|---|---|\n";

static const char habits[] =
    "\n## Where the two differ, and why\n\n"
    "Every difference was looked into in the score. The table rounds times to four decimals and enters a note only when the one before it is\n"
    "over: a note of a sixth of a crotchet that begins at a third (x.3333) is 'before' the rounded end of its predecessor (x.1667 + 0.1667 = x.3334) and\n"
    "is missed; so is a higher note that enters over a held one. After a bar in which the whole orchestra rests, the table's clock runs ahead by the\n"
    "time from its last moment to the end of that bar. Parts with one name stand in one column. Some second winds double the first where the file has a\n"
    "written rest ('1.'). Percussion without pitch stands in it as the pitch\n"
    "of its place on the staff. `missed` and `doubled` count differences for which exactly this habit yields exactly what the table says; what it does\n"
    "not yield counts as unexplained and is named below.\n\n";

int main(int argc, char **argv)
{
    static char names[NAMES_MOST][NAME_MOST];
    static NoteTableResult results[NAMES_MOST];
    NoteTableResult sum = {0};
    int count = argc == 2 ? list(argv[1], names) : 0;
    if (count == 0) {
        fprintf(stderr, "usage: notes FOLDER   (with NAME.mxl and NAME.csv)\n");
        return 2;
    }
    fputs(head, stdout);
    for (int i = 0; i < count; i++) {
        if (!measure(argv[1], names[i], &results[i])) {
            fprintf(stderr, "%s can't be compared\n", names[i]);
            return 2;
        }
        print_row(names[i], &results[i]);
        sum.moments += results[i].moments;
        sum.moments_agreeing += results[i].moments_agreeing;
        sum.compared += results[i].compared;
        sum.agreeing += results[i].agreeing;
        sum.missed += results[i].missed;
        sum.doubled += results[i].doubled;
        sum.unexplained += results[i].unexplained;
        sum.parts_compared += results[i].parts_compared;
        sum.parts += results[i].parts;
    }
    print_row("all", &sum);
    fputs(habits, stdout);
    for (int i = 0; i < count; i++)
        print_places(names[i], &results[i]);
    return sum.unexplained * 10000 > sum.compared;
}
