/* weights_table.c - the antiphony of a score as it would be with other weights: the same matches, features and chains as in
 * `spezzato passages`, only their strengths weighed anew. For leave-one-out figures (fit_weights.py).
 *
 *     weights-table WEIGHTS SCORE     WEIGHTS: a line 'NAME VALUE' for each feature, and 'bias VALUE'
 *
 * Prints what `spezzato passages --format json --kind antiphony` would, as far as score_passages.py asks. */
#include "analysis/antiphony/antiphony.h"
#include "analysis/antiphony/chaining/second_thoughts.h"
#include "analysis/antiphony/telling/chain_facts.h"
#include "spezzato/spezzato.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

typedef struct Weights {
    double of[FEATURE_COUNT], bias;
} Weights;

static int read_weights(const char *path, Weights *weights)
{
    char name[64];
    double value;
    int read = 0;
    FILE *file = fopen(path, "r");
    while (file && fscanf(file, "%63s %lf", name, &value) == 2) {
        if (!strcmp(name, "bias") && ++read)
            weights->bias = value;
        for (int f = 0; f < FEATURE_COUNT; f++)
            if (!strcmp(name, feature_name((enum Feature)f)) && ++read)
                weights->of[f] = value;
    }
    if (file)
        fclose(file);
    return read == FEATURE_COUNT + 1;
}

static spz_status weigh_anew(AntiphonySearch *search, const Weights *weights)
{
    for (size_t i = 0; i < search->candidates.count; i++) {
        Candidate *candidate = &search->candidates.at[i];
        double sum = weights->bias + second_thoughts_weight(candidate->evidence.thoughts);
        for (int f = 0; f < FEATURE_COUNT; f++)
            sum += weights->of[f] * candidate->evidence.at[f];
        candidate->evidence.chance = 1 / (1 + exp(-sum));
        candidate->taken = candidate->dropped = false;
    }
    chains_release(&search->chains);
    return antiphony_search_join(search);
}

static void print_chain(const AntiphonySearch *search, const Chain *chain, const char *before)
{
    const Movement *m = search->texture.map->movement;
    spz_kind kind = chain_kind(&search->texture, &search->candidates, chain);
    printf("%s{\"kind\":\"%s\",\"sections\":[\"%s\",\"%s\"],\"first_bar\":\"%s\",\"last_bar\":\"%s\",\"strength\":%.4f}", before,
           spz_kind_name(kind), spz_section_name(chain->sides[0].section), spz_section_name(chain->sides[1].section),
           m->bars[chain->first].number, m->bars[chain->last].number, chain->strength);
}

static spz_status print_movement(const spz_sections *sections, const char *file, const Weights *weights)
{
    AntiphonySearch search;
    spz_status status = antiphony_search_make(sections, &search);
    if (status == SPZ_OK)
        status = weigh_anew(&search, weights);
    printf("{\"file\":\"%s\",\"passages\":[", file);
    for (size_t i = 0; status == SPZ_OK && i < search.chains.count; i++)
        print_chain(&search, &search.chains.at[i], i ? ",\n" : "\n");
    printf("]}");
    antiphony_search_release(&search);
    return status;
}

int main(int count, char **arguments)
{
    Weights weights = {{0}, 0};
    spz_reading *reading = NULL;
    if (count != 3 || !read_weights(arguments[1], &weights) ||
        spz_reading_make(arguments[2], NULL, 0, SPZ_TO_SECTIONS, NULL, &reading) != SPZ_OK)
        return 2;
    spz_status status = SPZ_OK;
    printf("{\"movements\":[");
    for (size_t i = 0; i < spz_reading_count(reading) && status == SPZ_OK; i++) {
        printf(i ? "," : "");
        status = print_movement(spz_reading_at(reading, i).sections, arguments[2], &weights);
    }
    printf("]}\n");
    spz_reading_free(reading);
    return status != SPZ_OK;
}
