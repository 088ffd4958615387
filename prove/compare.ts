/**
 * Makes more than a hundred scripted changes to Tidewatch, compares each with the machine as it was, and holds what is said
 * against what the script says that it did, and what follows against what the line gives before and after: wires, counts of
 * parts, steps and findings looked at one by one. Every sheet is composed on both sides: those that are told must be those
 * whose bodies differ, must include every sheet that the script's rule names, and no other than may change. Five of them are
 * made once more from scratch, with the service book. Writes `results/compare.json`.
 *
 *     npx tsx prove/compare.ts [--without-sheets] [--kept FOLDER [--only-kept | --part N/OF]]
 *
 * With a folder, what was composed is kept there and composed only once; it is good for one state of the program. Several
 * programs compose beside each other, each its `--part`, and write no results. With `--only-kept` the sheets of changes that
 * were not composed before are left out, which the results say.
 */
import { createHash } from "node:crypto";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { emptyShop } from "../packages/book/src/index.ts";
import { readBook } from "../packages/book/src/io/index.ts";
import {
  type Comparison,
  compareFacts,
  factNames,
  Line,
  type LineResult,
  machineFacts,
} from "../packages/engine/src/index.ts";
import { scriptedChanges } from "./compare/changes.ts";
import { type Composed, compose, composeBook, composedOnce } from "./compare/composed.ts";
import { disagreements, sheetDisagreements } from "./compare/held-against.ts";
import type { ScriptedChange } from "./compare/script.ts";
import { ruleDisagreements } from "./compare/sheet-rules.ts";
import { writeJson } from "./write-json.ts";

/** Changes that are made once more from scratch, spread over the list. */
const REBUILT = 5;

const { book, shop: read } = await readBook(fileURLToPath(new URL("../examples/tidewatch", import.meta.url)));
const shop = read ?? emptyShop();
const withSheets = !process.argv.includes("--without-sheets");
const keptAt = process.argv.indexOf("--kept");
const folder = keptAt < 0 ? mkdtempSync(join(tmpdir(), "compare-")) : (process.argv[keptAt + 1] ?? "");
const keyOf = (name: string): string => createHash("sha256").update(name).digest("hex").slice(0, 16);

const BEFORE = "before";
const NOTHING: Composed = { facts: [], texts: {} };
const onlyKept = process.argv.includes("--only-kept");
/** What was composed of a line under a name; null: it is not looked at. */
const composed = (name: string, make: () => Composed): Composed | null =>
  withSheets ? composedOnce(folder, name, onlyKept ? null : make) : null;
const bookOf = (of: LineResult): Composed => ({ facts: [composeBook(of)], texts: {} });

const line = new Line();
const before = line.run(book, shop);
const shown = composed(BEFORE, () => compose(before, true)) ?? NOTHING;
const old = machineFacts(before, shown.facts);
const changes = scriptedChanges(book, before);
const rebuilt = new Set(
  Array.from({ length: REBUILT }, (_, i) => Math.floor(((i + 0.5) * changes.length) / REBUILT)),
);

const [part = 0, parts = 1] = (process.argv[process.argv.indexOf("--part") + 1] ?? "").split("/").map(Number);
const isPart = process.argv.includes("--part");

/** The same comparison from a line without memory, every sheet composed once more; and the service book beside them. */
function again(change: ScriptedChange, comparison: Comparison): string[] | null {
  const fresh = new Line().run(change.after, shop);
  const name = keyOf(change.name);
  const sheets = composed(`again-${name}`, () => compose(fresh, false));
  const books = [
    composed(`book-${BEFORE}`, () => bookOf(before)),
    composed(`book-${name}`, () => bookOf(fresh)),
  ];
  if (withSheets && (sheets === null || books.includes(null))) return null;
  const now = machineFacts(fresh, sheets?.facts ?? []);
  const same = JSON.stringify(compareFacts(old, now)) === JSON.stringify(comparison);
  const [was, is] = [old, now].map((facts, i) => ({ ...facts, sheets: books[i]?.facts ?? [] }));
  return [
    ...(same ? [] : ["made from scratch it is another comparison"]),
    ...(was === undefined || is === undefined
      ? []
      : sheetDisagreements(was.sheets, is.sheets, compareFacts(was, is))),
  ];
}

let agree = 0;
let [looked, remade] = [0, 0];
const rows: Record<string, unknown>[] = [];
for (const [i, change] of changes.entries()) {
  if (isPart && i % parts !== part) continue;
  const after = line.run(change.after, shop);
  const sheets = composed(keyOf(change.name), () => compose(after, false));
  // Where sheets are not looked at there are none on either side.
  const was = sheets === null ? { ...old, sheets: [] } : old;
  const now = machineFacts(after, sheets?.facts ?? []);
  const comparison = compareFacts(was, now);
  const found = [
    ...disagreements(change, { before, after, comparison, names: factNames(was, now) }),
    ...sheetDisagreements(was.sheets, now.sheets, comparison),
    ...(sheets === null ? [] : ruleDisagreements(change.sheets, shown, comparison)),
  ];
  const anew = rebuilt.has(i) && (sheets !== null || !withSheets) ? again(change, comparison) : null;
  found.push(...(anew ?? []));
  if (found.length === 0) agree++;
  if (sheets !== null) looked++;
  if (anew !== null) remade++;
  const said = comparison.groups.reduce((sum, group) => sum + group.changes.length, 0);
  rows.push({
    change: change.name,
    sentences: said,
    declared: change.says.length + change.follows.length,
    sheets: sheets === null ? null : comparison.sheets.length,
    ...(anew === null ? {} : { rebuilt: true }),
    ...(found.length > 0 ? { found: found.slice(0, 8) } : {}),
  });
  process.stderr.write(
    `${i + 1}/${changes.length} ${change.name}: ${found.length === 0 ? "agrees" : found.join("\n    ")}\n`,
  );
}
if (withSheets && !isPart)
  writeJson("compare.json", {
    ...{ changes: changes.length, agree, withSheets: looked, rebuilt: remade },
    ...{ sheets: old.sheets.length, rows },
  });
process.exitCode = agree === changes.length ? 0 : 1;
