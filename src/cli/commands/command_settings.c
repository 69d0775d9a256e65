#include "cli/command.h"
#include "cli/messages.h"
#include "cli/output.h"

static const Option *const options[] = {&option_settings, &option_set, &option_format, &option_output, NULL};

static int run(const Arguments *arguments)
{
    spz_format format;
    spz_settings *settings = NULL;
    spz_document *document = NULL;
    const char *path = arguments_value(arguments, &option_output, NULL);
    if (arguments->operand_count) {
        complain_usage(arguments->command, "'%s' is one word too many; a settings file is given with --settings", arguments->operands[0]);
        return EXIT_USAGE;
    }
    if (!arguments_format(arguments, SPZ_AS_TEXT, &format))
        return EXIT_USAGE;
    int result = arguments_settings(arguments, &settings);
    if (result)
        return result;
    spz_status status = spz_report_settings(settings, format, &document);
    if (status)
        complain_status(path, status);
    result = status ? EXIT_INPUT : output_save(document, path);
    spz_document_free(document);
    spz_settings_free(settings);
    return result;
}

const Command command_settings = {
    .name = "settings",
    .purpose = "everything that can be set: stage, hall, weights, house rules",
    .operands = "",
    .help = "Prints all settings with the values in force, their ranges, units, defaults and sources, as a settings\n"
            "file that --settings takes. With --settings or --set it shows what these change.\n",
    .options = options,
    .run = run,
};
