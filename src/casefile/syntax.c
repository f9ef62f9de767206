/* SPDX-License-Identifier: MIT */
#include "casefile/syntax.h"

#include <string.h>

typedef struct cursor {
    const unsigned char *s;
    size_t n, i;
    int depth, max_depth;
    const char *expected;
} cursor;

static bool stop(cursor *c, const char *expected)
{
    if (!c->expected) c->expected = expected;
    return false;
}

static int peek(const cursor *c)
{
    return c->i < c->n ? c->s[c->i] : -1;
}

static bool is_digit(int ch)
{
    return ch >= '0' && ch <= '9';
}

static void skip_space(cursor *c)
{
    while (c->i < c->n && strchr(" \t\r\n", c->s[c->i]) && c->s[c->i]) c->i++;
}

static bool digits(cursor *c)
{
    if (!is_digit(peek(c))) return stop(c, "a digit must follow here");
    while (is_digit(peek(c))) c->i++;
    return true;
}

/* The parser that follows keeps 63 characters of a number; a double needs no more than 25. */
enum { NUMBER_BYTES = 60 };

static bool number(cursor *c)
{
    const size_t start = c->i;
    if (peek(c) == '-') c->i++;
    if (peek(c) == '0') {
        c->i++;
        if (is_digit(peek(c))) return stop(c, "a number must not begin with 0 before other digits");
    } else if (!digits(c)) {
        return false;
    }
    if (peek(c) == '.') {
        c->i++;
        if (!digits(c)) return false;
    }
    if (peek(c) == 'e' || peek(c) == 'E') {
        c->i++;
        if (peek(c) == '+' || peek(c) == '-') c->i++;
        if (!digits(c)) return false;
    }
    if (c->i - start > NUMBER_BYTES) return stop(c, "this number is longer than 60 characters");
    return true;
}

static int hex4(const cursor *c, size_t at)
{
    int v = 0;
    for (size_t k = at; k < at + 4; k++) {
        int ch = k < c->n ? c->s[k] : -1, d;
        if (is_digit(ch))
            d = ch - '0';
        else if ((ch | 0x20) >= 'a' && (ch | 0x20) <= 'f' && ch > 0)
            d = (ch | 0x20) - 'a' + 10;
        else
            return -1;
        v = 16 * v + d;
    }
    return v;
}

/* \uXXXX, in pairs beyond the basic plane. \u0000 would end the text early for every reader in C. */
static bool unicode_escape(cursor *c)
{
    int v = hex4(c, c->i + 1);
    if (v < 0) return stop(c, "\\u must be followed by four hexadecimal digits");
    if (v == 0) return stop(c, "\\u0000 is not allowed in a text");
    bool low = v >= 0xDC00 && v <= 0xDFFF, high = v >= 0xD800 && v <= 0xDBFF;
    if (low) return stop(c, "this \\u escape is the second half of a pair without the first");
    if (high) {
        bool marked = c->i + 6 < c->n && c->s[c->i + 5] == '\\' && c->s[c->i + 6] == 'u';
        int second = marked ? hex4(c, c->i + 7) : -1;
        if (second < 0xDC00 || second > 0xDFFF)
            return stop(c, "this \\u escape is the first half of a pair without the second");
        c->i += 6;
    }
    c->i += 5;
    return true;
}

static bool escape(cursor *c)
{
    c->i++;
    if (peek(c) == 'u') return unicode_escape(c);
    if (peek(c) < 1 || !strchr("\"\\/bfnrt", peek(c))) return stop(c, "no such escape after a backslash");
    c->i++;
    return true;
}

/* Length of the UTF-8 character at the cursor, 0 where there is none (RFC 3629, section 4). */
static size_t utf8_length(const cursor *c)
{
    const unsigned char *s = c->s + c->i;
    size_t left = c->n - c->i;
    if (s[0] < 0x80) return 1;
    size_t n = s[0] >= 0xC2 && s[0] <= 0xDF ? 2 : s[0] >= 0xE0 && s[0] <= 0xEF ? 3 : 4;
    if (s[0] < 0xC2 || s[0] > 0xF4 || left < n) return 0;
    for (size_t k = 1; k < n; k++)
        if ((s[k] & 0xC0) != 0x80) return 0;
    if ((s[0] == 0xE0 && s[1] < 0xA0) || (s[0] == 0xED && s[1] > 0x9F)) return 0;
    if ((s[0] == 0xF0 && s[1] < 0x90) || (s[0] == 0xF4 && s[1] > 0x8F)) return 0;
    return n;
}

