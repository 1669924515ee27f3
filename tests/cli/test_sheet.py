# SPDX-License-Identifier: GPL-3.0-or-later
"""Question:  does paper say what the file says?
Answer:    every example is printed and read back with pdftotext: verdict, conditions, file code and number on every page; the text
           report keeps every reason why a limit does not apply.
Not here:  how it looks."""
import json
import pathlib
import re
import subprocess
import sys
import tempfile

PROGRAM = sys.argv[1]
EXAMPLES = sorted(pathlib.Path(sys.argv[2]).glob("*.handspike.json"))
WORDS = {"supported": "Supported", "with_conditions": "Supported with conditions", "not_supported": "Not supported"}
faults = []


def want(condition, text):
    if not condition:
        faults.append(text)


def run(*arguments):
    return subprocess.run([PROGRAM, *map(str, arguments)], capture_output=True, check=True, timeout=300).stdout


def pages(pdf):
    text = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, check=True, text=True).stdout
    return text.split("\f")[:-1]


def in_order(pdf):
    """Column by column, so that what is broken over lines stays together."""
    return subprocess.run(["pdftotext", "-raw", pdf, "-"], capture_output=True, check=True, text=True).stdout


def plain(text):
    return re.sub(r"\s+", "", text)


def check_sheet(example, folder):
    name, out = example.name, folder / "sheet.pdf"
    results = json.loads(run("assess", example, "--json"))
    run("sheet", example, "-o", out)
    sheet = pages(out)
    code, whole = results["document"]["digest"][:12], "\n".join(sheet)
    proposed = next(o for o in results["options"] if not o["baseline"] and o["id"] != "unaided")
    for number, page in enumerate(sheet, 1):
        want(code in page, f"{name}: page {number} lacks the file code")
        want(f"page {number} of {len(sheet)}" in page, f"{name}: page {number} lacks its number")
    want(len(sheet) >= 3, f"{name}: side 1, side 2 and annex are three pages at least")
    word = WORDS.get(proposed["verdict"]["status"])
    want(word is None or word in sheet[0], f"{name}: side 1 lacks the verdict {word}")
    for n, _condition in enumerate(proposed["verdict"]["conditions"], 1):
        want(re.search(rf"^\s*{n}\s+\S", whole, re.M), f"{name}: condition {n} is not numbered")
    want(not re.search(r"\bnan\b|\binf\b|\(null\)", whole, re.I), f"{name}: an absent figure is printed")
    for status in {f["status"] for f in proposed["findings"]} - {"not_judged"}:
        want(status in whole, f"{name}: the status {status} is not printed")
    is_draft = "DRAFT" in sheet[0]
    want(all(("DRAFT" in page) == is_draft for page in sheet), f"{name}: DRAFT is on some pages only")
    want(("Signatures for this file code" in whole) != is_draft, f"{name}: boxes to sign on a draft, or none")
    check_sides(sheet, name, proposed, is_draft)
    check_facts(name, results, proposed, sheet[0], plain(run("assess", example).decode()))
    check_views(example, results, plain(in_order(out)), plain(run("assess", example).decode()))


def check_facts(name, results, proposed, side_1, report):
    """What no view may drop: that only the suit makes it stand, and that a limit was not made for the case."""
    if proposed["verdict"]["suit_only"]:
        want("only because of the suit" in side_1, f"{name}: side 1 drops that only the suit makes it stand")
    n = sum(option["verdict"]["suit_only"] for option in results["options"])
    want(report.count(plain("only because of the suit")) >= n, f"{name}: the report drops that only the suit makes it stand")
    for option in results["options"]:
        for finding in option["findings"]:
            if finding["status"] == "not_judged":
                want(plain(finding["text"]).rstrip(".") in report, f"{name}: the report drops why {finding['check']} is not judged")


def is_unconfirmed(finding):
    return finding["confidence"] == "memory" and finding["status"] != "not_judged"


