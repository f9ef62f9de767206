# giveway: see `make help`. Everything that is built goes to build/MODE; the source tree stays clean.
MODE    ?= release
PREFIX  ?= /usr/local
LIBDIR  ?= $(PREFIX)/lib
DESTDIR ?=
JOBS    ?= 2
V       ?=
B       := build/$(MODE)
Q       := $(if $(V),,@)
PKGS    := gsl libcjson

CSTD    := -std=c11 -D_POSIX_C_SOURCE=200809L
WARN    := -Wall -Wextra -Wconversion -Wshadow -Wdouble-promotion -Wstrict-prototypes -Wformat=2
CC_IS   := $(shell $(CC) --version 2>/dev/null)
ifneq ($(findstring clang,$(CC_IS)),)
# clang takes NAN and INFINITY, which C defines as float, for a slip; gcc finds the real ones. And many
# C libraries keep CMPLX of C11 from it.
WARN    += -Wno-double-promotion
CSTD    += -DCMPLX=__builtin_complex
endif
CFLAGS  ?= -O3 -g
SAN     :=
ifeq ($(MODE),asan)
SAN     := -O1 -fno-omit-frame-pointer -fsanitize=address,undefined -fno-sanitize-recover=all
endif
ifeq ($(MODE),tsan)
SAN     := -O1 -fno-omit-frame-pointer -fsanitize=thread
endif
ifeq ($(MODE),fuzz)
SAN     := -O2 -fno-omit-frame-pointer -fsanitize=address,undefined,float-cast-overflow,fuzzer-no-link -fno-sanitize-recover=all
endif
ifeq ($(MODE),coverage)
SAN     := -O0 --coverage -fprofile-update=atomic
endif
# The packages may not be there yet: `demo` and `check` install them and then start make anew.
PKG_CFLAGS := $(shell pkg-config --cflags $(PKGS) 2>/dev/null)
PKG_LIBS   := $(shell pkg-config --libs $(PKGS) 2>/dev/null)
# One set of objects for the program and both libraries; of the shared one programs see what the public headers say.
PIC     := -fPIC -fvisibility=hidden $(if $(findstring clang,$(CC_IS)),,-fno-semantic-interposition)
# No fused multiply-add: the same input must give the same bytes on every machine.
CC_ALL  := $(CC) $(CSTD) $(PIC) -ffp-contract=off -Iinclude -Isrc -I$B $(WARN) $(CPPFLAGS) $(CFLAGS) $(SAN) $(PKG_CFLAGS)
LIBS    := $(PKG_LIBS) -pthread -lm

