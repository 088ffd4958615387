import { expect, test } from "vitest";
import { composeSheets } from "../all-sheets.ts";
import { exampleLine, OPTIONS } from "../testing/first-light.ts";
import { keepSheet, keptSheet } from "./kept-sheet.ts";

test("every sheet comes back as it was, and a later revision that says the same keeps the same body", async () => {
  const line = await exampleLine("first-light");
  const all = { kinds: [], harnessIds: [] };
  const sheets = [...composeSheets(line, { ...OPTIONS, revision: "A", state: "released" }, all)];
  const later = [...composeSheets(line, { ...OPTIONS, revision: "B", state: "released" }, all)];
  expect(sheets.length).toBeGreaterThan(30);
  sheets.forEach(({ document }, i) => {
    const { body, frame } = keepSheet(document);
    const [bodyJson, frameJson] = [JSON.stringify(body), JSON.stringify(frame)];
    expect(keptSheet(bodyJson, frameJson), document.id).toEqual(JSON.parse(JSON.stringify(document)));
    const other = later[i];
    if (other === undefined) throw new Error("fewer sheets");
    const next = keepSheet(other.document);
    expect(JSON.stringify(next.body) === bodyJson, document.id).toBe(true);
    expect(JSON.stringify(next.frame) === frameJson, document.id).toBe(false);
  });
});

test("parts of a later form are not read as if they were of this one", () => {
  expect(() => keptSheet('{"form":2}', '{"form":2}')).toThrow(/later program/u);
});
