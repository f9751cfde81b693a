"""Tables in Markdown, and where they go."""
import os
import re

PAGE = os.path.join(os.path.dirname(os.path.abspath(__file__)), "README.md")


def table(head, rows):
    cells = [head, ["---"] + ["---:"] * (len(head) - 1)] + rows
    return "".join("| " + " | ".join(map(str, row)) + " |\n" for row in cells) + "\n"


def keep(name, text):
    """Between the two marks of that name in README.md."""
    with open(PAGE, encoding="utf-8") as old:
        before = old.read()
    marks = re.compile(rf"(<!-- {name} -->\n).*?(<!-- end of {name} -->)", re.DOTALL)
    with open(PAGE, "w", encoding="utf-8") as new:
        new.write(marks.sub(lambda m: m[1] + text + m[2], before))


def write_table(name, text, folder, kept):
    with open(os.path.join(folder, name + ".md"), "w", encoding="utf-8") as out:
        out.write(text)
    if kept:
        keep(name, text)
    print(text, end="")
