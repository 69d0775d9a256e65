#include "cli/run.h"

static const Option option_played = {"played", 0, NULL, "in playing order, repeats unfolded"};
static const Option *const options[] = {&option_played, &option_settings, &option_set, &option_format, &option_output, &option_verbose, NULL};

static int run(const Arguments *arguments)
{
    Run streams = {SPZ_REPORT_STREAMS, SPZ_TO_SECTIONS, SPZ_AS_CSV, SPZ_REPORT_USUAL, NULL, NULL};
    streams.options.played = arguments_have(arguments, &option_played);
    return run_report(arguments, &streams);
}

const Command command_streams = {
    .name = "streams",
    .purpose = "the notes of every part as they sound, tied notes joined",
    .operands = "SCORE...",
    .help = "Writes a table (CSV when --format is not given) of every note that sounds, part by part: part_name, staff,\n"
            "voice, section, bar, bar_index, beat, onset, duration, pitch, midi, grace, dynamic. Onset and duration are\n"
            "in crotchets from the start, exact ('7/2'); midi is the sounding pitch, 60 for middle C. With several\n"
            "movements two columns follow: file and movement.\n",
    .options = options,
    .run = run,
};
