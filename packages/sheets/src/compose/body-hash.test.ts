import { expect, test } from "vitest";
import { composeHarnessSheets } from "../harness-sheets.ts";
import { exampleLine, OPTIONS } from "../testing/first-light.ts";
import { textHash } from "./body-hash.ts";

test("SHA-256 of NIST's examples (FIPS 180-4, Secure Hash Standard examples)", () => {
  expect(textHash("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  expect(textHash("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")).toBe(
    "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
  );
});

test("the date leaves a body's hash alone, the state and the drawing do not", async () => {
  const line = await exampleLine("first-light");
  const hashes = (options: typeof OPTIONS): string[] =>
    [...composeHarnessSheets(line, options, { kinds: ["from-to", "pinboard"] })].map((d) => d.bodyHash);
  const usual = hashes(OPTIONS);
  expect(hashes({ ...OPTIONS, date: "2027-01-31" })).toEqual(usual);
  expect(new Set(usual).size).toBe(usual.length);
  const released = hashes({ ...OPTIONS, state: "released" });
  expect(released.filter((h) => usual.includes(h))).toEqual([]);
});