def is_out_of_scope(finding):
    return finding["status"] == "not_judged" and finding["why"] == "scope"


def check_views(example, results, sheet, report):
    """"Unconfirmed", "does not apply" and "only the suit" in every view: report, sheet, survey line, handout; the window's rows
    are in tests/unit/draw/test_short.c."""
    name = example.name
    n = sum(is_unconfirmed(f) for option in results["options"] for f in option["findings"])
    want(report.count("limitunconfirmed") == n, f"{name}: the report marks {report.count('limitunconfirmed')} unconfirmed, {n} are")
    want(sheet.count("limitunconfirmed") >= n, f"{name}: the sheet does not mark each of {n} unconfirmed findings")
    n = sum(is_out_of_scope(f) for option in results["options"] for f in option["findings"])
    want(sheet.count("doesnotapply") >= n, f"{name}: the sheet drops that a limit does not apply")
    line = json.dumps(json.loads(example.read_text(encoding="utf-8"))).encode() + b"\n"
    survey = json.loads(subprocess.run([PROGRAM, "survey"], input=line, capture_output=True, check=True, timeout=300).stdout)
    for short, option in zip(survey["options"], results["options"]):
        for key, is_one in (("unconfirmed", is_unconfirmed), ("out_of_scope", is_out_of_scope)):
            wanted = [f["check"] for f in option["findings"] if is_one(f)]
            want(short.get(key, []) == wanted, f"{name}, {option['id']}: the survey's {key} is {short.get(key)}, not {wanted}")
        want(short.get("suit_only", False) == option["verdict"]["suit_only"], f"{name}: the survey drops that only the suit does it")
    if any(option["verdict"]["suit_only"] for option in results["options"]):
        with tempfile.TemporaryDirectory() as folder:
            run("handout", example, "-o", pathlib.Path(folder) / "handout.pdf")
            text = plain("".join(pages(pathlib.Path(folder) / "handout.pdf")))
        want("Withoutit" in text, f"{name}: the handout drops that only the suit makes it stand")


def check_sides(sheet, name, proposed, is_draft):
    """What was decided on side 1, why it may be believed and who signs on side 2, the rest behind them."""
    want(sheet[2].lstrip().removeprefix("DRAFT: not for signature; what is open is listed at the end of side 2").lstrip()
         .startswith("Annex"), f"{name}: the annex does not begin on page 3")
    for part in ("People needed: today", "Better for the one who stays", "Worse for the one who stays", "Nobody knows yet",
                 "What decides", "Better ways first"):
        want(part in sheet[0], f"{name}: side 1 lacks {part}")
    for part in ("indings, nearest their limit first", "The load, and how it is known", "If the suit", "Roles, today and afterwards",
                 "Doubt", "Cautions", "Open before it can be signed" if is_draft else "does not agree, because"):
        want(part in sheet[1], f"{name}: side 2 lacks {part}")
    want(is_draft or "DRAFT" not in sheet[1], f"{name}: DRAFT on side 2")
    want("All findings, nearest their limit first" in "\n".join(sheet[2:]), f"{name}: the annex lacks the findings in full")
    if proposed["verdict"]["status"] == "not_supported" and not is_draft:
        want("accepts conditions" not in sheet[1], f"{name}: conditions are accepted that are not there")


def check_open_items(example, folder):
    document, changed, out = json.loads(example.read_text()), folder / "open.json", folder / "open.pdf"
    document.pop("better_ways", None)
    del document["about"]["assessor"]
    changed.write_text(json.dumps(document))
    run("sheet", changed, "-o", out)
    whole = "\n".join(pages(out))
    want("DRAFT" in whole and "Signatures for this file code" not in whole, "open items do not stop the signature")
    want("Who assesses is not given" in whole, "the missing assessor is not listed")
    want(plain("Can the load be split? Not answered") in plain(whole), "the unanswered better way is not listed")


