/* A result appears under its name whole, or not at all. */
#include "writing/document.h"
#include "support/memory.h"
#include "support/suite.h"
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static char folder[128];

static const char *in_folder(const char *name)
{
    static char path[256];
    snprintf(path, sizeof path, "%s/%s", folder, name);
    return path;
}

static bool open_folder(void)
{
    const char *top = getenv("TMPDIR");
    snprintf(folder, sizeof folder, "%s/spezzato-test-XXXXXX", top && strlen(top) < 80 ? top : "/tmp");
    CU_ASSERT_FATAL(mkdtemp(folder) != NULL);
    return true;
}

/* How many entries the folder has. */
static int entries(void)
{
    int count = 0;
    DIR *directory = opendir(folder);
    for (struct dirent *entry; directory && (entry = readdir(directory)) != NULL;)
        count += strcmp(entry->d_name, ".") != 0 && strcmp(entry->d_name, "..") != 0;
    if (directory)
        closedir(directory);
    return count;
}

static spz_document *document_of(const char *text)
{
    Buffer buffer;
    spz_document *document;
    buffer_init(&buffer);
    buffer_puts(&buffer, text);
    CU_ASSERT_EQUAL_FATAL(document_take(&buffer, &document), SPZ_OK);
    return document;
}

static const char *content(const char *path)
{
    static char text[256];
    FILE *file = fopen(path, "rb");
    size_t length = file ? fread(text, 1, sizeof text - 1, file) : 0;
    if (file)
        fclose(file);
    text[length] = '\0';
    return text;
}

static void count_errors(void *context, const spz_message *message)
{
    if (message->severity == SPZ_ERROR && strstr(message->text, "can't be written"))
        ++*(int *)context;
}

static void an_empty_document_has_a_text_too(void)
{
    size_t length = 9;
    spz_document *document = document_of("");
    CU_ASSERT_STRING_EQUAL(spz_document_text(document, &length), "");
    CU_ASSERT_EQUAL(length, 0);
    spz_document_free(document);
    spz_document_free(NULL);
}

static void a_new_file_and_an_old_one_are_written_whole(void)
{
    struct stat about;
    open_folder();
    const char *path = in_folder("page.txt");
    spz_document *document = document_of("first"), *second = document_of("the second");
    CU_ASSERT_EQUAL(spz_document_save(document, path, NULL), SPZ_OK);
    CU_ASSERT_STRING_EQUAL(content(path), "first");
    CU_ASSERT_EQUAL(chmod(path, 0640), 0);
    CU_ASSERT_EQUAL(spz_document_save(second, path, NULL), SPZ_OK);
    CU_ASSERT_STRING_EQUAL(content(path), "the second");
    CU_ASSERT_EQUAL(stat(path, &about), 0);
    CU_ASSERT_EQUAL(about.st_mode & 0777, 0640);
    CU_ASSERT_EQUAL(entries(), 1);
    spz_document_free(document);
    spz_document_free(second);
    unlink(path);
    rmdir(folder);
}

static void a_link_stays_a_link(void)
{
    struct stat about;
    char path[256];
    open_folder();
    spz_document *document = document_of("new");
    snprintf(path, sizeof path, "%s", in_folder("real"));
    FILE *file = fopen(path, "w");
    CU_ASSERT_FATAL(file != NULL);
    fclose(file);
    CU_ASSERT_EQUAL(symlink("real", in_folder("link")), 0);
    CU_ASSERT_EQUAL(spz_document_save(document, in_folder("link"), NULL), SPZ_OK);
    CU_ASSERT_STRING_EQUAL(content(path), "new");
    CU_ASSERT(lstat(in_folder("link"), &about) == 0 && S_ISLNK(about.st_mode));
    spz_document_free(document);
    unlink(in_folder("link"));
    unlink(path);
    rmdir(folder);
}

static void a_folder_or_a_missing_one_is_refused_with_one_line(void)
{
    int errors = 0;
    spz_sink sink = {count_errors, &errors};
    open_folder();
    spz_document *document = document_of("x");
    CU_ASSERT_EQUAL(spz_document_save(document, folder, &sink), SPZ_CANNOT_WRITE);
    CU_ASSERT_EQUAL(spz_document_save(document, in_folder("none/x"), &sink), SPZ_CANNOT_WRITE);
    CU_ASSERT_EQUAL(errors, 2);
    CU_ASSERT_EQUAL(entries(), 0);
    spz_document_free(document);
    rmdir(folder);
}

static void a_full_disk_is_reported(void)
{
    int errors = 0;
    spz_sink sink = {count_errors, &errors};
    struct stat about;
    if (stat("/dev/full", &about) != 0 || !S_ISCHR(about.st_mode)) {
        skipped("this system has no /dev/full");
        return;
    }
    spz_document *document = document_of("x");
    CU_ASSERT_EQUAL(spz_document_save(document, "/dev/full", &sink), SPZ_CANNOT_WRITE);
    CU_ASSERT_EQUAL(errors, 1);
    CU_ASSERT(stat("/dev/full", &about) == 0 && S_ISCHR(about.st_mode));
    spz_document_free(document);
}

static void without_memory_nothing_is_written(void)
{
    open_folder();
    spz_document *document = document_of("x");
    memory_starve_after(1);
    CU_ASSERT_EQUAL(spz_document_save(document, in_folder("page"), NULL), SPZ_NO_MEMORY);
    memory_starve_after(0);
    CU_ASSERT_EQUAL(entries(), 0);
    spz_document_free(document);
    rmdir(folder);
}

void suite_report_document(void)
{
    static const struct Statement statements[] = {
        STATEMENT(an_empty_document_has_a_text_too),
        STATEMENT(a_new_file_and_an_old_one_are_written_whole),
        STATEMENT(a_link_stays_a_link),
        STATEMENT(a_folder_or_a_missing_one_is_refused_with_one_line),
        STATEMENT(a_full_disk_is_reported),
        STATEMENT(without_memory_nothing_is_written),
    };
    suite_of("report: documents", statements, COUNT(statements));
}
