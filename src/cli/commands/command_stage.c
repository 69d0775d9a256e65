#include "cli/command.h"
#include "cli/messages.h"
#include "cli/output.h"
#include <string.h>

static const Option option_arrangement = {"arrangement", 0, "NAME",
                                          "this seating; else the one that the score asks for, or the house's usual one"};
static const Option option_form = {"format", 0, "FORM", "text; svg (the drawing), html (drawing and laying table to print), csv (the laying table)"};
static const Option *const options[] = {&option_arrangement, &option_language, &option_settings, &option_set, &option_year,
                                        &option_form,        &option_output,   NULL};

/* What is to be drawn, as far as a score tells. */
typedef struct Wish {
    const char *arrangement; /* a view into `verdict`, or of the command line */
    spz_section pairs[2][2];
    size_t pair_count;
    spz_verdict *verdict;
    spz_forces forces; /* besides the string sections */
    spz_language language;
} Wish;

static spz_status judge_all(const spz_reading *reading, const spz_settings *settings, const spz_sink *sink, spz_verdict **out)
{
    enum { MOST = 64 };
    const spz_verdict *movements[MOST];
    size_t count = spz_reading_count(reading);
    count = count < MOST ? count : MOST;
    for (size_t i = 0; i < count; i++)
        movements[i] = spz_reading_at(reading, i).verdict;
    return spz_seating_judge_work(movements, count, settings, sink, out);
}

static void take_wish(Wish *wish)
{
    const spz_ranked *best = spz_verdict_ranked(wish->verdict, 0);
    if (!wish->arrangement)
        wish->arrangement = best->name;
    while (wish->pair_count < 2 && spz_verdict_pair(wish->verdict, wish->pair_count, wish->pairs[wish->pair_count]))
        wish->pair_count++;
}

static int ask_score(const char *path, const spz_settings *settings, int year, Wish *wish)
{
    Voice voice = {.most_doubts = 3};
    spz_sink sink = voice_sink(&voice);
    spz_reading *reading = NULL;
    spz_status status = spz_reading_make(path, settings, year, SPZ_TO_SEATING, &sink, &reading);
    if (!status)
        status = judge_all(reading, settings, &sink, &wish->verdict);
    for (size_t i = 0; !status && i < spz_reading_count(reading); i++)
        spz_forces_add(&wish->forces, spz_reading_at(reading, i).sections);
    if (status && !voice.errors)
        complain_status(path, status);
    voice_close(&voice, path);
    spz_reading_free(reading);
    if (status)
        return EXIT_INPUT;
    if (spz_verdict_count(wish->verdict) == 0) {
        char sentence[320];
        spz_message message = {.severity = SPZ_ERROR, .file = path, .text = spz_verdict_sentence(wish->verdict, SPZ_ENGLISH, sentence, sizeof sentence)};
        sink.say(sink.context, &message);
        return EXIT_INPUT;
    }
    take_wish(wish);
    return EXIT_OK;
}

static int draw(const Wish *wish, const spz_settings *settings, spz_format format, const char *path)
{
    Voice voice = {0};
    spz_sink sink = voice_sink(&voice);
    spz_plan *plan = NULL;
    spz_laying *laying = NULL;
    spz_document *document = NULL;
    spz_status status = spz_verdict_plan(wish->verdict, settings, wish->arrangement, &sink, &plan);
    if (!status && format == SPZ_AS_TEXT)
        status = spz_report_stage(plan, wish->pairs, wish->pair_count, format, wish->language, &document);
    else if (!status)
        status = spz_laying_make(plan, &wish->forces, settings, &laying);
    if (laying)
        status = spz_report_laying(laying, wish->pairs, wish->pair_count, format, wish->language, &document);
    spz_laying_free(laying);
    if (status && !voice.errors)
        complain_status(path, status);
    int result = status ? status == SPZ_BAD_ARGUMENT ? EXIT_USAGE : EXIT_INPUT : output_save(document, path);
    spz_document_free(document);
    spz_plan_free(plan);
    return result;
}

static bool read_form(const Arguments *arguments, spz_format *format)
{
    static const struct {
        const char *name;
        spz_format format;
    } forms[] = {{"text", SPZ_AS_TEXT}, {"svg", SPZ_AS_SVG}, {"html", SPZ_AS_HTML}, {"csv", SPZ_AS_CSV}};
    const char *form = arguments_value(arguments, &option_form, "text");
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++)
        if (strcmp(form, forms[i].name) == 0) {
            *format = forms[i].format;
            return true;
        }
    complain_usage(arguments->command, "--format %s: it is text, svg, html or csv", form);
    return false;
}

static int run(const Arguments *arguments)
{
    spz_format format;
    int year;
    spz_settings *settings = NULL;
    char seating[SEATING_NAME_MOST];
    Wish wish = {.arrangement = NULL};
    const char *path = arguments_value(arguments, &option_output, NULL);
    if (arguments->operand_count > 1) {
        complain_usage(arguments->command, "one score at a time; '%s' is one too many", arguments->operands[1]);
        return EXIT_USAGE;
    }
    if (!read_form(arguments, &format) || !arguments_year(arguments, &year))
        return EXIT_USAGE;
    if (arguments->operand_count && path && output_is(path, arguments->operands[0])) {
        complain_usage(arguments->command, "%s is the score; the plan would overwrite it", path);
        return EXIT_USAGE;
    }
    int result = arguments_settings(arguments, &settings);
    if (!result && !arguments_language(arguments, settings, &wish.language))
        result = EXIT_USAGE;
    if (!result)
        result = arguments_seating(arguments, &option_arrangement, settings, true, seating, &wish.arrangement);
    if (!result && arguments->operand_count)
        result = ask_score(arguments->operands[0], settings, year, &wish);
    if (!result)
        result = draw(&wish, settings, format, path);
    spz_verdict_free(wish.verdict);
    spz_settings_free(settings);
    return result;
}

const Command command_stage = {
    .name = "stage",
    .purpose = "a seating drawn to scale: desks, podium, distances and delays",
    .operands = "[SCORE]",
    .help = "Draws the stage of the settings with every desk in its place. With a score it is the seating that the\n"
            "score asks for (all its movements together), and the pairs of sections on which that hangs most;\n"
            "without, the house's usual one. The drawing, the page to print and the table lay out every chair, stool\n"
            "and stand to the centimetre, with the winds, brass and percussion that the score asks for behind the\n"
            "strings, soloists and solo piano (settings [stage]), risers and a grid of metres.\n",
    .options = options,
    .run = run,
};
