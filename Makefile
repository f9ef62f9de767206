# giveway: see `make help`. Everything that is built goes to build/MODE; the source tree stays clean.
MODE    ?= release
PREFIX  ?= /usr/local
DESTDIR ?=
B       := build/$(MODE)
PKGS    := gsl libcjson

CSTD    := -std=c11 -D_POSIX_C_SOURCE=200809L
WARN    := -Wall -Wextra -Wconversion -Wshadow -Wdouble-promotion -Wstrict-prototypes -Wformat=2
CFLAGS  ?= -O2 -g
ifeq ($(MODE),asan)
SAN     := -O1 -fno-omit-frame-pointer -fsanitize=address,undefined -fno-sanitize-recover=all
endif
ifeq ($(MODE),coverage)
SAN     := -O0 --coverage
endif
# No fused multiply-add: the same input must give the same bytes on every machine.
CC_ALL  = $(CC) $(CSTD) -ffp-contract=off -Iinclude -Isrc -I$B $(WARN) $(CFLAGS) $(SAN) \
          $(shell pkg-config --cflags $(PKGS)) -MMD -MP
LIBS    = $(shell pkg-config --libs $(PKGS)) -lm

SRC     := $(sort $(wildcard src/*/*.c))
LIBSRC  := $(filter-out src/cli/%,$(SRC))
CLISRC  := $(filter src/cli/%,$(SRC))
LIBOBJ  := $(LIBSRC:src/%.c=$B/%.o)
CLIOBJ  := $(CLISRC:src/%.c=$B/%.o)
TESTSRC := $(sort $(wildcard tests/*/test_*.c))
TESTS   := $(TESTSRC:tests/%.c=$B/tests/%)
TESTLIB := $(patsubst tests/%.c,$B/tests/%.o,$(wildcard tests/support/*.c))

all: $B/giveway ## build the library and the program

$B/libgiveway.a: $(LIBOBJ)
	@rm -f $@
	$(AR) rcs $@ $^

$B/giveway: $(CLIOBJ) $B/libgiveway.a
	$(CC) $(SAN) $(LDFLAGS) -o $@ $^ $(LIBS)

$B/%.o: src/%.c
	@mkdir -p $(@D)
	$(CC_ALL) -c -o $@ $<

$B/tests/%.o: tests/%.c
	@mkdir -p $(@D)
	$(CC_ALL) -Itests -c -o $@ $<

$B/tests/%: $B/tests/%.o $(TESTLIB) $B/libgiveway.a
	$(CC) $(SAN) $(LDFLAGS) -o $@ $^ $(LIBS) -lcmocka

.SECONDARY:

tests: $(TESTS) ## build the unit tests

unit: $(TESTS) ## run the unit tests alone
	@for t in $(TESTS); do $$t || exit 1; done

clean: ## remove everything that was built
	rm -rf build

help: ## list the targets
	@awk -F ':.*## ' '/^[a-z-]+:.*## /{printf "  %-12s %s\n", $$1, $$2}' $(MAKEFILE_LIST)

.PHONY: all tests unit clean help
-include $(shell find $B -name '*.d' 2>/dev/null)
