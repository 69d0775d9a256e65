/* Plans as spreadsheet programs save them, where memory ends at any moment: the whole table, or a status; never another table. */
#include "season/table/spreadsheets/spreadsheet.h"
#include "support/scores/archive_text.h"
#include "support/memory.h"
#include "support/suite.h"
#include "support/xml_famine.h"
#include <string.h>

/* The form of the files is the standards' own (OpenDocument 1.3 part 3; ECMA-376 part 1); what they hold is small, and has each kind of cell. */
static const char opendocument[] =
    "<?xml version=\"1.0\" encoding=\"UTF-8\"?><office:document-content xmlns:office=\"o\" xmlns:table=\"t\" xmlns:text=\"x\"><office:body><office:spreadsheet>"
    "<table:table table:name=\"Plan\"><table:table-row><table:table-cell office:value-type=\"string\"><text:p>concert &amp; evening</text:p></table:table-cell>"
    "<table:table-cell office:value-type=\"string\"><text:p>date</text:p></table:table-cell></table:table-row>"
    "<table:table-row table:number-rows-repeated=\"2\"><table:table-cell office:value-type=\"float\" office:value=\"1\"><text:p>1,00</text:p></table:table-cell>"
    "<table:table-cell office:value-type=\"date\" office:date-value=\"2031-10-04\"><text:p>4th</text:p></table:table-cell>"
    "<table:table-cell office:value-type=\"time\" office:time-value=\"PT19H30M00S\"/></table:table-row></table:table></office:spreadsheet></office:body></office:document-content>";
/* A prefix that nothing explains does not make it another element. */
static const char unexplained[] = "<office:document-content><table:table><table:table-row><table:table-cell><text:p>concert</text:p></table:table-cell></table:table-row></table:table></office:document-content>";
static const char workbook[] = "<workbook xmlns:r=\"r\"><sheets><sheet name=\"Plan &lt;1&gt;\" sheetId=\"1\" r:id=\"rId1\"/></sheets></workbook>";
static const char relations[] = "<Relationships><Relationship Id=\"rId1\" Target=\"worksheets/sheet1.xml\"/></Relationships>";
static const char strings[] = "<sst><si><t>concert &amp; evening</t></si><si><r><t>da</t></r><r><t>te</t></r></si></sst>";
static const char styles[] = "<styleSheet><numFmts><numFmt numFmtId=\"170\" formatCode=\"yyyy-mm-dd\"/></numFmts><cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"170\"/></cellXfs></styleSheet>";
static const char worksheet[] = "<worksheet><sheetData><row r=\"1\"><c r=\"A1\" t=\"s\"><v>0</v></c><c r=\"B1\" t=\"s\"><v>1</v></c></row>"
                                "<row r=\"2\"><c r=\"A2\"><v>1</v></c><c r=\"B2\" s=\"1\"><v>48125</v></c><c r=\"C2\" t=\"inlineStr\"><is><t>19:30</t></is></c></row></sheetData></worksheet>";

static void pack_opendocument(ArchiveText *archive)
{
    archive_text_add_string(archive, "content.xml", opendocument);
    archive_text_close(archive);
}

static void pack_office_xml(ArchiveText *archive)
{
    archive_text_add_string(archive, "xl/workbook.xml", workbook);
    archive_text_add_string(archive, "xl/_rels/workbook.xml.rels", relations);
    archive_text_add_string(archive, "xl/sharedStrings.xml", strings);
    archive_text_add_string(archive, "xl/styles.xml", styles);
    archive_text_add_string(archive, "xl/worksheets/sheet1.xml", worksheet);
    archive_text_close(archive);
}

static void pack_unexplained(ArchiveText *archive)
{
    archive_text_add_string(archive, "content.xml", unexplained);
    archive_text_close(archive);
}

static const struct Kept {
    const char *table;
    void (*pack)(ArchiveText *archive);
} kept[] = {
    {"\"concert & evening\",\"date\"\n\"1\",\"2031-10-04\",\"19:30\"\n\"1\",\"2031-10-04\",\"19:30\"\n", pack_opendocument},
    {"\"concert & evening\",\"date\"\n\"1\",\"2031-10-04\",\"19:30\"\n", pack_office_xml},
    {"\"concert\"\n", pack_unexplained},
};

/* The table, or a status. */
static spz_status read_one(const ArchiveText *archive, const char *table)
{
    Buffer csv, fault;
    buffer_init(&csv);
    buffer_init(&fault);
    spz_status status = spreadsheet_text((const char *)archive->bytes, archive->size, NULL, &csv, &fault);
    if (status == SPZ_OK)
        CU_ASSERT_STRING_EQUAL(csv.length ? csv.text : "", table);
    buffer_free(&csv);
    buffer_free(&fault);
    return status;
}

static void a_sheet_is_read_as_its_standard_has_it(void)
{
    for (size_t i = 0; i < COUNT(kept); i++) {
        ArchiveText archive = {0};
        kept[i].pack(&archive);
        CU_ASSERT_EQUAL(read_one(&archive, kept[i].table), SPZ_OK);
        archive_text_free(&archive);
    }
}

static void a_sheet_without_memory_says_so(void)
{
    for (size_t i = 0; i < COUNT(kept); i++) {
        ArchiveText archive = {0};
        kept[i].pack(&archive);
        long request = 1, refused = 0;
        for (bool came = true; came && request < 5000; request++) {
            memory_refuse_once(request);
            spz_status status = read_one(&archive, kept[i].table);
            came = memory_refuse_once(0);
            refused += status == SPZ_NO_MEMORY;
            CU_ASSERT_EQUAL(status, came ? SPZ_NO_MEMORY : SPZ_OK);
        }
        CU_ASSERT_TRUE(refused > 5);
        archive_text_free(&archive);
    }
}

/* The parser's own requests too; what it does without is the whole table. Where a later error hides that memory was short, the file is taken for faulty. */
static void a_sheet_for_whose_parser_there_is_no_memory_is_never_another_sheet(void)
{
    for (size_t i = 0; i < COUNT(kept); i++) {
        ArchiveText archive = {0};
        kept[i].pack(&archive);
        long request = 1, refused = 0;
        xml_famine_begin();
        for (bool came = true; came && request < 20000; request++) {
            xml_famine_refuse(request);
            spz_status status = read_one(&archive, kept[i].table);
            came = xml_famine_came();
            refused += status == SPZ_NO_MEMORY;
            CU_ASSERT_TRUE(status == SPZ_OK || (came && (status == SPZ_NO_MEMORY || status == SPZ_NOT_XML)));
            CU_ASSERT_TRUE(xml_famine_lost() <= XML_FAMINE_LOST_MOST);
        }
        xml_famine_end();
        CU_ASSERT_TRUE(request > 20 && refused > 10);
        archive_text_free(&archive);
    }
}

void suite_spreadsheets(void)
{
    static const struct Statement statements[] = {
        STATEMENT(a_sheet_is_read_as_its_standard_has_it),
        STATEMENT(a_sheet_without_memory_says_so),
        STATEMENT(a_sheet_for_whose_parser_there_is_no_memory_is_never_another_sheet),
    };
    suite_of("plans in spreadsheets", statements, COUNT(statements));
}
