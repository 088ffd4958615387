/**
 * Makes more than a hundred scripted changes to Tidewatch, compares each with the machine as it was, and holds what is said
 * against what the script says that it did, and what follows against what the line gives before and after: wires, counts of
 * parts, steps and findings looked at one by one. Every sheet and the service book are composed on both sides: those that are
 * told must be those whose bodies differ, must include every sheet that the script's rule names, and no other than may change.
 * Five of them are made once more from scratch. Writes `results/compare.json`.
 *
 *     npx tsx prove/compare.ts [--without-sheets] [--kept FOLDER]
 *
 * With a folder, what was composed is kept there and composed only once; it is good for one state of the program.
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
const composed = (name: string, line: LineResult): Composed =>
  withSheets ? composedOnce(folder, name, () => compose(line, name === BEFORE)) : NOTHING;

const line = new Line();
const before = line.run(book, shop);
const shown = composed(BEFORE, before);
const old = machineFacts(before, shown.facts);
const changes = scriptedChanges(book, before);
const rebuilt = new Set(
  Array.from({ length: REBUILT }, (_, i) => Math.floor(((i + 0.5) * changes.length) / REBUILT)),
);

const oldBook = withSheets ? [composeBook(before)] : [];

/** The same comparison from a line without memory, every sheet composed once more; and the service book beside them. */
function again(change: ScriptedChange, comparison: Comparison): string[] {
  const fresh = new Line().run(change.after, shop);
  const sheets = withSheets ? compose(fresh, false).facts : [];
  const now = machineFacts(fresh, sheets);
  const same = JSON.stringify(compareFacts(old, now)) === JSON.stringify(comparison);
  const newBook = withSheets ? [composeBook(fresh)] : [];
  const [was, is] = [
    { ...old, sheets: oldBook },
    { ...now, sheets: newBook },
  ];
  return [
    ...(same ? [] : ["made from scratch it is another comparison"]),
    ...sheetDisagreements(was.sheets, is.sheets, compareFacts(was, is)),
  ];
}

let agree = 0;
const rows: Record<string, unknown>[] = [];
for (const [i, change] of changes.entries()) {
  const after = line.run(change.after, shop);
  const now = machineFacts(after, composed(keyOf(change.name), after).facts);
  const comparison = compareFacts(old, now);
  const found = [
    ...disagreements(change, { before, after, comparison, names: factNames(old, now) }),
    ...sheetDisagreements(old.sheets, now.sheets, comparison),
    ...(withSheets ? ruleDisagreements(change.sheets, shown, comparison) : []),
  ];
  if (rebuilt.has(i)) found.push(...again(change, comparison));
  if (found.length === 0) agree++;
  const said = comparison.groups.reduce((sum, group) => sum + group.changes.length, 0);
  rows.push({
    change: change.name,
    sentences: said,
    declared: change.says.length + change.follows.length,
    sheets: comparison.sheets.length,
    ...(rebuilt.has(i) ? { rebuilt: true } : {}),
    ...(found.length > 0 ? { found: found.slice(0, 8) } : {}),
  });
  process.stderr.write(
    `${i + 1}/${changes.length} ${change.name}: ${found.length === 0 ? "agrees" : found.join("\n    ")}\n`,
  );
}
if (withSheets)
  writeJson("compare.json", { changes: changes.length, agree, sheets: old.sheets.length, rows });
process.exitCode = agree === changes.length ? 0 : 1;
