import {
  type CostKind,
  dayText,
  type MachineCost,
  type PlanPair,
  type RunPair,
  type RunsPlan,
  type Shortage,
  type Total,
} from "@pinwright/engine";
import { currencyPlaces, type Decimal, textOfDecimal } from "@pinwright/kernel";
import { textTable } from "../text-table.ts";

/** Contributors that are told of each cost, and things that a figure lacks which are named. */
const MOST_CONTRIBUTORS = 12;
const MOST_NAMED = 8;

const KINDS: Readonly<Record<CostKind, string>> = {
  boards: "boards",
  electronic: "electronic parts",
  harness: "wire and contacts",
  sheet: "sheet goods",
  "made-parts": "made parts, with work on them",
  "bought-parts": "bought parts",
  screws: "screws, hardware",
  work: "work",
  tooling: "tooling",
  scrap: "spoilt and lost",
  carriage: "carriage",
  overhead: "overhead",
};

const day = (number: number | null): string => (number === null ? "-" : dayText(number));

/** Money with the places of its currency. */
const money = (amount: Decimal, currency: string): string => textOfDecimal(amount, currencyPlaces(currency));

/** A sum with what it lacks: `12.50 +?`. */
const totalText = ({ value, missing }: Total, currency: string): string =>
  `${money(value, currency)}${missing.length > 0 ? " +?" : ""}`;

const quantity = (amount: Decimal): string => textOfDecimal(amount, 3).replace(/\.?0+$/u, "");

const columns = (...places: readonly number[]): ReadonlySet<number> => new Set(places);

/** Runs with their days and the cost of one machine. */
export function runsText({ runs, costs, currency }: RunsPlan): string {
  const rows = runs.map((run) => {
    const cost = costs.find((own) => own.runId === run.runId);
    return [
      run.runId,
      String(run.machines),
      day(run.startDay),
      day(run.readyDay),
      day(run.shipDay),
      cost === undefined ? "" : totalText(cost.each, currency),
      run.isLate ? `late${run.heldBy === null ? "" : `, held by ${run.heldBy}`}` : "",
    ];
  });
  const heads = ["run", "machines", "work from", "ready", "ships", `one machine, ${currency}`, ""];
  return textTable([heads, ...rows], columns(1, 5));
}

export function stagesText({ stages }: RunsPlan): string {
  const rows = stages.map((block) => [
    block.runId,
    block.stageId,
    dayText(block.startDay),
    dayText(block.endDay),
    block.isKnown ? block.minutesPerMachine.toFixed(1) : "?",
    String(block.people),
    block.labels.en,
  ]);
  return textTable([["run", "stage", "from", "to", "min", "people", ""], ...rows], columns(4, 5));
}

export function ordersText({ orders, tools, articles, currency }: RunsPlan): string {
  const rows = orders.map((order) => [
    dayText(order.orderDay),
    order.supplierId,
    dayText(order.dueDay),
    String(order.lines.length),
    `${totalText(order.total, order.currency)} ${order.currency}`,
    order.currency === currency ? "" : `${totalText(order.ownTotal, currency)} ${currency}`,
  ]);
  const lines = [
    textTable([["order on", "supplier", "due by", "lines", "total", ""], ...rows], columns(3, 4, 5)),
    ...tools.map(
      (tool) =>
        `tool ${tool.toolingId} for ${tool.partId}: order on ${dayText(tool.orderDay)}, there on ${dayText(tool.dueDay)}, ${tool.cost === null ? "cost not known" : `${money(tool.cost, currency)} ${currency}`}`,
    ),
    ...articles.map(
      (article) =>
        `first article of ${article.partId} revision ${article.revision}: ask on ${dayText(article.askDay)}, decided by ${dayText(article.dueDay)}`,
    ),
  ];
  return lines.join("\n");
}

export function cashText({ cash, currency }: RunsPlan): string {
  const rows = cash.map((week) => [
    dayText(week.week),
    ...[week.material, week.tooling, week.work, week.total].map((amount) => money(amount, currency)),
    week.runs.map(({ runId, amount }) => `${runId} ${money(amount, currency)}`).join(", "),
  ]);
  return textTable(
    [["week from", "material", "tooling", "work", `in all, ${currency}`, "of it for"], ...rows],
    columns(1, 2, 3, 4),
  );
}

