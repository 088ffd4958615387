import type { LineResult, OrderReason, WorkStep } from "@pinwright/engine";
import type { Command } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook, runLine } from "../load.ts";
import { STATUS } from "../terminal.ts";
import { textTable } from "../text-table.ts";

const WHY: Readonly<Record<OrderReason, string>> = {
  hides: "would be hidden: its fastener",
  "hides-nut": "would be hidden: its nut",
  covers: "would be covered",
  wired: "is wired before it is closed",
  stands: "must be in place",
  built: "is built first",
  rule: "goes first by rule",
};

const minutes = (seconds: number): string => (seconds / 60).toFixed(1);

/** Columns that stand right: number, fasteners, minutes, changes. */
const FIGURES: ReadonlySet<number> = new Set([0, 3, 4, 5, 6]);

const countOf = ({ motions }: WorkStep, kind: WorkStep["motions"][number]["kind"]): number =>
  motions.find((motion) => motion.kind === kind)?.count ?? 0;

function orderText({ steps: { steps } }: LineResult): string {
  const numbers = new Map(steps.map((step) => [step.id, step.number]));
  const heads = ["no.", "step", "side", "fasteners", "min", "bits", "boxes", "skill", "after"];
  const rows = steps.map((step) => [
    String(step.number),
    step.id,
    step.panelId === null
      ? "-"
      : `${step.panelId} ${step.side}${countOf(step, "turn-over") > 0 ? ", turned" : ""}`,
    String(step.fastenerIds.length + step.recheckIds.length),
    `${minutes(step.seconds)}${step.secondsFrom === "designer" ? " set" : ""}`,
    String(countOf(step, "bit-change")),
    String(countOf(step, "box-change")),
    step.skill,
    step.afterIds.map((id) => numbers.get(id) ?? "?").join(" "),
  ]);
  return textTable([heads, ...rows], FIGURES);
}

/** Why each step comes after another, in the order of the steps. */
function reasonsText({ steps: { steps, edges } }: LineResult): string {
  const numbers = new Map(steps.map((step) => [step.id, step.number]));
  const numberOf = (id: string): number => numbers.get(id) ?? 0;
  return [...edges]
    .sort((a, b) => numberOf(a.afterId) - numberOf(b.afterId) || numberOf(a.beforeId) - numberOf(b.beforeId))
    .map(
      ({ beforeId, afterId, why, at }) =>
        `${numberOf(afterId)} ${afterId} after ${numberOf(beforeId)} ${beforeId}: the earlier ${WHY[why]}${at === "" ? "" : ` (${at})`}`,
    )
    .join("\n");
}

function totalsText({ steps: result }: LineResult): string {
  const { steps, turnOvers, fewestTurnOvers, boxChanges, bitChanges } = result;
  const hours = steps.reduce((sum, step) => sum + step.seconds, 0) / 3600;
  const bound =
    turnOvers === fewestTurnOvers ? "no order has fewer" : `no order has fewer than ${fewestTurnOvers}`;
  return [
    `${steps.length} steps, ${hours.toFixed(1)} h for one machine`,
    `panels turned over: ${turnOvers}; ${bound}`,
    `changes of boxes: ${boxChanges}, of bits: ${bitChanges}, along the whole order`,
  ].join("\n");
}

function asJson({ machine, steps }: LineResult): string {
  const { id, revision } = machine.book.machine;
  return `${JSON.stringify({ machine: id, revision, ...steps }, null, 2)}\n`;
}

/** Tells the steps of assembly in their order, with times and changes, and why one comes after another. */
export const stepsCommand: Command = {
  name: "steps",
  operands: "BOOK",
  about: "list the steps of assembly in their order, with times, changes and turn-overs",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    why: { type: "boolean", about: "tell why each step comes after another" },
    json: { type: "boolean", about: "write all of it as JSON" },
  },
  run: async (call, terminal) => {
    const loaded = await loadBook(call);
    for (const fault of loaded.faults) terminal.err(`${faultText(fault)}\n`);
    if (fatalFaults(loaded.faults).length > 0) return STATUS.failed;
    const line = runLine(loaded);
    const loops = line.findings.filter((finding) => finding.rule === "order-loop").length;
    if (loops > 0) terminal.err(`loops in the order: ${loops}; a rule of each is given up, see \`check\`\n`);
    if (call.flag("json")) terminal.out(asJson(line));
    else if (call.flag("why")) terminal.out(`${reasonsText(line)}\n`);
    else terminal.out(`${orderText(line)}\n\n${totalsText(line)}\n`);
    return STATUS.good;
  },
};
