/**
 * Makes a hundred scripted changes to Tidewatch, compares each with the machine as it was, and holds what is said against
 * what was done and against what the line gives before and after: wires, counts of parts, steps and findings looked at one by
 * one, and every sheet composed on both sides. Five of them are made once more from scratch. Writes `results/compare.json`.
 *
 *     npx tsx prove/compare.ts [--without-sheets]
 */
import { fileURLToPath } from "node:url";
import { emptyShop } from "../packages/book/src/index.ts";
import { readBook } from "../packages/book/src/io/index.ts";
import {
  compareFacts,
  factNames,
  Line,
  type LineResult,
  type MachineFacts,
  machineFacts,
  type SheetFact,
} from "../packages/engine/src/index.ts";
import { composeSheets, sheetFactOf, USUAL_OPTIONS } from "../packages/sheets/src/index.ts";
import { scriptedChanges } from "./compare/changes.ts";
import { disagreements, sheetDisagreements } from "./compare/held-against.ts";
import { writeJson } from "./write-json.ts";

/** Changes that are made once more from scratch, spread over the list. */
const REBUILT = 5;

const { book, shop: read } = await readBook(fileURLToPath(new URL("../examples/tidewatch", import.meta.url)));
const shop = read ?? emptyShop();
const withSheets = !process.argv.includes("--without-sheets");

const sheetsOf = (of: LineResult): readonly SheetFact[] =>
  withSheets
    ? [
        ...composeSheets(of, { ...USUAL_OPTIONS, date: book.machine.date }, { kinds: [], harnessIds: [] }),
      ].map(({ of: about, kind, document }) => sheetFactOf(about, kind, document))
    : [];

const line = new Line();
const before = line.run(book, shop);
const old: MachineFacts = machineFacts(before, sheetsOf(before));
const changes = scriptedChanges(book);
const rebuilt = new Set(
  Array.from({ length: REBUILT }, (_, i) => Math.floor(((i + 0.5) * changes.length) / REBUILT)),
);

let agree = 0;
const rows: Record<string, unknown>[] = [];
for (const [i, change] of changes.entries()) {
  const after = line.run(change.after, shop);
  const now = machineFacts(after, sheetsOf(after));
  const comparison = compareFacts(old, now);
  const found = [
    ...disagreements(change, { before, after, comparison, names: factNames(old, now) }),
    ...sheetDisagreements(old.sheets, now.sheets, comparison),
  ];
  if (rebuilt.has(i)) {
    const fresh = new Line().run(change.after, shop);
    const again = compareFacts(old, machineFacts(fresh, sheetsOf(fresh)));
    if (JSON.stringify(again) !== JSON.stringify(comparison))
      found.push("made from scratch it is another comparison");
  }
  if (found.length === 0) agree++;
  const said = comparison.groups.reduce((sum, group) => sum + group.changes.length, 0);
  rows.push({
    change: change.name,
    sentences: said,
    sheets: comparison.sheets.length,
    ...(rebuilt.has(i) ? { rebuilt: true } : {}),
    ...(found.length > 0 ? { found: found.slice(0, 8) } : {}),
  });
  process.stderr.write(
    `${i + 1}/${changes.length} ${change.name}: ${found.length === 0 ? "agrees" : found[0]}\n`,
  );
}
writeJson("compare.json", { changes: changes.length, agree, sheets: old.sheets.length, rows });
process.exitCode = agree === changes.length ? 0 : 1;
