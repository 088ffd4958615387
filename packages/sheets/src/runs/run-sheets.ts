import type { LineResult, RunsPlan } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import type { SheetOptions } from "../options.ts";
import { composeCashSheet } from "./cash-sheet.ts";
import { composeCostSheet } from "./cost-sheet.ts";
import { RUN_SHEET_KINDS, type RunSheetKind, runSheetName } from "./identity.ts";
import { composePurchaseOrder } from "./purchase-order.ts";
import { composeRunSchedule } from "./schedule.ts";
import { composeShortageList } from "./shortage-list.ts";
import type { RunSheetInput } from "./texts.ts";

/** Which sheets of runs are wanted. */
export interface RunSheetsChoice {
  /** Absent: all. */
  readonly kinds?: readonly RunSheetKind[];
  /** Shortages and cost of this run, and the orders that are for it; absent: of all runs. */
  readonly runId?: string;
}

/** What one sheet is about: an order, a run, or all runs. */
interface RunSheet {
  readonly kind: RunSheetKind;
  /** Order or run; blank: all runs. */
  readonly name: string;
  readonly compose: (input: RunSheetInput) => SheetDocument;
}

function sheetsOf(plan: RunsPlan, { kinds = RUN_SHEET_KINDS, runId }: RunSheetsChoice): readonly RunSheet[] {
  if (plan.runs.length === 0) return [];
  const isMeant = (id: string): boolean => runId === undefined || runId === id;
  const sheets: readonly RunSheet[] = [
    ...plan.orders
      .filter((order) => order.lines.some((line) => line.runIds.some(isMeant)))
      .map(
        (order): RunSheet => ({
          kind: "purchase-order",
          name: order.id,
          compose: (input) => composePurchaseOrder(input, order),
        }),
      ),
    { kind: "run-schedule", name: "", compose: composeRunSchedule },
    ...plan.runs
      .filter((run) => isMeant(run.runId))
      .map(
        (run): RunSheet => ({
          kind: "run-shortages",
          name: run.runId,
          compose: (input) => composeShortageList(input, run.runId),
        }),
      ),
    ...plan.costs
      .filter((cost) => isMeant(cost.runId))
      .map(
        (cost): RunSheet => ({
          kind: "run-cost",
          name: cost.runId,
          compose: (input) => composeCostSheet(input, cost),
        }),
      ),
    { kind: "run-cash", name: "", compose: composeCashSheet },
  ];
  return sheets.filter(({ kind }) => kinds.includes(kind));
}

/** The sheets of runs, one after the other: an order for each supplier and day, schedule, shortages, cost and money. */
export function* composeRunSheets(
  plan: RunsPlan,
  line: Pick<LineResult, "machine">,
  options: SheetOptions,
  choice: RunSheetsChoice = {},
): Generator<SheetDocument, void> {
  for (const sheet of sheetsOf(plan, choice)) yield sheet.compose({ plan, line, options });
}

/** Names of the documents that `composeRunSheets` makes, without composing them. */
export const runSheetNames = (
  plan: RunsPlan,
  language: SheetLanguage = "en",
  choice: RunSheetsChoice = {},
): readonly string[] => sheetsOf(plan, choice).map(({ kind, name }) => runSheetName(kind, name, language));
