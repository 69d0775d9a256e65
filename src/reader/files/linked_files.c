#include "reader/files/linked_files.h"
#include <string.h>

static int hex_digit(char c)
{
    if (c >= '0' && c <= '9')
        return c - '0';
    c = (char)(c | 0x20);
    return c >= 'a' && c <= 'f' ? c - 'a' + 10 : -1;
}

/* The character at *link, which moves behind it: 'mvt%201' is 'mvt 1'. */
static char next_character(const char **link)
{
    const char *at = *link;
    int high = at[0] == '%' ? hex_digit(at[1]) : -1, low = high >= 0 ? hex_digit(at[2]) : -1;
    int value = low >= 0 ? high * 16 + low : 0;
    *link += value > 0 ? 3 : 1;
    return value > 0 ? (char)value : at[0];
}

/* Length of `path` without its last name: 'a/b.xml' -> 'a/'. */
static size_t folder_length(const char *path, size_t length)
{
    while (length > 0 && path[length - 1] != '/')
        length--;
    return length;
}

/* Takes '.' and '..' out of the path. */
static bool settle_names(char *path)
{
    size_t kept = 0;
    for (const char *at = path; *at;) {
        size_t name = strcspn(at, "/"), whole = name + (at[name] == '/');
        if (name == 2 && at[0] == '.' && at[1] == '.') {
            if (kept == 0)
                return false;
            kept = folder_length(path, kept - 1);
        } else if (name != 1 || at[0] != '.') {
            memmove(path + kept, at, whole);
            kept += whole;
        }
        at += whole;
    }
    path[kept] = '\0';
    return kept > 0;
}

bool link_path(const char *from, const char *link, char *path, size_t size)
{
    size_t length = link[0] == '/' ? 0 : folder_length(from, strlen(from));
    if (length >= size)
        return false;
    memcpy(path, from, length);
    link += link[0] == '/';
    while (*link) {
        if (length + 1 >= size)
            return false;
        path[length++] = next_character(&link);
    }
    path[length] = '\0';
    return settle_names(path);
}
