import fc from "fast-check";
import { expect, test } from "vitest";
import { readSheetCode } from "./sheet-code.ts";

const HASH = "0123456789ab";

test("reads what is printed without a server, and the address of one", () => {
  const said = { machine: "tidewatch", revision: "B", sheet: "hs.lamps.from-to.en", hash: HASH };
  expect(readSheetCode(`pinwright:tidewatch:B:hs.lamps.from-to.en:${HASH}`)).toEqual(said);
  expect(readSheetCode(`https://floor.example:4443/print#tidewatch/B/hs.lamps.from-to.en/${HASH}`)).toEqual(
    said,
  );
});

test("a revision may hold anything, also what parts a code", () => {
  fc.assert(
    fc.property(fc.string(), (given) => {
      // As text that can be written: half of a surrogate pair cannot.
      const revision = new TextDecoder().decode(new TextEncoder().encode(given));
      const address = `https://x/print#m/${encodeURIComponent(revision)}/s/${HASH}`;
      expect(readSheetCode(address)?.revision).toBe(revision);
    }),
    { seed: 81 },
  );
  expect(readSheetCode(`pinwright:m:@12:3:s:${HASH}`)?.revision).toBe("@12:3");
});

test("other codes are none", () => {
  for (const text of [
    "",
    "b-000001",
    "pinwright:m:B:s:xyz",
    `https://x/print#m/B/${HASH}`,
    `/print#%ff/B/s/${HASH}`,
  ])
    expect(readSheetCode(text), text).toBeNull();
});
