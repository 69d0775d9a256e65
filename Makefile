# Two commands do everything on a fresh machine: `make demo` (the main job on the bundled season) and `make test`.
# Other targets: all, check (unit and command-line tests without the installing step), check-includes, test-web, engraver, accept, asan, valgrind, bench,
# fuzz, install, clean. Settings that may be given on the command line: CC, CFLAGS, LDFLAGS, BUILD, PREFIX.

CC ?= cc
BUILD ?= build
PREFIX ?= /usr/local
# What the program needs beside itself: where it is installed, and where the program of this tree looks for it.
DATADIR = $(PREFIX)/share/spezzato
BUILD_DATADIR = $(CURDIR)/src/pages/web
CFLAGS ?= -O2 -g
override WARNINGS = -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wstrict-prototypes
XML_CFLAGS = $(shell xml2-config --cflags 2>/dev/null)
XML_LIBS = $(shell xml2-config --libs 2>/dev/null)
LIB_LIBS = $(XML_LIBS) -lz -linih -lcsv -lm -lpthread
override COMPILE = $(CC) -std=c11 $(WARNINGS) -D_POSIX_C_SOURCE=200809L -Iinclude $(XML_CFLAGS) $(CFLAGS) -MMD -MP

LIB_SOURCES := $(sort $(filter-out src/cli/%,$(shell find src -name '*.c')))
CLI_SOURCES := $(sort $(wildcard src/cli/*.c))
UNIT_SOURCES := $(sort $(wildcard tests/unit/*.c))
SUPPORT_SOURCES := $(sort $(filter-out tests/support/sketch.c tests/support/evidence_table.c tests/support/weights_table.c,$(wildcard tests/support/*.c)))
objects = $(patsubst %.c,$(BUILD)/%.o,$(1))

# The phrases of all languages, as a list of keys and a table; the first file has the keys.
MADE := $(BUILD)/made
LANGUAGES := src/wording/languages/english.phrases $(filter-out %/english.phrases,$(sort $(wildcard src/wording/languages/*.phrases)))
# Styles and scripts of the pages, as texts within the program.
OWN_TEXTS := $(sort $(wildcard src/pages/*/*.css src/pages/*/*.js))
LIB_OBJECTS := $(call objects,$(LIB_SOURCES)) $(MADE)/phrases.o $(MADE)/fault_texts.o $(MADE)/own_texts.o
LIBRARY := $(BUILD)/libspezzato.a
PROGRAM := $(BUILD)/spezzato
UNIT := $(BUILD)/unit-tests
SKETCH := $(BUILD)/sketch
SUITES := $(notdir $(basename $(UNIT_SOURCES)))

.PHONY: fit accuracy citation-times fuzz accuracy-notes suite-table all demo test check check-includes asan valgrind bench accept clean install packages sketches
.DELETE_ON_ERROR:

all: $(PROGRAM) $(LIBRARY)

demo: packages
	@echo "Building ..."
	@$(MAKE) -s --no-print-directory all
	@BUILD=$(BUILD) sh tests/support/demo.sh

# What `check` leaves out because it takes minutes: all unit tests under valgrind, every score by the second reader.
test: packages
	@SPEZZATO_WHOLE=yes $(MAKE) --no-print-directory check

check: all $(UNIT) $(SKETCH) $(BUILD)/written check-includes
	@BUILD=$(BUILD) sh tests/support/run-tests.sh

packages:
	@sh tests/support/packages.sh

$(LIBRARY): $(LIB_OBJECTS)
	@rm -f $@
	$(AR) rcs $@ $^

$(PROGRAM): $(call objects,$(CLI_SOURCES)) $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIB_LIBS)

# Each tests/unit/NAME.c defines `void suite_NAME(void)`; the list of suites is made from the file names.
$(BUILD)/suites.c: $(UNIT_SOURCES) Makefile
	@mkdir -p $(BUILD)
	@{ for s in $(SUITES); do echo "void suite_$$s(void);"; done; \
	   echo "void all_suites(void);"; echo "void all_suites(void) {"; for s in $(SUITES); do echo "suite_$$s();"; done; echo "}"; } > $@

$(UNIT): $(call objects,$(UNIT_SOURCES) $(SUPPORT_SOURCES)) $(BUILD)/suites.o $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ -lcunit $(LIB_LIBS)

$(SKETCH): $(call objects,tests/support/sketch.c $(wildcard tests/support/notation*.c))
	$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(XML_LIBS) -lz

# Library code sees its modules from src/ and keeps its symbols to itself; the command line sees only include/.
$(BUILD)/src/cli/%.o: src/cli/%.c
	@mkdir -p $(@D)
	$(COMPILE) -c -o $@ $<
# The program that is built looks in this tree for what it runs, the one that is installed only where that is installed.
$(BUILD)/src/cli/engraver_place.o: override COMPILE += -DSPEZZATO_BUILD_DATADIR='"$(BUILD_DATADIR)"'
$(BUILD)/installed/engraver_place.o: src/cli/engraver_place.c FORCE
	@mkdir -p $(@D)
	$(COMPILE) -DSPEZZATO_DATADIR='"$(DATADIR)"' -c -o $@ $<
$(BUILD)/installed/spezzato: $(filter-out %/engraver_place.o,$(call objects,$(CLI_SOURCES))) $(BUILD)/installed/engraver_place.o $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIB_LIBS)
.PHONY: FORCE
# Results kept from one run to the next name the code that gave them: a sum over every source that bears on a verdict.
VERDICT_SOURCES := $(sort $(shell find src/support src/model src/reader src/settings src/sections src/analysis src/seating src/engine src/season include -name '*.[ch]'))
$(BUILD)/src/season/results/result_terms.o: override COMPILE += -DSPEZZATO_EDITION="\"$(shell cat $(VERDICT_SOURCES) | cksum)\""
$(BUILD)/src/season/results/result_terms.o: $(VERDICT_SOURCES)

$(MADE)/phrases.h $(MADE)/phrases.c $(MADE)/fault_texts.c: src/wording/languages/phrases.awk $(LANGUAGES)
	@mkdir -p $(@D)
	@awk -v make=$(if $(filter %.h,$@),header,$(if $(filter %/fault_texts.c,$@),faults,tables)) -f $< $(LANGUAGES) > $@.part && if cmp -s $@.part $@; then rm $@.part; touch $@; else mv $@.part $@; fi
$(MADE)/own_texts.c: $(OWN_TEXTS) Makefile
	@mkdir -p $(@D)
	@{ echo '#include "pages/own_texts.h"'; for text in $(OWN_TEXTS); do \
	    echo "const char text_$$(basename $$text | tr . _)[] = {"; od -An -v -to1 $$text | sed "s/ *\([0-7][0-7]*\)/'\\\\\1',/g"; echo "0};"; done; } > $@
$(MADE)/%.o: $(MADE)/%.c $(MADE)/phrases.h
	$(COMPILE) -I$(MADE) -Isrc -fvisibility=hidden -c -o $@ $<

$(BUILD)/src/%.o: src/%.c | $(MADE)/phrases.h
	@mkdir -p $(@D)
	$(COMPILE) -I$(MADE) -Isrc -fvisibility=hidden -c -o $@ $<
$(BUILD)/tests/%.o: tests/%.c | $(MADE)/phrases.h
	@mkdir -p $(@D)
	$(COMPILE) -I$(MADE) -Isrc -Itests -c -o $@ $<
$(BUILD)/suites.o: $(BUILD)/suites.c
	$(COMPILE) -c -o $@ $<

check-includes:
	@sh tests/support/check-includes.sh

asan:
	@$(MAKE) --no-print-directory BUILD=$(BUILD)-asan CFLAGS="-O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer" check

valgrind: $(UNIT)
	valgrind -q --error-exitcode=9 --leak-check=full $(UNIT)

# The conductor's pages in a real browser; installs what that needs when it may.
.PHONY: test-web engraver
test-web: all $(SKETCH)
	@BUILD=$(BUILD) sh tests/support/test-web.sh

# Optional: what engraves the passages on the conductor's pages (needs node and npm). `make install` installs it where it is at hand.
engraver:
	cd $(ENGRAVER) && npm ci --no-audit --no-fund --silent

# Takes today's output for right, after a look at it: golden files, README page, reports/.
accept: all $(SKETCH)
	@BUILD=$(BUILD) sh tests/support/accept.sh

# The scores of corpus/ from their sketches.
sketches: $(SKETCH)
	@BUILD=$(BUILD) sh tests/support/sketches.sh

bench: all
	@BUILD=$(BUILD) sh tests/support/bench.sh

# The notes of real scores beside independent tables of them (needs the shared folder).
$(BUILD)/accuracy-notes: $(call objects,tests/support/accuracy/notes.c tests/support/note_table.c) $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIB_LIBS)
citation-times: $(PROGRAM)
	@SPEZZATO=$(PROGRAM) sh tests/support/citation-times.sh > $(BUILD)/citation-times.md; status=$$?; case $$status in 0|3) cp $(BUILD)/citation-times.md docs/citation-times.md ;; *) cat $(BUILD)/citation-times.md ;; esac; exit $$status

accuracy-notes: $(BUILD)/accuracy-notes
	@$(BUILD)/accuracy-notes "$${SPEZZATO_SHARED:-../shared}/scores" > $(BUILD)/accuracy-notes.md; status=$$?; [ $$status = 2 ] || cp $(BUILD)/accuracy-notes.md docs/accuracy-notes.md; exit $$status

# What was composed into corpus/ beside what is found there.
$(BUILD)/corpus-table: $(call objects,tests/support/accuracy/composed.c tests/support/composed.c) $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIB_LIBS)

# All figures of docs/accuracy.md (needs the shared folder and python3).
$(BUILD)/sounds-table: $(call objects,tests/support/accuracy/sounds.c) $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIB_LIBS)
accuracy: all $(BUILD)/accuracy-notes $(BUILD)/corpus-table $(BUILD)/sounds-table
	@BUILD=$(BUILD) sh tests/support/accuracy.sh

# What bears on antiphony in each match of a score; its passages under other weights (see tests/support/fit_weights.py).
$(BUILD)/evidence-table: $(call objects,tests/support/evidence_table.c) $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIB_LIBS)
$(BUILD)/weights-table: $(call objects,tests/support/weights_table.c) $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIB_LIBS)
fit: $(BUILD)/evidence-table $(BUILD)/weights-table
	@BUILD=$(BUILD) sh tests/support/fit.sh

# The unofficial MusicXML test suite, file by file (needs the shared folder).
$(BUILD)/suite-table: $(call objects,tests/support/accuracy/suite.c tests/support/suite_table.c tests/support/score_lines.c) $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIB_LIBS)
suite-table: $(BUILD)/suite-table
	@$(BUILD)/suite-table "$${SPEZZATO_SHARED:-../shared}/suite" > $(BUILD)/suite.md && cp $(BUILD)/suite.md docs/suite.md

# libFuzzer harnesses (clang) under address and undefined-behaviour sanitizers: `make fuzz SECONDS=60`, each for so many seconds.
FUZZ_FLAGS = -O1 -g -fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer
fuzz: all
	@command -v clang >/dev/null 2>&1 || { echo "fuzz: clang is missing (Debian: clang libclang-rt-14-dev)" >&2; exit 1; }
	@$(MAKE) -s --no-print-directory BUILD=$(BUILD)-fuzz CC=clang CFLAGS="$(FUZZ_FLAGS)" $(BUILD)-fuzz/libspezzato.a $(BUILD)-fuzz/tests/support/archive_text.o
	@mkdir -p $(BUILD)/fuzz
	@for harness in xml archive settings analysis; do \
	    clang -std=c11 $(FUZZ_FLAGS) -fsanitize=fuzzer -D_POSIX_C_SOURCE=200809L -Iinclude -Isrc -Itests $(XML_CFLAGS) -o $(BUILD)/fuzz/fuzz_$$harness tests/fuzz/fuzz_$$harness.c \
	        $(BUILD)-fuzz/tests/support/archive_text.o $(BUILD)-fuzz/libspezzato.a $(LIB_LIBS) || exit 1; done
	@BUILD=$(BUILD) SECONDS_EACH="$(or $(SECONDS),60)" sh tests/fuzz/run.sh

# Every note as written, for the second reader of tests/independent (npm; the tests alone use it).
$(BUILD)/written: $(call objects,tests/support/accuracy/written.c) $(LIBRARY)
	$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIB_LIBS)
accuracy-reader: $(BUILD)/written
	@BUILD=$(BUILD) sh tests/independent/all.sh

reliability: all
	@BUILD=$(BUILD) sh tests/support/accuracy/reliability.sh

ENGRAVER := src/pages/web/engraver
install: all $(BUILD)/installed/spezzato
	install -d $(DESTDIR)$(DATADIR)/engraver $(DESTDIR)$(PREFIX)/bin $(DESTDIR)$(PREFIX)/lib $(DESTDIR)$(PREFIX)/include/spezzato $(DESTDIR)$(PREFIX)/share/man/man1
	install -m 755 $(BUILD)/installed/spezzato $(DESTDIR)$(PREFIX)/bin
	install -m 644 $(ENGRAVER)/engrave.mjs $(ENGRAVER)/package.json $(ENGRAVER)/package-lock.json $(DESTDIR)$(DATADIR)/engraver
	if [ -d $(ENGRAVER)/node_modules ]; then cp -R $(ENGRAVER)/node_modules $(DESTDIR)$(DATADIR)/engraver; fi
	install -m 644 $(LIBRARY) $(DESTDIR)$(PREFIX)/lib
	install -m 644 include/spezzato/*.h $(DESTDIR)$(PREFIX)/include/spezzato
	install -m 644 docs/spezzato.1 $(DESTDIR)$(PREFIX)/share/man/man1

clean:
	rm -rf $(BUILD) $(BUILD)-asan

-include $(shell find $(BUILD) -name '*.d' 2>/dev/null)
