# Fuzzing: the targets of tests/fuzz, as a replay of their corpus (part of `make check`) and, with
# MODE=fuzz and clang, as programs of libFuzzer. Taken in by the Makefile.
FUZZOBJ  := $(patsubst tests/%.c,$B/tests/%.o,$(filter-out %/entry.c %/test_%.c,$(sort $(wildcard tests/fuzz/*.c))))
NOMAIN   := $(filter-out $B/cli/main.o,$(CLIOBJ))
FUZZERS  := case material tyre table bench readings sheet run

$B/tests/libfuzz.a: $(FUZZOBJ) $(NOMAIN)
	@rm -f $@
	$(Q)$(AR) rcs $@ $^

$B/tests/fuzz/%: $B/tests/fuzz/%.o $B/tests/libfuzz.a $B/tests/libsupport.a $(LIBRARIES)
	@echo "  link    $@"
	$(Q)$(CC) $(SAN) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIBS) -lcmocka

# CASES: how many changes that keep a case JSON come to one that need not; 0: all do.
fuzz-case: CASES := -DCASES=3
fuzz-run: CASES := -DCASES=0
$(FUZZERS:%=fuzz-%): fuzz-%: $B/tests/libfuzz.a $(LIBRARIES)
	@echo "  link    $B/fuzz/$*"
	@mkdir -p $B/fuzz
	$(Q)$(CC_ALL) -Itests -DTARGET=gw_fuzz_$* $(CASES) -fsanitize=fuzzer -o $B/fuzz/$* tests/fuzz/entry.c $^ $(LIBS)

fuzz: ## fuzz every target for SECONDS each, under the sanitizers
	@scripts/setup.sh fuzz
	+@$(ANEW) MODE=fuzz CC=clang $(FUZZERS:%=fuzz-%)
	@scripts/fuzz.sh build/fuzz/fuzz $(or $(SECONDS),60) $(FUZZERS)

.PHONY: fuzz $(FUZZERS:%=fuzz-%)

# The whole program in one process, main under another name, for failures of its surroundings.
$B/tests/faults/program.o: src/cli/main.c $B/flags
	@mkdir -p $(@D) && echo "  compile $< for tests"
	$(Q)$(CC_ALL) -Dmain=gw_program -Wno-missing-prototypes -MMD -MP -c -o $@ $<

$B/tests/faults/allocation: $B/tests/faults/allocation.o $B/tests/faults/program.o $(NOMAIN) $(LIBRARIES)
	@echo "  link    $@"
	$(Q)$(CC) $(SAN) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LIBS)

ifneq ($(MODE),asan)
ifneq ($(MODE),fuzz)
tests: $B/tests/faults/allocation
endif
endif

faults: all ## let memory run out at every allocation of every command, one by one
	@scripts/setup.sh check
	+@$(ANEW) $B/tests/faults/allocation
	@B=$B GIVEWAY=$$PWD/$B/giveway tests/faults/allocations.sh - --all

.PHONY: faults
