"""Checks PDF files against what a machine can tell of ISO 14289-1 (PDF/UA-1), with Debian's pikepdf (qpdf).

Numbers are the checkpoints of the Matterhorn Protocol 1.1. Prints JSON: for each file its findings and its counts.
"""

import json
import re
import struct
import sys

import pikepdf

STANDARD = set(
    "Document Part Sect H1 H2 H3 H4 H5 H6 P L LI Lbl LBody Table TR TH TD THead TBody Figure Caption Note TOC TOCI Link Span".split()
)
PARENTS = {"TR": {"Table"}, "TH": {"TR"}, "TD": {"TR"}, "LI": {"L"}, "LBody": {"LI"}, "TOCI": {"TOC"}}
CHILDREN = {"Table": {"TR", "Caption"}, "TR": {"TH", "TD"}, "L": {"LI", "Caption"}, "TOC": {"TOCI", "TOC", "Caption"}}
PAINTS = {"S", "s", "f", "F", "f*", "B", "B*", "b", "b*", "sh", "Do", "Tj", "TJ", "'", '"', "BI"}


def kids_of(element):
    kids = element.get("/K")
    if kids is None:
        return []
    return list(kids) if isinstance(kids, pikepdf.Array) else [kids]


class Checker:
    def __init__(self, path):
        self.pdf = pikepdf.open(path)
        self.findings = []
        self.counts = {}
        self.headings = []
        self.owned = set()
        self.annotations = {}
        self.texts = {}
        self.seen = set()

    def say(self, rule, text):
        if len(self.findings) < 50:
            self.findings.append(rule + ": " + text)

    def check(self):
        root = self.pdf.Root
        self.catalog(root)
        self.numbers = {p.objgen: i for i, p in enumerate(self.pdf.pages)}
        self.fonts()
        for i, page in enumerate(self.pdf.pages):
            self.content(i, page)
        tree = root.get("/StructTreeRoot")
        if tree is None:
            self.say("01-006", "no structure tree")
            return
        for kid in kids_of(tree):
            self.element(kid, tree, "")
        self.levels()
        self.parents(tree)
        for i, page in enumerate(self.pdf.pages):
            for mcid in self.texts[i]:
                if (i, mcid) not in self.owned:
                    self.say("01-005", f"page {i + 1}: content {mcid} is in no element")

    def catalog(self, root):
        if not bool(root.get("/MarkInfo", {}).get("/Marked", False)):
            self.say("06-001", "not marked")
        if not str(root.get("/Lang", "")):
            self.say("11-006", "no language")
        if not bool(root.get("/ViewerPreferences", {}).get("/DisplayDocTitle", False)):
            self.say("07-002", "title is not shown")
        with self.pdf.open_metadata(set_pikepdf_as_editor=False) as meta:
            if meta.get("{http://www.aiim.org/pdfua/ns/id/}part") != "1":
                self.say("05-001", "no mark of PDF/UA")
            title = meta.get("dc:title")
            if not title:
                self.say("06-003", "no title")
            if title != str(self.pdf.docinfo.get("/Title")):
                self.say("06-003", "two titles")

    def fonts(self):
        done = set()
        for page in self.pdf.pages:
            for name, font in page.Resources.get("/Font", {}).items():
                if font.objgen in done:
                    continue
                done.add(font.objgen)
                self.font(name, font)

    def font(self, name, font):
        if "/DescendantFonts" not in font:
            return self.say("31-000", f"font {name} is not one that this program writes")
        inner = font.DescendantFonts[0]
        file = inner.FontDescriptor.get("/FontFile2")
        if file is None:
            return self.say("31-009", f"font {name} is not embedded")
        if "/CIDToGIDMap" not in inner:
            self.say("31-007", f"font {name} has no map of glyphs")
        data = file.read_bytes()
        tables = {}
        for i in range(struct.unpack(">H", data[4:6])[0]):
            tag, _, offset, length = struct.unpack(">4sLLL", data[12 + 16 * i : 28 + 16 * i])
            tables[tag.decode()] = data[offset : offset + length]
        units = struct.unpack(">H", tables["head"][18:20])[0]
        metrics = struct.unpack(">H", tables["hhea"][34:36])[0]
        widths = [int(w) if w == int(w) else float(w) for w in inner.W[1]]
        for glyph, width in enumerate(widths):
            at = 4 * min(glyph, metrics - 1)
            advance = struct.unpack(">H", tables["hmtx"][at : at + 2])[0] * 1000 / units
            if abs(advance - float(width)) > 1:
                self.say("31-018", f"font {name}: glyph {glyph} is {advance} wide, the file says {width}")
        unicode = font.get("/ToUnicode")
        if unicode is None:
            return self.say("31-027", f"font {name} cannot be read as text")
        mapped = set(int(a, 16) for a in re.findall(rb"<([0-9a-f]{4})><[0-9a-f]+>", unicode.read_bytes()))
        if mapped != set(range(len(widths))):
            self.say("31-027", f"font {name}: codes without characters")

    def content(self, number, page):
        open_content = []
        found = self.texts[number] = {}
        for operands, operator in pikepdf.parse_content_stream(page):
            op = str(operator)
            if op in ("BDC", "BMC"):
                mcid = operands[1].get("/MCID") if op == "BDC" and isinstance(operands[1], pikepdf.Dictionary) else None
                tag = str(operands[0])
                inside = {t for t, _ in open_content}
                if tag == "/Artifact" and any(m is not None for _, m in open_content):
                    self.say("01-003", f"page {number + 1}: artifact in content")
                if mcid is not None and ("/Artifact" in inside or any(m is not None for _, m in open_content)):
                    self.say("01-004", f"page {number + 1}: content in content")
                open_content.append((tag, None if mcid is None else int(mcid)))
                if mcid is not None:
                    if int(mcid) in found:
                        self.say("01-005", f"page {number + 1}: content {mcid} twice")
                    found[int(mcid)] = tag
            elif op == "EMC":
                if not open_content:
                    self.say("01-005", f"page {number + 1}: an end without a beginning")
                else:
                    open_content.pop()
            elif op in PAINTS and not any(t == "/Artifact" or m is not None for t, m in open_content):
                self.say("01-005", f"page {number + 1}: {op} neither tagged nor artifact")
        if open_content:
            self.say("01-005", f"page {number + 1}: content without end")
        if "/Annots" in page and str(page.get("/Tabs", "")) != "/S":
            self.say("28-001", f"page {number + 1}: no order of tabs")

    def element(self, element, parent, kind):
        if element.objgen in self.seen:
            return self.say("09-000", "an element twice in the tree")
        self.seen.add(element.objgen)
        own = str(element.S)[1:]
        self.counts[own] = self.counts.get(own, 0) + 1
        if own not in STANDARD:
            self.say("02-001", own + " is no standard type")
        if element.P.objgen != parent.objgen:
            self.say("09-000", own + " names another parent")
        if own in PARENTS and kind not in PARENTS[own]:
            self.say("09-004", f"{own} in {kind}")
        if kind in CHILDREN and own not in CHILDREN[kind]:
            self.say("09-004", f"{own} in {kind}")
        if re.fullmatch("H[1-6]", own):
            self.headings.append(int(own[1]))
        if own == "Figure" and not str(element.get("/Alt", "")).strip():
            self.say("13-004", "a figure without words")
        if own == "TH" and str(element.get("/A", {}).get("/Scope", "")) not in ("/Row", "/Column", "/Both"):
            self.say("15-003", "a heading cell without scope")
        kids = kids_of(element)
        if own == "Table":
            self.table(kids)
        if own == "Link" and not any(
            isinstance(k, pikepdf.Dictionary) and str(k.get("/Type", "")) == "/OBJR" for k in kids
        ):
            self.say("28-011", "a link without its annotation")
        for kid in kids:
            if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
                self.element(kid, element, own)
            elif isinstance(kid, pikepdf.Dictionary) and str(kid.get("/Type", "")) == "/OBJR":
                self.annotations[kid.Obj.objgen] = element
            else:
                is_number = not isinstance(kid, pikepdf.Dictionary)
                page = self.numbers[(element.Pg if is_number else kid.Pg).objgen]
                mcid = int(kid if is_number else kid.MCID)
                if (page, mcid) in self.owned:
                    self.say("09-000", f"page {page + 1}: content {mcid} in two elements")
                self.owned.add((page, mcid))
                if self.texts[page].get(mcid) != "/" + own:
                    self.say("09-000", f"page {page + 1}: content {mcid} is no {own}")
                keys = self.pdf.Root.StructTreeRoot.ParentTree.Nums
                key = int(self.pdf.pages[page].StructParents)
                if int(keys[2 * key]) != key or keys[2 * key + 1][mcid].objgen != element.objgen:
                    self.say("09-000", f"page {page + 1}: content {mcid} has another parent")

    def table(self, rows):
        widths = set()
        for row in rows:
            widths.add(sum(int(c.get("/A", {}).get("/ColSpan", 1)) for c in kids_of(row)))
        if len(widths) > 1:
            self.say("15-003", f"a table with rows of {sorted(widths)} columns")

    def levels(self):
        last = 0
        for level in self.headings:
            if level > last + 1:
                self.say("14-003", f"H{level} after H{last}")
            last = level

    def parents(self, tree):
        keys = tree.ParentTree.Nums
        links = 0
        for i, page in enumerate(self.pdf.pages):
            for annotation in page.get("/Annots", []):
                links += 1
                if not str(annotation.get("/Contents", "")).strip():
                    self.say("28-012", f"page {i + 1}: a link without words")
                element = self.annotations.get(annotation.objgen)
                if element is None or str(element.S) != "/Link":
                    self.say("28-011", f"page {i + 1}: a link in no element")
                    continue
                key = int(annotation.StructParent)
                if int(keys[2 * key]) != key or keys[2 * key + 1].objgen != element.objgen:
                    self.say("28-011", f"page {i + 1}: a link with another parent")
                if "/Dest" in annotation and annotation.Dest[0].objgen not in self.numbers:
                    self.say("28-000", f"page {i + 1}: a link to no page")
        self.counts["links"] = links
        self.counts["bookmarks"] = sum(1 for _ in self.bookmarks(self.pdf.Root.get("/Outlines")))

    def bookmarks(self, item):
        if item is None:
            return
        child = item.get("/First")
        while child is not None:
            yield child
            if child.Dest[0].objgen not in self.numbers:
                self.say("bookmark", "leads to no page")
            yield from self.bookmarks(child)
            child = child.get("/Next")


def report(path):
    checker = Checker(path)
    checker.check()
    return {"findings": checker.findings, "counts": checker.counts}


print(json.dumps({path: report(path) for path in sys.argv[1:]}))
