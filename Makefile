# Two commands do everything on a fresh machine: `make demo` (the main job on the bundled season) and `make test`.
# Other targets: all, check (unit and command-line tests without the installing step and without what takes minutes), check-includes, test-web,
# engraver, accept, asan, valgrind, bench, fuzz, install, uninstall, deb, clean, distclean.
# Settings that may be given on the command line: SOUND (no: without `listen`'s library of sound; else it is built where its libraries are), CC, CFLAGS, CPPFLAGS, LDFLAGS, AR, OBJCOPY, BUILD; for `install` PREFIX, bindir, libdir,
# includedir, datadir, mandir, docdir, DESTDIR. What was built with other settings, or from sources that are gone, is built anew.

CC ?= cc
OBJCOPY ?= objcopy
INSTALL ?= install
BUILD ?= build
CFLAGS ?= -O2 -g
PREFIX ?= /usr/local
prefix = $(PREFIX)
bindir = $(prefix)/bin
libdir = $(prefix)/lib
includedir = $(prefix)/include
datadir = $(prefix)/share
mandir = $(datadir)/man
docdir = $(datadir)/doc/spezzato
pkgconfigdir = $(libdir)/pkgconfig
bash_completions = $(datadir)/bash-completion/completions
zsh_completions = $(datadir)/zsh/vendor-completions
fish_completions = $(datadir)/fish/vendor_completions.d
# What the program needs beside itself: where it is installed, and where the program of this tree looks for it.
own_data = $(datadir)/spezzato
BUILD_DATADIR = $(CURDIR)/src/pages/web

override WARNINGS = -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wstrict-prototypes
XML_CFLAGS := $(shell pkg-config --cflags libxml-2.0 2>/dev/null || xml2-config --cflags 2>/dev/null)
XML_LIBS := $(shell pkg-config --libs libxml-2.0 2>/dev/null || xml2-config --libs 2>/dev/null)
LIB_LIBS = $(XML_LIBS) -lz -linih -lcsv -lsqlite3 -lm -lpthread -ldl
# What makes a passage audible is a library of its own, loaded when somebody listens; it is optional.
SOUND_MODULES = fluidsynth libmysofa sndfile fftw3f libebur128
SOUND ?= $(if $(shell pkg-config --exists $(SOUND_MODULES) 2>/dev/null && echo there),yes,no)
ifneq ($(SOUND),no)
SOUND_CFLAGS := $(shell pkg-config --cflags $(SOUND_MODULES))
SOUND_LIBS := $(shell pkg-config --libs $(SOUND_MODULES))
SOUND_SOURCES := $(sort $(wildcard src/sound/rendering/*.c))
SOUND_LIBRARY := $(BUILD)/spezzato-sound.so
SOUND_HERE := $(abspath $(SOUND_LIBRARY))
endif
override BASE = $(CC) -std=c11 $(WARNINGS) -D_POSIX_C_SOURCE=200809L -Iinclude $(XML_CFLAGS) $(CPPFLAGS) $(CFLAGS)
override COMPILE = $(BASE) $(EXTRA) -MMD -MP
override LINK = $(CC) $(CFLAGS) $(LDFLAGS)
# Objects of the library go into a shared library too, and keep to themselves what no public header declares.
override LIBRARY_CODE = -I$(MADE) -Isrc -fPIC -fno-semantic-interposition -fvisibility=hidden

LIB_SOURCES := $(sort $(filter-out src/cli/% src/sound/rendering/%,$(shell find src -name '*.c')))
CLI_SOURCES := $(sort $(shell find src/cli -name '*.c'))
UNIT_SOURCES := $(sort $(wildcard tests/unit/*.c tests/unit/*/*.c))
SUPPORT_SOURCES := $(sort $(wildcard tests/support/*.c tests/support/*/*.c))
objects = $(patsubst %.c,$(BUILD)/%.o,$(1))

