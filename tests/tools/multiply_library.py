"""Multiplies what a library holds: multiply_library.py LIBRARY TIMES. Every score comes TIMES as often, each copy of a work under a name of its own, so that questions can be
measured at a size for which nobody wants to read scores for hours. What is asked of it is what the program would have written; only its bytes were never read."""
import sqlite3
import sys

path, times = sys.argv[1], int(sys.argv[2])
base = sqlite3.connect(path)
base.execute("PRAGMA synchronous = OFF")
base.execute("PRAGMA journal_mode = OFF")
base.execute("PRAGMA foreign_keys = OFF")
base.execute("PRAGMA cache_size = -400000")
base.execute("BEGIN")
# Which columns are numbers of rows, and of which table.
keys = {"score": {"id": "score"}, "work": {"id": "work"}, "file": {"score": "score"}, "movement": {"id": "movement", "score": "score", "work": "work"}, "part": {"movement": "movement"},
        "need": {"movement": "movement"}, "passage": {"id": "passage", "movement": "movement"}, "entry": {"passage": "passage"}, "seat": {"id": "seat", "movement": "movement"},
        "term": {"seat": "seat"}}
# What has to differ from copy to copy.
names = {"score": ("content",), "work": ("name",), "file": ("path", "content")}
stride = {table: base.execute(f"SELECT max(id) FROM {table}").fetchone()[0] for table in ("score", "work", "movement", "passage", "seat")}
limits = {"score": "id", "work": "id", "movement": "id", "passage": "id", "seat": "id", "file": "score", "part": "movement", "need": "movement", "entry": "passage", "term": "seat"}
for table, numbers in keys.items():
    columns = [row[1] for row in base.execute(f"PRAGMA table_info({table})")]
    first = stride[keys[table][limits[table]]]
    wanted = ", ".join(f"{c} + :k * {stride[numbers[c]]}" if c in numbers else f"{c} || ' [' || :k || ']'" if c in names.get(table, ()) else c for c in columns)
    for k in range(1, times):
        base.execute(f"INSERT INTO {table} ({', '.join(columns)}) SELECT {wanted} FROM {table} WHERE {limits[table]} <= {first}", {"k": k})
base.execute("COMMIT")
print(base.execute("SELECT count(*) FROM movement").fetchone()[0], "movements")
