import { join, resolve } from "node:path";
import {
  changeRun,
  comparePlans,
  compareRuns,
  costAgainstQuantity,
  dayNumber,
  dayText,
  Line,
  type MachineVariant,
  optionsKey,
  type PlanInput,
  planRuns,
  type RunChange,
  type RunsPlan,
  resolveMachine,
  runMixes,
  shortages,
  usualOptions,
  variantOf,
} from "@pinwright/engine";
import { textOfDecimal } from "@pinwright/kernel";
import {
  composeRunSheets,
  RUN_SHEET_KINDS,
  type RunSheetKind,
  runSheetNames,
  USUAL_OPTIONS,
} from "@pinwright/sheets";
import { formatsOf, renderDocument } from "@pinwright/sheets/print";
import { findingWords, type SheetLanguage } from "@pinwright/words";
import type { Command, CommandCall } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, type Loaded, loadBook } from "../load.ts";
import { writeWhole } from "../manifest.ts";
import { countOption, numberOption } from "../number-option.ts";
import { Progress, STATUS, type Status, type Terminal, UsageError } from "../terminal.ts";
import {
  cashText,
  costsText,
  lotsText,
  ordersText,
  planPairText,
  runPairText,
  runsText,
  shortagesText,
  stagesText,
} from "./run-text.ts";

/** A day of an option, or the one that counts without it. */
function dayOption(call: CommandCall, option: string, usual: string): string {
  const text = call.text(option) ?? usual;
  if (text !== "" && dayNumber(text) === null)
    throw new UsageError(`--${option} ${text}: expected a day as year-month-day`);
  return text;
}

/** Every set of options that the runs ask for, worked out. @param usual whether the usual one is wanted as well */
function variantsOf(
  { book, shop }: Loaded,
  usual: boolean,
  terminal: Terminal,
): ReadonlyMap<string, MachineVariant> {
  const mixes = new Map(runMixes(book, shop).map((mix) => [mix.key, mix.optionIds]));
  if (usual) mixes.set(optionsKey(usualOptions(book)), [...usualOptions(book)]);
  const line = new Line();
  const progress = new Progress(terminal);
  const variants = new Map<string, MachineVariant>();
  for (const [key, optionIds] of mixes) {
    progress.show(variants.size + 1, mixes.size, `machines worked out: ${key}`);
    variants.set(key, variantOf(line.run(book, shop, new Set(optionIds))));
  }
  progress.end();
  return variants;
}

function runOption(call: CommandCall, input: PlanInput): string | undefined {
  const id = call.text("run");
  const known = input.shop.tables.runs.map((run) => run.id);
  if (id !== undefined && !known.includes(id))
    throw new UsageError(`--run ${id}: the shop has no such run; it has ${known.join(", ") || "none"}`);
  return id;
}

/** What is different in the plan that is asked about; null: nothing. */
function changeOf(call: CommandCall, runId: string | undefined): RunChange | null {
  const positive = (n: number): boolean => n > 0;
  const machines = countOption(call, "machines");
  const pricesPct = numberOption(call, "prices", positive, "per cent over 0");
  const leadPct = numberOption(call, "lead", (n) => n >= 0, "per cent from 0");
  const ship = dayOption(call, "ship", "");
  if (machines === undefined && pricesPct === undefined && leadPct === undefined && ship === "") return null;
  return {
    ...(runId === undefined ? {} : { runId }),
    ...(machines === undefined ? {} : { machines }),
    ...(pricesPct === undefined ? {} : { pricesPct }),
    ...(leadPct === undefined ? {} : { leadPct }),
    ...(ship === "" ? {} : { ship }),
  };
}

function quantitiesOf(call: CommandCall): readonly number[] {
  return call.texts("cost").map((text) => {
    const value = Number(text);
    if (!Number.isInteger(value) || value < 1 || value > 100_000)
      throw new UsageError(`--cost ${text}: expected whole numbers from 1`);
    return value;
  });
}

/** The plan of one run alone, or of all. */
const only = (plan: RunsPlan, runId: string | undefined): RunsPlan =>
  runId === undefined
    ? plan
    : {
        ...plan,
        runs: plan.runs.filter((run) => run.runId === runId),
        stages: plan.stages.filter((block) => block.runId === runId),
        costs: plan.costs.filter((cost) => cost.runId === runId),
        orders: plan.orders.filter((order) => order.lines.some((line) => line.runIds.includes(runId))),
      };

/** Writes sheets of runs in all their formats. */
async function writeSheets(
  folder: string,
  input: PlanInput,
  plan: RunsPlan,
  call: CommandCall,
  kinds: readonly RunSheetKind[],
  terminal: Terminal,
): Promise<void> {
  const language = languageOf(call);
  const runId = call.text("run");
  const choice = { kinds, ...(runId === undefined ? {} : { runId }) };
  const options = { ...USUAL_OPTIONS, language, date: dayText(input.today) };
  const line = { machine: resolveMachine(input.book, input.shop) };
  const names = runSheetNames(plan, language, choice);
  const progress = new Progress(terminal);
  let done = 0;
  let files = 0;
  for (const document of composeRunSheets(plan, line, options, choice)) {
    for (const format of formatsOf(document)) {
      await writeWhole(
        join(folder, `${document.fileName}.${format}`),
        await renderDocument(document, format),
      );
      files++;
    }
    progress.show(++done, names.length, document.fileName);
  }
  progress.end();
  terminal.out(`${done} sheets in ${folder}: ${files} files\n`);
}