# The phrases of all languages, as a list of keys and a table; the first file has the keys.
MADE := $(BUILD)/made
LANGUAGES := src/wording/languages/english.phrases $(filter-out %/english.phrases,$(sort $(wildcard src/wording/languages/*.phrases)))
# Styles and scripts of the pages, as texts within the program.
OWN_TEXTS := $(sort $(shell find src/pages -path '*/node_modules' -prune -o \( -name '*.css' -o -name '*.js' \) -print) $(wildcard src/store/*.sql))
LIB_OBJECTS := $(call objects,$(LIB_SOURCES)) $(MADE)/phrases.o $(MADE)/fault_texts.o $(MADE)/seating_texts.o $(MADE)/own_texts.o
CLI_OBJECTS := $(call objects,$(CLI_SOURCES))
SOUND_OBJECTS := $(call objects,$(SOUND_SOURCES))
PROGRAM := $(BUILD)/spezzato
UNIT := $(BUILD)/unit-tests
SKETCH := $(BUILD)/sketch
FIELDS := $(BUILD)/fields
SUITES := $(notdir $(basename $(UNIT_SOURCES)))

# The version stands in one place.
VERSION := $(shell awk '$$2 ~ /^SPZ_VERSION_(MAJOR|MINOR|PATCH)$$/ { printf "%s%s", dot, $$3; dot = "." }' include/spezzato/version.h)
digits := $(subst ., ,$(VERSION))
# Until 1.0 each minor number is a library of its own (version.h).
SONAME := libspezzato.so.$(if $(filter 0,$(word 1,$(digits))),0.$(word 2,$(digits)),$(word 1,$(digits)))
# Three forms: for others to link (libspezzato.a, the shared library), both with the names of the public headers alone; for our own tests, with
# all names.
LIBRARY := $(BUILD)/libspezzato.a
SHARED := $(BUILD)/libspezzato.so.$(VERSION)
INTERNAL := $(BUILD)/internal.a

.PHONY: all demo test check check-includes packages asan valgrind bench accept clean distclean install uninstall deb sketches
.PHONY: fit accuracy citation-times fuzz accuracy-notes accuracy-reader reliability suite-table tests-built FORCE
.DELETE_ON_ERROR:

all: $(PROGRAM) $(LIBRARY) $(SHARED) $(SOUND_LIBRARY) $(BUILD)/installed/spezzato

demo:
	@sh tests/support/packages.sh build
	@echo "Building the program in $(BUILD)/ ..."
	@$(MAKE) -s --no-print-directory $(PROGRAM)
	@BUILD=$(BUILD) sh tests/support/demo.sh

# What `check` leaves out because it takes minutes: all unit tests under valgrind, every score by the second reader.
test: packages
	@echo "Building the program and its tests in $(BUILD)/ ..."
	@$(MAKE) -s --no-print-directory tests-built
	@SPEZZATO_WHOLE=yes $(MAKE) -s --no-print-directory check

tests-built: all $(UNIT) $(SKETCH) $(FIELDS) $(BUILD)/written $(BUILD)/host-spezzato
check: tests-built check-includes
	@BUILD=$(BUILD) sh tests/support/run-tests.sh

packages:
	@sh tests/support/packages.sh test

# Files of $(BUILD) that say how and from what it was built: they change only when that changes, and what depends on them with them.
quoted = '$(subst ','\'',$(1))'
define remember
@mkdir -p $(@D)
@printf '%s\n' $(call quoted,$(1)) | cmp -s - $@ || printf '%s\n' $(call quoted,$(1)) > $@
endef
$(BUILD)/flags: FORCE
	$(call remember,$(BASE) $(LIBRARY_CODE) $(LDFLAGS) $(AR) $(OBJCOPY) $(SOUND) $(SOUND_HERE))
$(BUILD)/sources: FORCE
	$(call remember,$(LIB_OBJECTS) $(OWN_TEXTS) $(SOUND_OBJECTS) $(CLI_SOURCES) $(UNIT_SOURCES) $(SUPPORT_SOURCES) $(VERSION))
$(BUILD)/place: FORCE
	$(call remember,$(own_data) $(libdir))
# Compiler and libraries are there, in the folders of CPPFLAGS too; says what is missing.
$(BUILD)/found: $(BUILD)/flags
	@CC=$(call quoted,$(CC) $(CPPFLAGS)) sh tests/support/packages.sh build tell && touch $@

$(INTERNAL): $(LIB_OBJECTS) $(BUILD)/sources
	@rm -f $@
	$(AR) rcs $@ $(LIB_OBJECTS)

# One object of all, so that names that are hidden can be made local.
$(BUILD)/libspezzato.o: $(LIB_OBJECTS) $(BUILD)/sources
	$(CC) -r -nostdlib $(filter -m% -flto%,$(CFLAGS)) $(if $(filter -flto%,$(CFLAGS)),-flinker-output=nolto-rel) -o $@ $(LIB_OBJECTS)
	$(OBJCOPY) --localize-hidden $@
$(LIBRARY): $(BUILD)/libspezzato.o
	@rm -f $@
	$(AR) rcs $@ $<

$(SHARED): $(LIB_OBJECTS) $(BUILD)/sources src/about/exports.map
	$(LINK) -shared -Wl,-soname,$(SONAME) -Wl,--version-script=src/about/exports.map -o $@ $(LIB_OBJECTS) $(LIB_LIBS)
	@ln -sf $(@F) $(BUILD)/$(SONAME)
	@ln -sf $(SONAME) $(BUILD)/libspezzato.so

$(PROGRAM): $(CLI_OBJECTS) $(LIBRARY)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)

# Each tests/unit/MODULE/NAME.c defines `void suite_NAME(void)`; the list of suites is made from the file names.
$(BUILD)/suites.c: $(BUILD)/sources Makefile
	@mkdir -p $(BUILD)
	@{ echo '#include "tests/support/suite.h"'; for s in $(SUITES); do echo "void suite_$$s(void);"; done; \
	   echo "void all_suites(void) {"; for s in $(SUITES); do echo "if (suite_wanted(\"$$s\")) suite_$$s();"; done; echo "}"; } > $@

$(UNIT): $(call objects,$(UNIT_SOURCES) $(SUPPORT_SOURCES)) $(BUILD)/suites.o $(SOUND_OBJECTS) $(INTERNAL)
	$(LINK) -o $@ $(filter %.o %.a,$^) -lcunit $(SOUND_LIBS) $(LIB_LIBS)

ifdef SOUND_LIBRARY
$(UNIT): | $(SOUND_LIBRARY)
$(SOUND_LIBRARY): $(SOUND_OBJECTS) $(INTERNAL)
	$(LINK) -shared -Wl,--exclude-libs,ALL -o $@ $(SOUND_OBJECTS) $(INTERNAL) $(SOUND_LIBS) $(LIB_LIBS)
# Long sums over spectra take well over twice as long where the compiler does not vectorise them.
$(SOUND_OBJECTS): private EXTRA = $(SOUND_CFLAGS) $(if $(filter -O2,$(CFLAGS)),-O3)
$(call objects,$(filter tests/unit/sound/%,$(UNIT_SOURCES))): private EXTRA = -DSPEZZATO_SOUND='"$(SOUND_HERE)"' $(SOUND_CFLAGS)
$(BUILD)/src/cli/places/sound_place.o: private EXTRA = -DSPEZZATO_SOUND_PLACE='"$(SOUND_HERE)"'
$(BUILD)/installed/places/sound_place.o: private EXTRA = -DSPEZZATO_SOUND_PLACE='"$(libdir)/spezzato/sound.so"'
endif

$(SKETCH): $(call objects,tests/tools/sketch.c $(wildcard tests/support/notation/*.c))
	$(LINK) -o $@ $(filter %.o %.a,$^) $(XML_LIBS) -lz

# The program as part of a host that has chosen a language.
$(BUILD)/host-spezzato: $(CLI_OBJECTS) $(call objects,tests/host/host_locale.c) $(LIBRARY)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)

# Library code sees its modules from src/ and keeps its symbols to itself; the command line may include its own folders and include/ alone
# (check-includes).
OBJECT_NEEDS := $(BUILD)/flags | $(BUILD)/found $(MADE)/phrases.h
$(BUILD)/src/cli/%.o: src/cli/%.c $(OBJECT_NEEDS)
	@mkdir -p $(@D)
	$(COMPILE) -Isrc -c -o $@ $<
$(BUILD)/src/%.o: src/%.c $(OBJECT_NEEDS)
	@mkdir -p $(@D)
	$(COMPILE) $(LIBRARY_CODE) -c -o $@ $<
$(BUILD)/tests/%.o: tests/%.c $(OBJECT_NEEDS)
	@mkdir -p $(@D)
	$(COMPILE) -I$(MADE) -Isrc -Itests -c -o $@ $<
$(BUILD)/suites.o: $(BUILD)/suites.c $(OBJECT_NEEDS)
	$(COMPILE) -I. -c -o $@ $<
$(MADE)/%.o: $(MADE)/%.c $(OBJECT_NEEDS)
	$(COMPILE) $(LIBRARY_CODE) -c -o $@ $<

# The program that is built looks in this tree for what it runs, the one that is installed only where that is installed.
$(BUILD)/src/cli/places/engraver_place.o: private EXTRA = -DSPEZZATO_BUILD_DATADIR='"$(BUILD_DATADIR)"'
$(BUILD)/installed/places/engraver_place.o: private EXTRA = -DSPEZZATO_DATADIR='"$(own_data)"'
$(BUILD)/installed/places/%_place.o: src/cli/places/%_place.c $(BUILD)/place $(OBJECT_NEEDS)
	@mkdir -p $(@D)
	$(COMPILE) -Isrc -c -o $@ $<
INSTALLED_PLACES := $(BUILD)/installed/places/engraver_place.o $(BUILD)/installed/places/sound_place.o
$(BUILD)/installed/spezzato: $(filter-out %/engraver_place.o %/sound_place.o,$(CLI_OBJECTS)) $(INSTALLED_PLACES) $(LIBRARY)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)

# Results kept from one run to the next name the code that gave them: a sum over every source that bears on a verdict.
VERDICT_SOURCES := $(sort $(shell find src/support src/model src/reader src/settings src/sections src/analysis src/seating src/engine src/season src/store src/library include -name '*.[ch]'))
$(BUILD)/src/season/results/result_terms.o: private EXTRA = -DSPEZZATO_EDITION="\"$(shell cat $(VERDICT_SOURCES) | cksum)\""
$(BUILD)/src/season/results/result_terms.o: $(VERDICT_SOURCES)

$(MADE)/phrases.h $(MADE)/phrases.c $(MADE)/fault_texts.c $(MADE)/seating_texts.c: src/wording/languages/phrases.awk $(LANGUAGES)
	@mkdir -p $(@D)
	@awk -v make=$(if $(filter %.h,$@),header,$(if $(filter %/fault_texts.c,$@),faults,$(if $(filter %/seating_texts.c,$@),seatings,tables))) -f $< $(LANGUAGES) > $@.part && if cmp -s $@.part $@; then rm $@.part; touch $@; else mv $@.part $@; fi
$(MADE)/own_texts.c: $(OWN_TEXTS) $(BUILD)/sources Makefile
	@mkdir -p $(@D)
	@{ echo '#include "pages/own_texts.h"'; for text in $(OWN_TEXTS); do \
	    echo "const char text_$$(basename $$text | tr . _)[] = {"; od -An -v -to1 $$text | sed "s/ *\([0-7][0-7]*\)/'\\\\\1',/g"; echo "0};"; done; } > $@

check-includes:
	@sh tests/support/check-includes.sh

asan:
	@$(MAKE) --no-print-directory BUILD=$(BUILD)-asan CFLAGS="-O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer" check

valgrind: $(UNIT)
	valgrind -q --error-exitcode=9 --leak-check=full $(UNIT)

# The conductor's pages in a real browser; installs what that needs when it may.
.PHONY: test-web engraver sounds
test-web: all $(SKETCH)
	@BUILD=$(BUILD) sh tests/support/test-web.sh

# The Slurm recipe of docs/scale.md on a Slurm of one node; installs what that needs when it may.
.PHONY: test-slurm
test-slurm: all
	@BUILD=$(BUILD) sh tests/support/slurm.sh && echo "the Slurm recipe gives the same plan"

# The program on another C library (musl), its tests run there and its pages held against this system's.
.PHONY: test-musl
test-musl: all
	@BUILD=$(BUILD) sh tests/support/musl.sh

# Optional: what engraves the passages on the conductor's pages (needs node and npm). `make install` installs it where it is at hand.
engraver:
	cd $(ENGRAVER) && npm ci --no-audit --no-fund --silent

# Optional: the libraries that make a passage audible, and a SoundFont to play from.
sounds:
	@sh tests/support/packages.sh sound
	@$(MAKE) -s --no-print-directory all

# The lists of fields and columns in docs/, from the program's tables.
$(FIELDS): $(call objects,tests/tools/docs/fields.c) $(INTERNAL)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)

# Takes today's output for right, after a look at it: golden files, README page, reports/.
accept: all $(SKETCH) $(FIELDS)
	@BUILD=$(BUILD) sh tests/tools/accept.sh

# The scores of corpus/ from their sketches.
sketches: $(SKETCH)
	@BUILD=$(BUILD) sh tests/tools/sketches.sh

bench: all
	@BUILD=$(BUILD) sh tests/tools/bench.sh
	@echo; echo "A library of scores:"; BUILD=$(BUILD) sh tests/tools/bench-library.sh

# The notes of real scores beside independent tables of them (needs the shared folder).
$(BUILD)/accuracy-notes: $(call objects,tests/tools/accuracy/notes.c tests/support/tables/note_table.c) $(INTERNAL)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)
citation-times: $(PROGRAM)
	@SPEZZATO=$(PROGRAM) sh tests/tools/citation-times.sh > $(BUILD)/citation-times.md; status=$$?; case $$status in 0|3) cp $(BUILD)/citation-times.md docs/citation-times.md ;; *) cat $(BUILD)/citation-times.md ;; esac; exit $$status

accuracy-notes: $(BUILD)/accuracy-notes
	@$(BUILD)/accuracy-notes "$${SPEZZATO_SHARED:-../shared}/scores" > $(BUILD)/accuracy-notes.md; status=$$?; [ $$status = 2 ] || cp $(BUILD)/accuracy-notes.md docs/accuracy-notes.md; exit $$status

# What was composed into corpus/ beside what is found there.
$(BUILD)/corpus-table: $(call objects,tests/tools/accuracy/composed.c tests/support/tables/composed.c) $(INTERNAL)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)

# All figures of docs/accuracy.md (needs the shared folder and python3).
$(BUILD)/sounds-table: $(call objects,tests/tools/accuracy/sounds.c) $(INTERNAL)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)
accuracy: all $(BUILD)/accuracy-notes $(BUILD)/corpus-table $(BUILD)/sounds-table $(BUILD)/evidence-table $(BUILD)/roles-table $(BUILD)/boundaries-table
	@BUILD=$(BUILD) sh tests/tools/accuracy.sh

# What bears on antiphony in each match of a score; its passages under other weights (see tests/tools/fit_weights.py).
$(BUILD)/evidence-table: $(call objects,tests/tools/evidence_table.c) $(INTERNAL)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)
# Where groups of notes begin in each string section (see tests/tools/fit_boundaries.py).
$(BUILD)/boundaries-table: $(call objects,tests/tools/boundaries_table.c) $(INTERNAL)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)
# What each voice does in each beat, and who has the line (see tests/tools/fit_roles.py).
$(BUILD)/roles-table: $(call objects,tests/tools/roles_table.c) $(INTERNAL)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)
$(BUILD)/weights-table: $(call objects,tests/tools/weights_table.c) $(INTERNAL)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)
fit: $(BUILD)/evidence-table $(BUILD)/weights-table
	@BUILD=$(BUILD) sh tests/tools/fit.sh

# The unofficial MusicXML test suite, file by file (needs the shared folder).
$(BUILD)/suite-table: $(call objects,tests/tools/accuracy/suite.c tests/support/tables/suite_table.c tests/support/scores/score_lines.c) $(INTERNAL)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)
suite-table: $(BUILD)/suite-table
	@$(BUILD)/suite-table "$${SPEZZATO_SHARED:-../shared}/suite" > $(BUILD)/suite.md && cp $(BUILD)/suite.md docs/suite.md

# libFuzzer harnesses (clang) under address and undefined-behaviour sanitizers: `make fuzz SECONDS=60`, each for so many seconds; HARNESSES="music:300 stage": only these,
# one with seconds of its own.
HARNESSES ?= xml archive settings analysis music season library stage
FUZZ_FLAGS = -O1 -g -fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer
fuzz: all $(SKETCH)
	@command -v clang >/dev/null 2>&1 || { echo "fuzz: clang is missing (Debian: clang libclang-rt-14-dev)" >&2; exit 1; }
	@$(MAKE) -s --no-print-directory BUILD=$(BUILD)-fuzz CC=clang CFLAGS="$(FUZZ_FLAGS)" $(BUILD)-fuzz/internal.a $(BUILD)-fuzz/tests/support/scores/archive_text.o
	@mkdir -p $(BUILD)/fuzz
	@for harness in $(foreach wanted,$(HARNESSES),$(firstword $(subst :, ,$(wanted)))); do \
	    clang -std=c11 $(FUZZ_FLAGS) -fsanitize=fuzzer -D_POSIX_C_SOURCE=200809L -Iinclude -Isrc -Itests $(XML_CFLAGS) -o $(BUILD)/fuzz/fuzz_$$harness tests/fuzz/fuzz_$$harness.c tests/fuzz/score_mutator.c tests/fuzz/choices.c \
	        $(BUILD)-fuzz/tests/support/scores/archive_text.o $(BUILD)-fuzz/internal.a $(LIB_LIBS) || exit 1; done
	@BUILD=$(BUILD) HARNESSES="$(HARNESSES)" SECONDS_EACH="$(or $(SECONDS),60)" sh tests/fuzz/run.sh

# Every note as written, for the second reader of tests/independent (npm; the tests alone use it).
$(BUILD)/written: $(call objects,tests/tools/accuracy/written.c) $(INTERNAL)
	$(LINK) -o $@ $(filter %.o %.a,$^) $(LIB_LIBS)
accuracy-reader: $(BUILD)/written
	@BUILD=$(BUILD) sh tests/independent/all.sh

reliability: all
	@BUILD=$(BUILD) sh tests/tools/accuracy/reliability.sh

# Into PREFIX or the folders named on top, below DESTDIR where that is given (it may hold blanks).
ENGRAVER := src/pages/web/engraver
HEADERS := $(notdir $(sort $(wildcard include/spezzato/*.h)))
to = "$(DESTDIR)$(1)"
below_prefix = $(patsubst $(prefix)/%,$${prefix}/%,$(1))
install: all
	$(INSTALL) -d $(call to,$(bindir)) $(call to,$(libdir)) $(call to,$(pkgconfigdir)) $(call to,$(includedir)/spezzato) $(call to,$(mandir)/man1) \
	    $(call to,$(docdir)) $(call to,$(own_data)/engraver)
	$(INSTALL) -m 755 $(BUILD)/installed/spezzato $(call to,$(bindir)/spezzato)
	if [ -n "$(SOUND_LIBRARY)" ]; then $(INSTALL) -d $(call to,$(libdir)/spezzato) && $(INSTALL) -m 644 $(SOUND_LIBRARY) $(call to,$(libdir)/spezzato/sound.so); fi
	$(INSTALL) -m 644 $(LIBRARY) $(call to,$(libdir)/libspezzato.a)
	$(INSTALL) -m 644 $(SHARED) $(call to,$(libdir)/$(notdir $(SHARED)))
	ln -sf $(notdir $(SHARED)) $(call to,$(libdir)/$(SONAME))
	ln -sf $(SONAME) $(call to,$(libdir)/libspezzato.so)
	$(INSTALL) -m 644 $(addprefix include/spezzato/,$(HEADERS)) $(call to,$(includedir)/spezzato)
	sed -e 's|@prefix@|$(prefix)|' -e 's|@libdir@|$(call below_prefix,$(libdir))|' -e 's|@includedir@|$(call below_prefix,$(includedir))|' \
	    -e 's|@version@|$(VERSION)|' -e 's|@libraries@|$(LIB_LIBS)|' src/about/spezzato.pc.in > $(call to,$(pkgconfigdir)/spezzato.pc)
	chmod 644 $(call to,$(pkgconfigdir)/spezzato.pc)
	sed 's|^\(\.TH SPEZZATO 1 "[0-9-]*"\) "spezzato"|\1 "spezzato $(VERSION)"|' docs/spezzato.1 > $(call to,$(mandir)/man1/spezzato.1)
	chmod 644 $(call to,$(mandir)/man1/spezzato.1)
	$(INSTALL) -m 644 README.md LICENSE docs/*.md $(call to,$(docdir))
	$(INSTALL) -m 644 $(ENGRAVER)/engrave.mjs $(ENGRAVER)/package.json $(ENGRAVER)/package-lock.json $(call to,$(own_data)/engraver)
	$(INSTALL) -d $(call to,$(bash_completions)) $(call to,$(zsh_completions)) $(call to,$(fish_completions))
	$(PROGRAM) completions bash > $(call to,$(bash_completions)/spezzato)
	$(PROGRAM) completions zsh > $(call to,$(zsh_completions)/_spezzato)
	$(PROGRAM) completions fish > $(call to,$(fish_completions)/spezzato.fish)
	chmod 644 $(call to,$(bash_completions)/spezzato) $(call to,$(zsh_completions)/_spezzato) $(call to,$(fish_completions)/spezzato.fish)
	if [ -d $(ENGRAVER)/node_modules ]; then cp -R $(ENGRAVER)/node_modules $(call to,$(own_data)/engraver); fi

uninstall:
	rm -f $(call to,$(bindir)/spezzato) $(call to,$(libdir)/libspezzato.a) $(call to,$(libdir)/$(notdir $(SHARED))) $(call to,$(libdir)/$(SONAME)) \
	    $(call to,$(libdir)/libspezzato.so) $(call to,$(pkgconfigdir)/spezzato.pc) $(call to,$(mandir)/man1/spezzato.1)
	rm -f $(call to,$(bash_completions)/spezzato) $(call to,$(zsh_completions)/_spezzato) $(call to,$(fish_completions)/spezzato.fish)
	rm -rf $(call to,$(includedir)/spezzato) $(call to,$(libdir)/spezzato) $(call to,$(docdir)) $(call to,$(own_data))

# Packages for Debian in $(BUILD)/deb (needs debhelper).
deb: all
	@BUILD=$(BUILD) sh src/about/debian/build.sh

clean:
	rm -rf $(BUILD) $(BUILD)-asan $(BUILD)-fuzz $(BUILD)-musl

# Everything that is not in the source: also what npm put beside the engraver and the tests.
distclean: clean
	rm -rf $(ENGRAVER)/node_modules tests/web/node_modules tests/independent/node_modules

-include $(shell find $(BUILD) -name '*.d' -type f 2>/dev/null)