/** How sure the lots are. */
export function lotsText({ lots, currency }: RunsPlan): string {
  const sum = (of: (own: RunsPlan["lots"][number]) => Decimal): Decimal =>
    lots.reduce((all, own) => all + of(own), 0n);
  const [cost, bound] = [sum((own) => own.cost), sum((own) => own.lowerBound)];
  const proven =
    cost === bound
      ? "no other lots cost less"
      : `no lots cost less than ${money(bound, currency)} ${currency}`;
  return `lots of ${lots.length} parts: ${money(cost, currency)} ${currency} with ordering and holding; ${proven}`;
}

/** What machines cost, side by side: kinds, then what contributes most to the last of them. */
export function costsText(costs: readonly MachineCost[], currency: string): string {
  const kinds = [...new Set(costs.flatMap((cost) => cost.kinds.map(({ kind }) => kind)))];
  const amount = (cost: MachineCost, kind: CostKind): string =>
    money(cost.kinds.find((own) => own.kind === kind)?.each ?? 0n, currency);
  const heads = [`one machine, ${currency}`, ...costs.map((cost) => `at ${cost.machines}`)];
  const right = new Set(heads.map((_, i) => i).slice(1));
  const rows = kinds.map((kind) => [KINDS[kind], ...costs.map((cost) => amount(cost, kind))]);
  const totals = ["in all", ...costs.map((cost) => totalText(cost.each, currency))];
  return [
    textTable([heads, ...rows, totals], right),
    ...costs.map((cost) => `\n${contributorsText(cost, currency)}`),
  ].join("\n");
}

function contributorsText({ machines, contributors, each }: MachineCost, currency: string): string {
  const rows = contributors
    .slice(0, MOST_CONTRIBUTORS)
    .map((own) => [own.id, money(own.each, currency), own.labels.en || KINDS[own.kind]]);
  const lacks = each.missing.slice(0, MOST_NAMED).map(({ id, lack }) => `${id} (${lack})`);
  const more = each.missing.length > MOST_NAMED ? ` and ${each.missing.length - MOST_NAMED} more` : "";
  return [
    textTable([[`most, at ${machines}`, currency, ""], ...rows], columns(1)),
    ...(lacks.length === 0 ? [] : [`not in it: ${lacks.join(", ")}${more}`]),
  ].join("\n");
}

/** Two plans: runs side by side, and all money. */
export function planPairText(pair: PlanPair): string {
  const { outlay, orders, currency } = pair;
  return [
    ...pair.runs.map((run) => runPairText(run, currency, ["planned", "tried"])),
    `all that goes out: ${money(outlay.a, currency)} and ${money(outlay.b, currency)} ${currency}, in ${orders.a} and ${orders.b} orders`,
  ].join("\n\n");
}

/** @param heads over the two columns */
export function runPairText(
  { a, b, kinds, contributors }: RunPair,
  currency: string,
  heads: readonly [string, string],
): string {
  const both = (name: string, of: (run: NonNullable<RunPair["a"]>) => string): readonly string[] => [
    name,
    a === null ? "-" : of(a),
    b === null ? "-" : of(b),
  ];
  const rows = [
    ["", ...heads],
    both("run", (run) => run.runId),
    both("machines", (run) => String(run.machines)),
    both("work from", (run) => day(run.startDay)),
    both("ready", (run) => day(run.readyDay)),
    both("ships", (run) => day(run.shipDay)),
    both("late", (run) => (run.isLate ? "yes" : "no")),
    ...([a, b].some((run) => run?.isLate) ? [both("held by", (run) => run.heldBy ?? "-")] : []),
    both(`one machine, ${currency}`, (run) => totalText(run.cost, currency)),
    ...kinds.map(({ kind, a: x, b: y }) => [`  ${KINDS[kind]}`, money(x, currency), money(y, currency)]),
    ...contributors
      .slice(0, MOST_CONTRIBUTORS)
      .map((own) => [`  ${own.id}`, money(own.a, currency), money(own.b, currency)]),
  ];
  return textTable(rows, columns(1, 2));
}

export function shortagesText(short: readonly Shortage[]): string {
  const heads = [
    "stage",
    "part",
    "",
    "needed",
    "there",
    "on order",
    "short",
    "unit",
    "needed by",
    "order by",
  ];
  const rows = short.map((own) => [
    own.stageId ?? "spares",
    own.partId,
    own.colour,
    quantity(own.needed),
    quantity(own.onHand),
    quantity(own.ordered),
    quantity(own.short),
    own.unit,
    dayText(own.neededDay),
    day(own.orderDay),
  ]);
  return textTable([heads, ...rows], columns(3, 4, 5, 6));
}
