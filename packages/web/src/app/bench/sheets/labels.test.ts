import { fileURLToPath } from "node:url";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { UNIT_KINDS } from "@pinwright/contract";
import { resolveMachine } from "@pinwright/engine";
import { composeUnitLabels, USUAL_OPTIONS, USUAL_ROLL } from "@pinwright/sheets";
import { describe, expect, test } from "vitest";
import { unitInCode, WedgeReader } from "../../../floor/shell/scan.ts";
import { isPaper, labelsPath, USUAL_PAPER } from "./address.ts";

/** Serial numbers as the store gives them out. */
const LETTERS = { machine: "m", board: "b", harness: "h", mechanism: "a" } as const;

/** What a scanner that acts as a keyboard makes of a code: every letter within a few milliseconds, then Enter. */
function typed(code: string): string | null {
  const reader = new WedgeReader();
  [...code].forEach((letter, i) => {
    reader.press(letter, 5 * i);
  });
  return reader.press("Enter", 5 * code.length);
}

describe("codes on labels", () => {
  test("are what the floor's scanner understands, whatever kind of unit they are on", async () => {
    const folder = fileURLToPath(new URL("../../../../../../examples/first-light", import.meta.url));
    const { book, shop } = await readBook(folder);
    const line = { machine: resolveMachine(book, shop ?? emptyShop()) };
    const units = UNIT_KINDS.flatMap((what) =>
      [1, 999_999].map((n) => ({
        ...{ unit: `${LETTERS[what]}-${String(n).padStart(6, "0")}`, what, type: "any" },
        ...{ book: "first-light", revision: "@3" },
      })),
    );
    const options = { ...USUAL_OPTIONS, language: "both" as const, date: "2027-01-04" };
    for (const paper of [USUAL_ROLL, { kind: "a4" as const, start: 1 }]) {
      const { pages, code } = composeUnitLabels({ line, bookId: "first-light", options }, paper, units);
      const codes = JSON.stringify(pages).match(/"kind":"code"[^}]*\}[^}]*"text":"[^"]*"/gu) ?? [];
      const texts = codes
        .map((mark) => /"text":"([^"]*)"/u.exec(mark)?.[1] ?? "")
        .filter((text) => text !== code);
      expect(texts).toEqual(units.map(({ unit }) => unit));
      for (const text of texts) expect(unitInCode(typed(text) ?? "")).toBe(text);
      // The code of the sheet itself names no unit.
      expect(unitInCode(code)).toBeNull();
    }
  });

  test("of a certificate lead to its unit", () => {
    expect(unitInCode(`pinwright-heads m-000001\nserver 41 ${"a1".repeat(32)}`)).toBe("m-000001");
    expect(
      unitInCode("pinwright:tidewatch:@12:records.test-certificate-m-000001.en:0123456789ab"),
    ).toBeNull();
  });
});

describe("addresses of labels", () => {
  test("say the paper and nothing of the other kind", () => {
    const of = (paper: typeof USUAL_PAPER): URLSearchParams =>
      new URL(labelsPath("tidewatch", ["b-000002", "b-000001"], paper, "zh"), "http://x").searchParams;
    const sheet = of({ ...USUAL_PAPER, start: "7" });
    expect(Object.fromEntries(sheet)).toMatchObject({
      ...{ book: "tidewatch", language: "zh", paper: "a4", start: "7", units: "b-000002,b-000001" },
    });
    expect(sheet.has("widthMm")).toBe(false);
    const roll = of({ ...USUAL_PAPER, kind: "roll" });
    expect([roll.get("widthMm"), roll.get("heightMm"), roll.has("start")]).toEqual(["62", "29", false]);
  });

  test("are not made of a size or a place that no label has", () => {
    expect(isPaper(USUAL_PAPER)).toBe(true);
    for (const start of ["", "0", "1.5", "x", "201"]) expect(isPaper({ ...USUAL_PAPER, start })).toBe(false);
    for (const widthMm of ["", "24", "x", "121"])
      expect(isPaper({ ...USUAL_PAPER, kind: "roll", widthMm })).toBe(false);
  });
});