function languageOf(call: CommandCall): SheetLanguage {
  const text = call.text("language") ?? "both";
  if (text !== "en" && text !== "zh" && text !== "both")
    throw new UsageError(`--language ${text}: expected en, zh or both`);
  return text;
}

/** The answer to what is asked, as text. */
function answer(call: CommandCall, input: PlanInput, plan: RunsPlan): string {
  const runId = runOption(call, input);
  const pair = call.texts("compare");
  if (pair.length > 0) {
    const [a, b] = pair;
    if (a === undefined || b === undefined) throw new UsageError("--compare: expected two runs, A,B");
    const known = plan.runs.map((run) => run.runId);
    for (const id of [a, b])
      if (!known.includes(id))
        throw new UsageError(`--compare ${id}: there is no such open run; there are ${known.join(", ")}`);
    return runPairText(compareRuns(plan, a, b), plan.currency, ["a", "b"]);
  }
  const quantities = quantitiesOf(call);
  if (quantities.length > 0)
    return `${costsText(costAgainstQuantity(input, runId ?? null, quantities), plan.currency)}\n\nEach quantity as a run by itself, with nothing in stock and tools bought anew; work as people learn, with overhead.`;
  const change = changeOf(call, runId);
  if (change !== null) {
    const changed = planRuns({ ...input, shop: changeRun(input.shop, change) });
    return planPairText(comparePlans(only(plan, runId), only(changed, runId)));
  }
  if (call.flag("shortages"))
    return only(plan, runId)
      .runs.map((run) => `${run.runId}\n${shortagesText(shortages(input, plan, run.runId))}`)
      .join("\n\n");
  const shown = only(plan, runId);
  return [
    `${runsText(shown)}\nPrices as all open runs are bought together; work as people learn, with overhead; see --cost for a run by itself.`,
    stagesText(shown),
    ordersText(shown),
    lotsText(plan),
    cashText(plan),
    ...shown.costs.map((cost) => costsText([cost], plan.currency)),
  ].join("\n\n");
}

function findingsText({ findings }: RunsPlan): string {
  return findings
    .map((finding) => {
      const words = findingWords("en", finding.rule);
      return `${finding.severity} ${finding.rule}: ${words.say(finding)}\n  ${words.todo}\n`;
    })
    .join("");
}

/** JSON of a plan: exact figures as text. */
const asJson = (value: unknown): string =>
  `${JSON.stringify(
    value,
    (_, inner: unknown) =>
      typeof inner === "bigint"
        ? textOfDecimal(inner)
        : inner instanceof Map
          ? Object.fromEntries(inner)
          : inner,
    2,
  )}\n`;

async function run(call: CommandCall, terminal: Terminal): Promise<Status> {
  const loaded = await loadBook(call);
  for (const fault of loaded.faults) terminal.err(`${faultText(fault)}\n`);
  if (fatalFaults(loaded.faults).length > 0) return STATUS.failed;
  const today = dayNumber(dayOption(call, "today", new Date().toISOString().slice(0, 10))) ?? 0;
  const { book, shop } = loaded;
  if (runMixes(book, shop).length === 0 && call.texts("cost").length === 0) {
    terminal.out(`The shop has no open run of ${book.machine.id}: add one to its table runs.\n`);
    return STATUS.good;
  }
  const variants = variantsOf(loaded, call.texts("cost").length > 0, terminal);
  const input: PlanInput = { book, shop, today, variants };
  const plan = planRuns(input);
  const runId = runOption(call, input);
  const orders = call.text("orders");
  const sheets = call.text("sheets");
  if (orders !== undefined)
    await writeSheets(resolve(orders), input, plan, call, ["purchase-order"], terminal);
  else if (sheets !== undefined)
    await writeSheets(resolve(sheets), input, plan, call, RUN_SHEET_KINDS, terminal);
  else if (call.flag("json")) terminal.out(asJson(only(plan, runId)));
  else terminal.out(`${answer(call, input, plan)}\n`);
  terminal.err(findingsText(plan));
  return plan.findings.some((finding) => finding.severity === "error") ? STATUS.found : STATUS.good;
}

/** Plans the shop's runs of a book: days, orders, money and cost, what would be if, and the sheets to buy by. */
export const runCommand: Command = {
  name: "run",
  operands: "BOOK",
  about: "plan the shop's runs: needs, orders, days, money and the cost of a machine; what would be if",
  count: [1, 1],
  options: {
    shop: BOOK_OPTIONS.shop,
    today: { type: "string", value: "DATE", about: "plan as of this day; else today" },
    run: { type: "string", value: "ID", about: "only this run" },
    machines: { type: "string", value: "N", about: "what would be if so many were built" },
    ship: { type: "string", value: "DATE", about: "what would be if it shipped on this day" },
    prices: { type: "string", value: "PCT", about: "what would be if prices were so many per cent" },
    lead: { type: "string", value: "PCT", about: "what would be if lead times were so many per cent" },
    cost: { type: "string", multiple: true, value: "N,N…", about: "cost of a machine at these quantities" },
    compare: { type: "string", multiple: true, value: "A,B", about: "two runs side by side" },
    shortages: { type: "boolean", about: "what each stage still lacks" },
    orders: { type: "string", value: "DIR", about: "write the purchase orders as PDF, XLSX and CSV" },
    sheets: { type: "string", value: "DIR", about: "write all sheets of runs" },
    language: { type: "string", value: "en|zh|both", about: "language of the sheets; else both" },
    json: { type: "boolean", about: "write the plan as JSON, exact figures as text" },
  },
  run,
};
