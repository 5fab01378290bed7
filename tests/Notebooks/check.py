"""Reads a notebook that was run: no cell has an error, and a result showed itself."""

import json
import sys

with open(sys.argv[1], encoding="utf-8") as file:
    cells = json.load(file)["cells"]

outputs = [output for cell in cells for output in cell.get("outputs", [])]
errors = [output for output in outputs if output["output_type"] == "error"]
for error in errors:
    print(f"{error.get('ename', '')}: {error.get('evalue', '')}", *error.get("traceback", []), sep="\n")

html = ["".join(output.get("data", {}).get("text/html", "")) for output in outputs]
views = sum(text.startswith("<div><h4>") for text in html)
if errors or views == 0:
    sys.exit(f"{len(errors)} errors, {views} results that showed themselves; wanted: no error, and at least one")
