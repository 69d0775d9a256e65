#!/bin/sh
# A plan as a spreadsheet program saves it: .xlsx written by openpyxl, .ods by odfpy (independent libraries), gives the same season as the table in CSV, whatever
# the sheet; what is no spreadsheet is refused. A hand-made .xlsx has what these two don't write: shared texts in pieces, texts in the cell, the 1904 date base.
. tests/support/cli.sh
at_hand python3 || exit 0
python=$(for name in python3 /usr/bin/python3; do "$name" -c "import openpyxl, odf" 2> /dev/null && echo "$name" && break; done)
[ -n "$python" ] || skip "openpyxl and odfpy are not there: no spreadsheets are written"
ln -s "$PWD"/corpus/*.musicxml "$PWD"/corpus/*.mxl "$PWD/corpus/halls" "$folder/"
cat > "$folder/plan.csv" <<'EOT'
Season,,,,,,,,
,,,,,,,,
Concert,Date,Time,Hall,Order,Work,Score,Year,Interval
Opening,2031-10-04,19:30,"Tithe Barn, Vellgate",1,"Barcarolle, ""slow"" & <low>",vercassine-barcarolle.musicxml,1890,true
,,,,2,Balconies,brelisk-balconies-2.musicxml|brelisk-balconies-4.musicxml,1786,false
Matinée,2031-10-05 11:00,,"Tithe Barn, Vellgate",1,Barcarolle,vercassine-barcarolle.musicxml,,
EOT
run 0 season "$folder/plan.csv" --format json
mv "$folder/out" "$folder/expected"
grep -q '"time": "19:30"' "$folder/expected" && grep -q '"date": "2031-10-05"' "$folder/expected" || fault "the table itself is not read"

if [ -n "$python" ]; then
    "$python" - "$folder" <<'EOT' || fault "the spreadsheets could not be written"
import csv, datetime, sys
import openpyxl
from odf.opendocument import OpenDocumentSpreadsheet
from odf.table import Table, TableRow, TableCell
from odf.text import P
from odf.office import Annotation
folder = sys.argv[1]
rows = list(csv.reader(open(folder + "/plan.csv", encoding="utf-8")))

def value(text):
    if text in ("true", "false"):
        return text == "true"
    for form, kind in (("%Y-%m-%d %H:%M", None), ("%Y-%m-%d", "date"), ("%H:%M", "time")):
        try:
            moment = datetime.datetime.strptime(text, form)
            return moment.date() if kind == "date" else moment.time() if kind == "time" else moment
        except ValueError:
            pass
    return int(text) if text.isdigit() else text or None

book = openpyxl.Workbook()
book.active.title = "Notes & more"
book.active["B2"] = "nothing here"
sheet = book.create_sheet("Plan")
for y, row in enumerate(rows, 1):
    for x, text in enumerate(row, 1):
        sheet.cell(y, x, value(text))
book.save(folder + "/second.xlsx")
book.remove(book["Notes & more"])
book.save(folder + "/plan.xlsx")
book["Plan"].title = "2027"
book.create_sheet("Notes", 0)
book.save(folder + "/figures.xlsx")

def cell(text):
    it = value(text)
    if it is None:
        return TableCell()
    if isinstance(it, bool):
        made = TableCell(valuetype="boolean", booleanvalue=text)
    elif isinstance(it, datetime.datetime):
        made = TableCell(valuetype="date", datevalue=it.isoformat())
    elif isinstance(it, datetime.date):
        made = TableCell(valuetype="date", datevalue=it.isoformat())
    elif isinstance(it, datetime.time):
        made = TableCell(valuetype="time", timevalue="PT%02dH%02dM00S" % (it.hour, it.minute))
    elif isinstance(it, int):
        made = TableCell(valuetype="float", value=str(it))
    else:
        made = TableCell(valuetype="string")
    note = Annotation()
    note.addElement(P(text="a remark of somebody's"))
    made.addElement(note)
    made.addElement(P(text=text if isinstance(it, str) else "shown otherwise"))
    return made

def document(path, first):
    made = OpenDocumentSpreadsheet()
    if first:
        other = Table(name="Notes & more")
        row = TableRow(numberrowsrepeated=1048576)
        row.addElement(TableCell(numbercolumnsrepeated=1024))
        other.addElement(row)
        made.spreadsheet.addElement(other)
    plan = Table(name="Plan")
    for texts in rows:
        row = TableRow()
        empty = 0
        for text in texts:
            if not text:
                empty += 1
                continue
            if empty:
                row.addElement(TableCell(numbercolumnsrepeated=empty))
            empty = 0
            row.addElement(cell(text))
        plan.addElement(row)
    rest = TableRow(numberrowsrepeated=1048000)
    rest.addElement(TableCell(numbercolumnsrepeated=1000))
    plan.addElement(rest)
    made.spreadsheet.addElement(plan)
    made.save(path)

document(folder + "/plan.ods", False)
document(folder + "/second.ods", True)
EOT
    run 0 season "$folder/figures.xlsx" --sheet name:2027 --sheet 2
    shows "Change sheet: Matinée"
    run 2 season "$folder/figures.xlsx" --sheet name:2028
    says "it has no sheet '2028'; there are 'Notes', '2027'"
    for kind in xlsx ods; do
        run 0 season "$folder/plan.$kind" --format json
        same "$folder/expected" "$folder/out" "$kind"
        run 0 season "$folder/second.$kind" --sheet Plan --format json
        same "$folder/expected" "$folder/out" "$kind, second sheet"
        run 0 season "$folder/second.$kind" --sheet Plan --sheet 2
        shows "Change sheet: Matinée"
        run 2 season "$folder/second.$kind"
        says "no header was found"
        run 2 season "$folder/second.$kind" --sheet Planning
        says "it has no sheet 'Planning'; there are 'Notes & more', 'Plan'"
        head -c 1000 "$folder/plan.$kind" > "$folder/cut.$kind"
        run 2 season "$folder/cut.$kind"
        [ "$(error_lines)" = 1 ] || fault "a cut $kind: $(error_lines) lines"
    done
fi

# By hand, from the standard.
python3 - "$folder" <<'EOT'
import sys, zipfile
book = zipfile.ZipFile(sys.argv[1] + "/hand.xlsx", "w")
main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
book.writestr("xl/workbook.xml", '<x:workbook xmlns:x="%s" xmlns:r="r"><x:workbookPr date1904="1"/><x:sheets><x:sheet name="A" r:id="q7"/></x:sheets></x:workbook>' % main)
book.writestr("xl/_rels/workbook.xml.rels", '<Relationships><Relationship Id="q7" Target="/xl/worksheets/odd.xml"/></Relationships>')
book.writestr("xl/sharedStrings.xml", '<sst xmlns="%s"><si><t>concert</t></si><si><r><t>sc</t></r><r><t>ore</t></r><rPh><t>no</t></rPh></si></sst>' % main)
book.writestr("xl/styles.xml", '<styleSheet xmlns="%s"><numFmts><numFmt numFmtId="170" formatCode="[$-407]d\\.\\ mmm"/><numFmt numFmtId="171" formatCode="&quot;day&quot;0"/></numFmts>'
              '<cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs><xf numFmtId="0"/><xf numFmtId="170"/><xf numFmtId="171"/></cellXfs></styleSheet>' % main)
# 1 January 2031 is day 47849 from 30 December 1899, 1462 less from 1 January 1904.
book.writestr("xl/worksheets/odd.xml", '<worksheet xmlns="%s"><sheetData><row r="3"><c r="B3" t="s"><v>0</v></c><c t="s"><v>1</v></c><c t="inlineStr"><is><t>date</t></is></c>'
              '<c t="inlineStr"><is><t>work</t></is></c></row><row r="5"><c r="B5" t="str"><f>1+1</f><v>A</v></c><c t="str"><v>vercassine-barcarolle.musicxml</v></c>'
              '<c s="1"><v>46387.8125</v></c><c s="2"><v>7</v></c></row></sheetData></worksheet>' % main)
book.close()
zipfile.ZipFile(sys.argv[1] + "/none.xlsx", "w").writestr("cover.txt", "no sheet")
EOT
run 0 season "$folder/hand.xlsx" --format json
grep -q '"date": "2031-01-01"' "$folder/out" && grep -q '"time": "19:30"' "$folder/out" || fault "the 1904 date base: $(grep -m 2 -e '"date"' -e '"time"' "$folder/out")"
grep -q '"line": 5' "$folder/out" && grep -q '"title": "7"' "$folder/out" || fault "by hand: not its line or its title"
run 2 season "$folder/none.xlsx"
says "no spreadsheet"
finish
