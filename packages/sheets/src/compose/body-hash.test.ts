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

test("what differs between prints that say the same leaves a body's hash alone, the drawing does not", async () => {
  const line = await exampleLine("first-light");
  const made = (options: typeof OPTIONS) => [
    ...composeHarnessSheets(line, options, { kinds: ["from-to", "pinboard"] }),
  ];
  const hashes = (options: typeof OPTIONS): string[] => made(options).map((d) => d.bodyHash);
  const usual = hashes(OPTIONS);
  expect(new Set(usual).size).toBe(usual.length);
  const others: readonly Partial<typeof OPTIONS>[] = [
    { date: "2027-01-31" },
    { state: "released", revision: "C" },
    { creator: "Mara" },
    { address: "https://pinwright.example" },
  ];
  for (const other of others) expect(hashes({ ...OPTIONS, ...other })).toEqual(usual);
  const chinese = hashes({ ...OPTIONS, language: "zh" });
  expect(chinese.filter((h) => usual.includes(h))).toEqual([]);
});

test("each page has a hash of its own, and pages that say the same the same", async () => {
  const line = await exampleLine("first-light");
  for (const document of composeHarnessSheets(line, OPTIONS, { kinds: ["from-to", "pinboard"] })) {
    expect(document.pageHashes.length).toBe(document.pages.length);
    expect(new Set(document.pageHashes).size).toBe(document.pages.length);
  }
});

test("the code leads to the server's page where the server has an address", async () => {
  const line = await exampleLine("first-light");
  const codes = (address: string): string[] =>
    [...composeHarnessSheets(line, { ...OPTIONS, address, revision: "B/2" }, { kinds: ["from-to"] })].map(
      ({ code, bodyHash }) => code.replace(bodyHash.slice(0, 12), "…"),
    );
  expect(codes("")[0]).toBe("pinwright:first-light:B/2:hs.power.from-to.en:…");
  expect(codes("https://pinwright.example")[0]).toBe(
    "https://pinwright.example/print#first-light/B%2F2/hs.power.from-to.en/…",
  );
});
