/* commands.h - all commands, in the order of `spezzato --help`. The first is what `spezzato SCORE...` does. */
#define COMMANDS(COMMAND) \
    COMMAND(page) \
    COMMAND(seating) \
    COMMAND(passages) \
    COMMAND(sections) \
    COMMAND(streams) \
    COMMAND(check) \
    COMMAND(report) \
    COMMAND(stage) \
    COMMAND(listen) \
    COMMAND(season) \
    COMMAND(library) \
    COMMAND(settings) \
    COMMAND(parts) \
    COMMAND(mark) \
    COMMAND(notes) \
    COMMAND(bowings) \
    COMMAND(rehearsal) \
    COMMAND(completions)