SRC      := $(sort $(wildcard src/*/*.c))
CLISRC   := $(filter src/cli/%,$(SRC))
# What shows results, and makes first cases, is the program's; the library ends at study.
SHOWSRC  := $(filter src/format/% src/start/% src/record/% src/chart/% src/show/% src/page/%,$(SRC))
LIBSRC   := $(filter-out $(CLISRC) $(SHOWSRC),$(SRC))
LIBOBJ   := $(LIBSRC:src/%.c=$B/%.o) $B/materials_embedded.o
SHOWOBJ  := $(SHOWSRC:src/%.c=$B/%.o) $B/page_embedded.o
CLIOBJ   := $(CLISRC:src/%.c=$B/%.o)
OBJCOPY ?= objcopy
LIBRARIES := $B/libshow.a $B/libgiveway.a
TESTSRC  := $(sort $(wildcard tests/*/test_*.c))
TESTS    := $(TESTSRC:tests/%.c=$B/tests/%)
# Programs that scripts of tests talk to.
ANSWERS  := $B/tests/casefile/say_faults
TESTOBJ  := $(patsubst tests/%.c,$B/tests/%.o,$(sort $(wildcard tests/support/*.c)))
BENCHES  := $(patsubst tests/%.c,$B/tests/%,$(sort $(wildcard tests/bench/*.c)))

# Make anew with the packages in place; on more than one core unless the caller chose a number.
ANEW = $(MAKE) --no-print-directory $(if $(filter -j% --jobserver%,$(MAKEFLAGS)),,-j$(JOBS))

## Build

all: $B/giveway $B/giveway-result-1.schema.json $B/libgiveway.so $B/installed/libgiveway.a ## build the libraries and the program

$B/libgiveway.a: $(LIBOBJ)
	@rm -f $@
	$(Q)$(AR) rcs $@ $^

# What is installed: one object that keeps to itself whatever the shared library does not show.
$B/installed/libgiveway.a: $(LIBOBJ) $B/libgiveway.so
	@mkdir -p $(@D) && rm -f $@
	$(Q)nm -D --defined-only $B/libgiveway.so | awk '{ print $$3 }' >$B/installed/shown
	$(Q)$(LD) -r -o $B/installed/whole.o $(LIBOBJ)
	$(Q)$(OBJCOPY) --keep-global-symbols=$B/installed/shown $B/installed/whole.o $B/installed/giveway.o
	$(Q)$(AR) rcs $@ $B/installed/giveway.o && rm -f $B/installed/whole.o

# gcc shows functions that it compiles for several processors whatever their visibility: the linker hides them.
# While the version begins with 0, another one after the first point may be another interface.
VERSION := $(shell sed -nE 's/^\#define GW_VERSION "([^"]*)".*/\1/p' include/giveway/version.h)
SONAME  := libgiveway.so.$(basename $(VERSION))

$B/libgiveway.so: $(LIBOBJ)
	@echo "  link    $@"
	$(Q){ echo '{ local: *.resolver;'; nm $^ | sed -n 's/.* \(gw_[a-z_]*\)\.resolver$$/\1;/p'; echo '};'; } >$B/hidden.map
	$(Q)$(CC) $(SAN) $(CFLAGS) $(LDFLAGS) -shared -Wl,-soname,$(SONAME) -Wl,--version-script=$B/hidden.map $(if $(SAN),,-Wl,--no-undefined) -o $@ $^ $(LIBS)

$B/libshow.a: $(SHOWOBJ)
	@rm -f $@
	$(Q)$(AR) rcs $@ $^

# An archive, so that a test takes from the shared fixtures only what it uses.
$B/tests/libsupport.a: $(TESTOBJ)
	@rm -f $@
	$(Q)$(AR) rcs $@ $^

$B/giveway: $(CLIOBJ) $(LIBRARIES)
	@echo "  link    $@"
	$(Q)$(CC) $(SAN) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIBS)

# The default materials as a C file. The folder itself is named so that a file taken away counts too.
$B/materials_embedded.c: scripts/embed_materials.sh materials $(sort $(wildcard materials/*.json))
	@mkdir -p $(@D) && echo "  embed   materials"
	$(Q)scripts/embed_materials.sh $(filter %.json,$^) >$@.part && mv $@.part $@

$B/materials_embedded.o: $B/materials_embedded.c $B/flags
	@echo "  compile $<"
	$(Q)$(CC_ALL) -MMD -MP -c -o $@ $<

# Style, script and template of the report's page, likewise.
$B/page_embedded.c: scripts/embed_page.sh src/page/report.css src/page/report.js src/page/report.html
	@mkdir -p $(@D) && echo "  embed   page"
	$(Q)scripts/embed_page.sh $(filter-out %.sh,$^) >$@.part && mv $@.part $@

# The schema of results, told by the program.
$B/giveway-result-1.schema.json: $B/giveway
	$(Q)$B/giveway help schema >$@.part && mv $@.part $@

$B/page_embedded.o: $B/page_embedded.c $B/flags
	@echo "  compile $<"
	$(Q)$(CC_ALL) -MMD -MP -c -o $@ $<

$B/%.o: src/%.c $B/flags
	@mkdir -p $(@D) && echo "  compile $<"
	$(Q)$(CC_ALL) -MMD -MP -c -o $@ $<

$B/tests/%.o: tests/%.c $B/flags
	@mkdir -p $(@D) && echo "  compile $<"
	$(Q)$(CC_ALL) -Itests -MMD -MP -c -o $@ $<

$B/tests/bench/%: $B/tests/bench/%.o $B/tests/libsupport.a $(LIBRARIES)
	@echo "  link    $@"
	$(Q)$(CC) $(SAN) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIBS)

$B/tests/%: $B/tests/%.o $B/tests/libsupport.a $(LIBRARIES)
	@echo "  link    $@"
	$(Q)$(CC) $(SAN) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIBS) -lcmocka

include scripts/fuzz.mk

# Rewritten only when compiler or flags change, so that objects of two compilers never mix.
$B/flags: FORCE
	@pkg-config --exists $(PKGS) || { echo "giveway needs $(PKGS): run 'make demo', or scripts/setup.sh demo" >&2; exit 1; }
	@mkdir -p $(@D)
	@echo '$(CC_ALL)' | cmp -s - $@ || echo '$(CC_ALL)' >$@

.SECONDARY:
FORCE:

tests: $(TESTS) $(ANSWERS) ## build the unit tests

## Two commands for a fresh machine

demo: ## install what is missing, build, compare the kits of the demonstration case
	@scripts/setup.sh demo
	+@$(ANEW) all
	@scripts/demo.sh $B

check: ## install what is missing, build, run every test
	@scripts/setup.sh check
	+@$(ANEW) run-tests

## For whoever changes the program

run-tests:
	+@$(ANEW) -k all tests; scripts/run-tests.sh $(MODE) $$? $(TESTS)

unit: tests ## run the unit tests alone
	@scripts/run-tests.sh $(MODE) 0 --only $(TESTS)

asan: ## run every test under the address and undefined-behaviour sanitizers
	@scripts/setup.sh check
	+@$(ANEW) MODE=asan run-tests

tsan: ## run studies and commands under the thread sanitizer
	@scripts/setup.sh check
	+@$(ANEW) MODE=tsan all $(addprefix build/tsan/tests/study/,$(notdir $(basename $(wildcard tests/study/test_*.c))))
	@scripts/tsan.sh

bench: ## measure speed and memory, one table
	@scripts/setup.sh check
	+@$(ANEW) run-bench

run-bench: all $(BENCHES)
	@scripts/bench.sh $B

mutants: ## plant faults one at a time; a test must see each
	@scripts/mutants.sh

same-output: all ## compare every output with that of COMMIT
	@scripts/same-output.sh "$(COMMIT)"

lint: ## check layout and code: clang-format, clang-tidy, cppcheck, shellcheck
	@scripts/setup.sh lint
	@scripts/lint.sh

coverage: ## run every test with counters and list the lines that none reaches
	@scripts/setup.sh coverage
	@mkdir -p build/coverage && find build/coverage -name '*.gcda' -delete # the counts of earlier runs
	+@$(ANEW) MODE=coverage run-tests
	@scripts/coverage.sh

install: all ## install under PREFIX (/usr/local), below DESTDIR
	@scripts/install.sh install $B "$(DESTDIR)" "$(PREFIX)" "$(LIBDIR)"

uninstall: ## take away what `install` put there
	@scripts/install.sh uninstall $B "$(DESTDIR)" "$(PREFIX)" "$(LIBDIR)"

validate: ## one table of every check against the world outside
	@scripts/setup.sh check
	+@$(ANEW) all tests
	@scripts/validate.sh $(MODE)

fresh: ## run both commands of the README in a bare Debian, as a new user would (root; SUITE=trixie for another)
	@scripts/fresh.sh $(SUITE)

readme: all ## run the README's examples again and put in what they print now
	@scripts/readme.sh

deb: ## make Debian packages, look them over, try what is in them
	@scripts/setup.sh deb
	@scripts/make-deb.sh

print-flags: # for the scripts that compile on their own
	@echo '$(CC_ALL)'

print-link: # likewise: how to link, then with what
	@echo '$(CC) $(SAN) $(CFLAGS) $(LDFLAGS)'
	@echo '$(LIBS)'

clean: ## remove everything that was built
	rm -rf build

help: ## list the targets
	@awk -F ':.*## ' '/^[a-z-]+:.*## /{printf "  make %-10s %s\n", $$1, $$2}' Makefile
	@echo "  MODE=release|asan|tsan|coverage  CC=gcc|clang  PREFIX=/usr/local  DESTDIR=  JOBS=2  V=1 (show commands)"

.PHONY: all tests unit demo check run-tests asan tsan bench run-bench same-output mutants lint coverage install uninstall validate fresh readme deb print-flags print-link clean help FORCE
-include $(shell find $B -path $B/logs -prune -o -type f -name '*.d' -print 2>/dev/null)
