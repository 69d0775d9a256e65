#include "cli/messages.h"
#include "cli/run.h"
#include <stdio.h>
#include <string.h>

static const Option option_explain = {"explain", 0, "BAR", "who has the line in that bar, what was compared there, and why it was or was not reported"};
static const Option *const options[] = {&option_kind, &option_strength, &option_explain, &option_width, &option_language, &option_settings, &option_set, &option_format, &option_output, &option_verbose, NULL};

/* Some movement of the score has the bar; else one line about which bars there are. */
static bool has_bar(const spz_report_options *report, const spz_reading *reading, const spz_sink *sink)
{
    for (size_t i = 0; i < spz_reading_count(reading); i++) {
        const spz_movement *movement = spz_reading_at(reading, i).movement;
        for (size_t bar = 0; bar < spz_movement_bars(movement); bar++)
            if (!strcmp(spz_movement_bar_number(movement, bar), report->bar))
                return true;
    }
    const spz_movement *movement = spz_reading_at(reading, 0).movement;
    char text[300];
    snprintf(text, sizeof text, "there is no bar %.60s; the first is %.60s, the last %.60s", report->bar, spz_movement_bar_number(movement, 0),
             spz_movement_bar_number(movement, spz_movement_bars(movement) - 1));
    spz_message message = {.severity = SPZ_ERROR, .file = spz_score_file(spz_reading_score(reading)), .text = text};
    sink->say(sink->context, &message);
    return false;
}

static int explain(const Arguments *arguments, const char *bar)
{
    Run run = {.report = SPZ_REPORT_CONSIDERED, .depth = SPZ_TO_PASSAGES, .usual = SPZ_AS_TEXT, .options = SPZ_REPORT_USUAL, .fits = has_bar};
    if (strcmp(arguments_value(arguments, &option_format, "text"), "text") != 0) {
        complain_usage(arguments->command, "--explain is written as text only");
        return EXIT_USAGE;
    }
    run.options.bar = bar;
    return run_report(arguments, &run);
}

static int run(const Arguments *arguments)
{
    const char *bar = arguments_value(arguments, &option_explain, NULL);
    if (bar)
        return explain(arguments, bar);
    return run_report(arguments, &(Run){.report = SPZ_REPORT_PASSAGES, .depth = SPZ_TO_PASSAGES, .usual = SPZ_AS_TEXT, .options = SPZ_REPORT_USUAL});
}

const Command command_passages = {
    .name = "passages",
    .purpose = "all passages on which the seating hangs",
    .operands = "SCORE...",
    .help = "Lists the passages of each movement: sections that answer each other (exchange, hocket, split line,\n"
            "imitation), divided sections, sections that move together (coupling), with bars, rehearsal letters,\n"
            "strength and reason. With --explain, of one bar, named as it is printed: who has the line, and what the\n"
            "others are to it; which calls and answers were compared, what was measured of each, and what became\n"
            "of it.\n",
    .options = options,
    .run = run,
};