def check_signature(example, folder):
    document, changed, out = json.loads(example.read_text()), folder / "signed.json", folder / "signed.pdf"
    document["signatures"] = [{"role": "Assessor", "name": "A. Invented", "date": "2026-11-25", "digest": "0" * 64}]
    changed.write_text(json.dumps(document))
    run("sheet", changed, "-o", out)
    want("Signed for another version (000000000000)" in "\n".join(pages(out)), "a signature for another version is taken")


def check_paper(example, folder):
    one, two, letter = folder / "one.pdf", folder / "two.pdf", folder / "letter.pdf"
    run("sheet", example, "-o", one)
    run("sheet", example, "-o", two)
    run("sheet", example, "-o", letter, "--paper", "letter")
    want(one.read_bytes() == two.read_bytes(), "the bytes do not repeat")
    for path, size in ((one, "595.276 x 841.89"), (letter, "612 x 792")):
        facts = subprocess.run(["pdfinfo", path], capture_output=True, check=True, text=True).stdout
        want(size in facts, f"{path.name} is not {size}")


def check_sides_elsewhere(example, folder):
    """Where there is least room: the longer language on the shorter paper."""
    out = folder / "elsewhere.pdf"
    run("sheet", example, "-o", out, "--paper", "letter", "--lang", "de")
    sheet = pages(out)
    want(any(line.strip() in ("Anhang", "Annex") for line in sheet[2].splitlines()[:4]), f"{example.name}: German on Letter, side 2 runs over")


def check_type(example, folder):
    """Nothing under 8.5 pt and no grey, read from the pages themselves."""
    out = folder / "type.pdf"
    run("sheet", example, "-o", out)
    boxes = subprocess.run(["pdftotext", "-bbox-layout", out, "-"], capture_output=True, check=True, text=True).stdout
    heights = [float(b) - float(a) for a, b in re.findall(r'<line [^>]*yMin="([\d.]+)"[^>]*yMax="([\d.]+)"', boxes)]
    want(len(heights) > 100, "no lines of type are read")
    want(min(heights) > 8.5, f"type of less than 8.5 pt: {min(heights):.1f} from ascent to descent")
    subprocess.run(["pdftoppm", "-r", "100", "-f", "1", "-l", "2", "-gray", out, folder / "grey"], check=True)
    for page in sorted(folder.glob("grey*.pgm")):
        pixels = page.read_bytes().split(b"\n", 3)[3]
        darkest = {pixels.count(bytes([level])) for level in range(100, 200)}
        want(sum(pixels.count(bytes([level])) for level in range(60)) > 3 * max(darkest), f"{page.name}: much grey, which a copier loses")


def check_handout(example, folder):
    blank, full = folder / "blank.pdf", folder / "full.pdf"
    run("handout", example, "-o", blank)
    run("handout", example, "-o", full, "--answers")
    without, with_answers = pages(blank), pages(full)
    want(len(without) == len(with_answers), f"{example.name}: the twins differ in pages")
    for number, (a, b) in enumerate(zip(without, with_answers), 1):
        want(sorted(a.split("Answer")[0].split()) == sorted(b.split("Answer")[0].split()), f"{example.name}: page {number} breaks elsewhere")
        want(len(plain(b)) > len(plain(a)), f"{example.name}: page {number} has no answer")


with tempfile.TemporaryDirectory() as made:
    place = pathlib.Path(made)
    want(len(EXAMPLES) >= 12, "the examples are missing")
    for path in EXAMPLES:
        check_sheet(path, place)
        check_handout(path, place)
        check_sides_elsewhere(path, place)
    check_open_items(EXAMPLES[0], place)
    check_signature(EXAMPLES[0], place)
    check_paper(EXAMPLES[0], place)
    check_type(EXAMPLES[0], place)
print("\n".join(faults) or "all sheets read back")
sys.exit(1 if faults else 0)
