import type { BookFile } from "@pinwright/contract";
import { expect, test } from "vitest";
import { fileState, nameFor, type Place, sizeText } from "./attach.ts";

const file = (name: string, sha256 = "1"): [string, BookFile] => [
  name,
  { name, sha256, bytes: 1, personName: "", at: "2026-03-31T09:30:00.000Z" },
];

const place = (own: readonly string[], ...files: readonly [string, BookFile][]): Place => ({
  partId: "br.plate",
  revision: "B",
  own: new Set(own),
  files: new Map(files),
});

test.each([
  ["its own name, made safe", "Plate (new).PDF", "2", place([]), "Plate-new.pdf"],
  ["part and revision when nothing of it is safe", "支架.pdf", "2", place([]), "br-plate-B.pdf"],
  [
    "its own again when this revision has it",
    "plate.pdf",
    "2",
    place(["plate.pdf"], file("plate.pdf")),
    "plate.pdf",
  ],
  ["another when somebody else's has it", "plate.pdf", "2", place([], file("plate.pdf")), "plate-B.pdf"],
  ["another when only the case differs", "Plate.pdf", "2", place([], file("plate.pdf")), "Plate-B.pdf"],
  ["the same for the same bytes", "plate.pdf", "1", place([], file("plate.pdf")), "plate.pdf"],
  [
    "a numbered one at last",
    "plate.pdf",
    "2",
    place([], file("plate.pdf"), file("plate-B.pdf")),
    "plate-B-2.pdf",
  ],
  ["none for what is no drawing", "plate.docx", "2", place([]), null],
])("a file gets %s", (_, name, hash, where, expected) => {
  expect(nameFor(name, hash, where)).toBe(expected);
});

test("a file is as attached, other, missing, or its hash was never noted", () => {
  const [, there] = file("a.pdf", "abc");
  expect(fileState("abc", there)).toBe("good");
  expect(fileState("abd", there)).toBe("differs");
  expect(fileState("", there)).toBe("unhashed");
  expect(fileState("abc", undefined)).toBe("missing");
});

test("sizes are told as people read them", () => {
  expect([999, 240_400, 3_120_000].map(sizeText)).toEqual(["999 B", "240 kB", "3.1 MB"]);
});