static bool string(cursor *c)
{
    c->i++;
    for (;;) {
        int ch = peek(c);
        if (ch < 0) return stop(c, "the text that begins before is not closed by a quote");
        if (ch == '"') break;
        if (ch < 0x20) return stop(c, "the text is not closed by a quote before the line or a tab breaks it");
        if (ch == '\\') {
            if (!escape(c)) return false;
            continue;
        }
        size_t n = utf8_length(c);
        if (!n) return stop(c, "this byte is not UTF-8; save the file as UTF-8");
        c->i += n;
    }
    c->i++;
    return true;
}

static bool word(cursor *c, const char *w)
{
    size_t n = strlen(w);
    if (c->n - c->i < n || memcmp(c->s + c->i, w, n) != 0)
        return stop(
            c, "expected a value: a number, a text in double quotes, a list, an object, true, false or null");
    c->i += n;
    return true;
}

static bool value(cursor *c);

/* At a digit, with a number and a comma right before it. */
static bool after_number(const cursor *c)
{
    const unsigned char *s = c->s + c->i;
    return peek(c) >= '0' && peek(c) <= '9' && c->i > 1 && s[-1] == ',' && s[-2] >= '0' && s[-2] <= '9';
}

static bool key(cursor *c)
{
    skip_space(c);
    if (peek(c) == '}') return stop(c, "expected a key: there is a comma too many before this brace");
    if (after_number(c)) return stop(c, "expected a key: a decimal comma? Write a point, as in 0.5");
    if (peek(c) == '/') return stop(c, "expected a key: a remark is a key of its own, \"//\": \"remark\"");
    if (peek(c) != '"') return stop(c, "expected a key in double quotes");
    if (!string(c)) return false;
    skip_space(c);
    if (peek(c) != ':') return stop(c, "expected a colon after the key");
    c->i++;
    return true;
}

/* The inside of an object ('}') or a list (']'); the grammars differ only in the key. */
static bool members(cursor *c, int close)
{
    if (++c->depth > c->max_depth) return stop(c, "nested too deeply");
    c->i++;
    skip_space(c);
    if (peek(c) != close) {
        for (;;) {
            if (close == '}' && !key(c)) return false;
            skip_space(c);
            if (peek(c) == close) return stop(c, "expected a value: a comma too many, or a key without one");
            if (!value(c)) return false;
            skip_space(c);
            if (peek(c) == close) break;
            if (peek(c) != ',')
                return stop(c, close == '}' ? "expected a comma or a closing brace"
                                            : "expected a comma or a closing bracket");
            c->i++;
        }
    }
    c->i++;
    c->depth--;
    return true;
}

static bool value(cursor *c)
{
    skip_space(c);
    switch (peek(c)) {
    case -1:
        return stop(c, "the file ends where a value is expected");
    case '{':
        return members(c, '}');
    case '[':
        return members(c, ']');
    case '"':
        return string(c);
    case 't':
        return word(c, "true");
    case 'f':
        return word(c, "false");
    case 'n':
        return word(c, "null");
    default:
        return is_digit(peek(c)) || peek(c) == '-' ? number(c) : word(c, "a value");
    }
}

static void locate(const char *text, size_t at, gw_syntax_error *error)
{
    error->line = error->column = 1;
    for (size_t i = 0; i < at; i++) {
        if (text[i] == '\n') {
            error->line++;
            error->column = 1;
        } else if (((unsigned char)text[i] & 0xC0) != 0x80) {
            error->column++;
        }
    }
}

bool gw_json_syntax(const char *text, size_t size, int max_depth, gw_syntax_error *error)
{
    cursor c = { (const unsigned char *)text, size, 0, 0, max_depth, NULL };
    bool ok = value(&c);
    if (ok) {
        skip_space(&c);
        if (c.i < c.n) ok = stop(&c, "nothing may follow the end of the top-level value");
    }
    if (!ok) {
        *error = (gw_syntax_error){ .expected = c.expected, .at = c.i };
        locate(text, c.i, error);
    }
    return ok;
}
