"""Holds the styles of the pages against what draws them: a class that a style names and nothing writes is dead. Says each, and how many were looked at."""
import pathlib
import re
import sys

pages = pathlib.Path("src/pages")
ours = [path for path in sorted(pages.rglob("*")) if "node_modules" not in path.parts]
written = set()  # words of string literals: classes are put together from them ('s%d', 'way%d')
for path in ours:
    if path.suffix in (".c", ".h", ".js"):
        for literal in re.findall(r'"((?:[^"\\\n]|\\.)*)"|\'((?:[^\'\\\n]|\\.)*)\'', path.read_text(encoding="utf-8")):
            written.update(re.findall(r"[A-Za-z%][\w%-]*", " ".join(literal)))
counted = [word[: word.index("%d")] for word in written if "%d" in word]


def is_written(name):
    return name in written or any(re.fullmatch(re.escape(start) + r"\d+", name) for start in counted)


looked, dead = 0, []
for path in ours:
    if path.suffix == ".css":
        text = re.sub(r"/\*.*?\*/", "", path.read_text(encoding="utf-8"), flags=re.S)
        for selector in re.findall(r"([^{}]+)\{", text):
            for name in re.findall(r"\.([A-Za-z][\w-]*)", selector):
                looked += 1
                if not is_written(name):
                    dead.append(f"{path}: .{name}")
for line in sorted(set(dead)):
    print(line)
print(looked)
sys.exit(bool(dead))
