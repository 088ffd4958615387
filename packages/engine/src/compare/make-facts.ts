import { BOOK_TABLES, type BookTableName, rawTable } from "@pinwright/book";
import { compareText, numberOfDecimal } from "@pinwright/kernel";
import type { Item, LineResult, Machine } from "../model/index.ts";
import {
  type EndFact,
  FACTS_FORMAT,
  type FactRow,
  type FactRows,
  type ItemFact,
  type MachineFacts,
  type PartFact,
  type SheetFact,
  type StepFact,
  type WireFact,
} from "./facts.ts";

/** Nets with more board pins than this are supplies and returns, which say nothing of one device. */
const MOST_OWN_PINS = 3;

/**
 * Everything of a worked-out machine that a comparison speaks of.
 * @param sheets its sheets in one language; none: sheets are not compared
 */
export function machineFacts(line: LineResult, sheets: readonly SheetFact[]): MachineFacts {
  const { machine } = line;
  const about = machine.book.machine;
  return {
    format: FACTS_FORMAT,
    machine: {
      id: about.id,
      labels: { en: about.label || about.id, zh: about.label_zh || about.label || about.id },
      owner: about.owner,
      approved: about.approved,
      revision: about.revision,
    },
    rows: definition(machine),
    items: record(machine.items, (item) => itemFact(item, machine, usesOf(machine))),
    wires: wiresOf(line),
    parts: partsOf(line),
    steps: Object.fromEntries(line.steps.steps.map((step): [string, StepFact] => [step.id, stepFact(step)])),
    symbols: record(line.fastening.symbols, ({ letter, shape, shade }) => `${letter} ${shape} ${shade}`),
    findings: line.findings.map(({ rule, severity, subjects, numbers, accepted }) => ({
      ...{ rule, severity, subjects, numbers },
      accepted: accepted === null ? null : { by: accepted.by, reason: accepted.reason },
    })),
    sheets,
  };
}

const record = <T, U>(map: ReadonlyMap<string, T>, of: (value: T) => U): Record<string, U> =>
  Object.fromEntries([...map].map(([id, value]) => [id, of(value)]));

/** Every row of the book as text. */
function definition({ book }: Machine): MachineFacts["rows"] {
  const tables: Record<string, FactRows> = {};
  const names = Object.keys(BOOK_TABLES).filter((name): name is BookTableName => name in BOOK_TABLES);
  for (const name of names) {
    const table = BOOK_TABLES[name];
    const { header, rows } = rawTable(table, book.tables[name], name);
    const keyAt = table.key.map((column) => header.indexOf(column));
    tables[name] = Object.fromEntries(
      rows.map((cells): [string, FactRow] => [
        keyAt.map((at) => cells[at] ?? "").join(" "),
        Object.fromEntries(
          header.map((column, at) => [column, cells[at] ?? ""]).filter(([, text]) => text !== ""),
        ),
      ]),
    );
  }
  const { revision: _, date: __, ...machine } = book.machine;
  tables.machine = { machine: texts(machine) };
  tables.outlines = Object.fromEntries(
    [...book.outlines].map(([name, { rings }]) => [
      name,
      { rings: rings.map((ring) => ring.map(({ xMm, yMm }) => `${um(xMm)},${um(yMm)}`).join(";")).join("/") },
    ]),
  );
  return tables;
}

const um = (mm: number): number => Math.round(mm * 1000) + 0;

const texts = (values: object): FactRow =>
  Object.fromEntries(
    Object.entries(values)
      .filter(([, value]) => value !== "" && value !== null && value !== undefined)
      .map(([name, value]) => [name, typeof value === "string" ? value : JSON.stringify(value)]),
  );

/** Pins of boards by net, for nets that are somebody's own. */
const usesOf = (() => {
  const made = new WeakMap<Machine, ReadonlyMap<string, readonly string[]>>();
  return (machine: Machine): ReadonlyMap<string, readonly string[]> => {
    const known = made.get(machine);
    if (known !== undefined) return known;
    const pins = new Map<string, Set<string>>();
    const netsOf = new Map<string, Set<string>>();
    for (const { net, point } of machine.ends) {
      const itemId = machine.points.get(point)?.itemId ?? "";
      if (machine.items.get(itemId)?.kind === "board") (pins.get(net) ?? put(pins, net)).add(point);
      else (netsOf.get(itemId) ?? put(netsOf, itemId)).add(net);
    }
    const uses = new Map<string, readonly string[]>();
    for (const [itemId, nets] of netsOf) {
      const own = [...nets].flatMap((net) => {
        const of = [...(pins.get(net) ?? [])];
        return of.length > MOST_OWN_PINS ? [] : of;
      });
      uses.set(itemId, [...new Set(own)].sort(compareText));
    }
    made.set(machine, uses);
    return uses;
  };
})();

function put(map: Map<string, Set<string>>, key: string): Set<string> {
  const set = new Set<string>();
  map.set(key, set);
  return set;
}

function itemFact(item: Item, machine: Machine, uses: ReadonlyMap<string, readonly string[]>): ItemFact {
  const { panelId, side, xMm, yMm, rotationDeg } = item.place;
  return {
    ...{ kind: item.kind, type: item.type.id, labels: item.labels, panel: panelId, side },
    ...{ xMm: xMm + 0, yMm: yMm + 0, rotationDeg: rotationDeg + 0 },
    number: item.kind === "device" ? item.number : item.kind === "board" ? item.address : null,
    parent: item.parentId ?? "",
    uses: machine.items.get(item.id)?.kind === "device" ? (uses.get(item.id) ?? []) : [],
  };
}

function wiresOf({ machine, harnesses }: LineResult): Record<string, WireFact> {
  const end = (id: string): EndFact => {
    const point = machine.points.get(id);
    if (point === undefined) return { point: id, item: "", pin: "", part: "" };
    const { contact_part, mate_contact_part } = point.family;
    // A board or device has the header; the wire has what mates with it.
    const part = mate_contact_part ?? contact_part ?? "";
    return { point: id, item: point.itemId, pin: point.localId, part };
  };
  const wires: Record<string, WireFact> = {};
  for (const { harness, wires: own } of harnesses.values())
    for (const wire of own)
      wires[wire.id] = {
        ...{ number: `${harness.number}-${wire.number}`, harness: harness.id, net: wire.netId },
        ...{ netClass: wire.netClass, supply: machine.nets.get(wire.netId)?.supply ?? "" },
        ...{ colour: wire.colour, type: wire.wireType.id, finishedMm: wire.finishedMm, cutMm: wire.cutMm },
        ...{ a: end(wire.a), b: end(wire.b) },
      };
  return wires;
}

function partsOf({ machine, parts: { bill } }: LineResult): Record<string, PartFact> {
  const orderOf = new Map(machine.book.tables.parts.map((row) => [row.id, row.order_number ?? ""]));
  const parts: Record<string, PartFact> = {};
  for (const [id, { kind, labels, unit }] of bill.nodes) {
    const total = bill.totals.get(id);
    if (kind !== "part" || total === undefined) continue;
    parts[id] = { labels, unit, count: numberOfDecimal(total), orderNumber: orderOf.get(id) ?? "" };
  }
  return parts;
}

const stepFact = (step: LineResult["steps"]["steps"][number]): StepFact => ({
  ...{ number: step.number, labels: step.labels, items: step.itemIds, fasteners: step.fastenerIds },
  minutes: Math.round((step.seconds * step.times) / 6) / 10,
});
