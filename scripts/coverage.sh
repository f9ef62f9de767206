#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Sums up what `make coverage` counted: every file of src/, its lines and branches, and below which
# lines no test reaches. The whole table is kept in build/coverage/coverage.txt.
set -euo pipefail
cd "$(dirname "$0")/.."
out=build/coverage
gcovr --root . --filter 'src/' --object-directory $out --exclude-unreachable-branches \
    --txt $out/coverage.txt --print-summary $out >$out/summary.txt
gcovr --root . --filter 'src/' --object-directory $out --exclude-unreachable-branches --branches $out |
    awk '/^(src|File|TOTAL)/ { print }' >$out/branches.txt
cat $out/coverage.txt
grep -E '^(lines|branches)' $out/summary.txt
