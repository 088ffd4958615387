import type { ItemFact, MachineFacts, WireFact } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { shortNumber } from "../compose/number.ts";
import { fittedBeside, type ItemWork, stepNumbers } from "./kit-items.ts";
import { isLicensed, type WireWork } from "./kit-wires.ts";
import { colourName, endName, itemName, listed, named, panelName, plugOf } from "./places.ts";
import type { KitStep } from "./retrofit-kit.ts";

interface Work {
  readonly before: MachineFacts;
  readonly after: MachineFacts;
  readonly items: readonly ItemWork[];
  readonly wires: WireWork;
}

const mm = (value: number): string => shortNumber(value, 1);

const plain = (says: KitStep["says"], licensed = false): KitStep => ({ says, licensed });

/** The instruction line by line: cautions first, what is in the way, out, in, back, measured, written down. */
export function kitSteps(work: Work, revision: string): readonly KitStep[] {
  const inner = [
    ...takeOffSteps(work),
    ...unplugSteps(work),
    ...work.wires.out.map((wire) =>
      plain(
        (w, l) => w.cut(wire.number, endName(work.before, wire.a, l), endName(work.before, wire.b, l)),
        isLicensed(wire),
      ),
    ),
    ...work.items.map((item) => itemStep(work, item)),
    ...fuseSteps(work),
    ...work.wires.added.map((wire) => layStep(work.after, wire)),
    ...work.wires.renumbered.map(({ from, to }) => plain((w) => w.relabel(from.number, to.number))),
  ];
  if (inner.length === 0) return [];
  const reached = reachedPanels(work);
  return [
    plain((w) => w.off),
    ...(reached.length === 0
      ? []
      : [
          plain((w, l) =>
            w.reach(
              listed(
                reached.map((id) => panelName(work.after, id, l)),
                l,
              ),
            ),
          ),
        ]),
    ...inner,
    plain((w) => w.back, isLicensedWork(work)),
    ...checkSteps(work),
    plain((w) => w.mark(revision)),
  ];
}

/** Whether anything of it comes near mains or protective earth. */
const isLicensedWork = ({ items, wires }: Work): boolean =>
  items.some(({ licensed }) => licensed) || [...wires.out, ...wires.added].some(isLicensed);

/** Panels that something is done on. */
function reachedPanels({ before, after, items, wires }: Work): readonly string[] {
  const ofItems = items.flatMap(({ was, is }) => [was?.panel, is?.panel]);
  const ofWires = [
    ...wires.out.flatMap(({ a, b }) => [a, b].map(({ item }) => before.items[item]?.panel)),
    ...wires.added.flatMap(({ a, b }) => [a, b].map(({ item }) => after.items[item]?.panel)),
  ];
  const panels = [...ofItems, ...ofWires].flatMap((id) => (id === undefined || id === "" ? [] : [id]));
  return [...new Set(panels)].sort(compareText);
}

/** What has to come off before an item can be moved or taken out. */
function takeOffSteps({ before, items }: Work): readonly KitStep[] {
  const touched = items.filter(
    ({ was, is }) => was !== null && was.kind !== "fastener" && is?.kind !== "fastener",
  );
  const worked = new Set(items.map(({ id }) => id));
  const beside = [...new Set(touched.flatMap(({ id }) => fittedBeside(before, id)))].filter(
    (id) => !worked.has(id),
  );
  const numbers = stepNumbers(before);
  return [
    ...(beside.length === 0
      ? []
      : [
          plain((w, l) =>
            w.inWay(
              listed(
                beside.map((id) => itemName(before, id, l)),
                l,
              ),
            ),
          ),
        ]),
    ...touched.flatMap(({ id, licensed }) => {
      const number = numbers.get(id);
      return number === undefined
        ? []
        : [plain((w, l) => w.takeOff(itemName(before, id, l), String(number)), licensed)];
    }),
  ];
}

interface Plug {
  readonly facts: MachineFacts;
  readonly item: string;
  readonly connector: string;
}

/** Plugs that wires are taken out of or put into; those with mains or earth in them by themselves. */
function unplugSteps({ before, after, wires }: Work): readonly KitStep[] {
  const plugs = new Map<string, Plug & { licensed: boolean }>();
  const take = (facts: MachineFacts, list: readonly WireFact[]): void => {
    for (const wire of list)
      for (const end of [wire.a, wire.b]) {
        const plug = plugOf(end);
        // A plug of something that is new is not in the machine yet.
        if (plug === null || before.items[plug.item] === undefined) continue;
        const key = `${plug.item} ${plug.connector}`;
        const licensed = isLicensed(wire) || plugs.get(key)?.licensed === true;
        plugs.set(key, { facts, ...plug, licensed });
      }
  };
  take(before, wires.out);
  take(after, wires.added);
  const sorted = [...plugs].sort(([a], [b]) => compareText(a, b)).map(([, plug]) => plug);
  return [false, true].flatMap((licensed) => {
    const own = sorted.filter((plug) => plug.licensed === licensed);
    return own.length === 0
      ? []
      : [
          plain(
            (w, l) =>
              w.unplug(
                listed(
                  own.map((plug) => plugName(plug, l)),
                  l,
                ),
              ),
            licensed,
          ),
        ];
  });
}

const plugName = ({ facts, item, connector }: Plug, language: "en" | "zh"): string =>
  `${named(facts.items[item]?.labels, item, language)} ${connector}`;

function itemStep({ before, after }: Work, { id, was, is, moved, replaced, licensed }: ItemWork): KitStep {
  const where = (
    facts: MachineFacts,
    item: ItemFact,
    words: Parameters<KitStep["says"]>[0],
    l: "en" | "zh",
  ): string => words.at(mm(item.xMm), mm(item.yMm), panelName(facts, item.panel, l));
  const typeName = (facts: MachineFacts, item: ItemFact, l: "en" | "zh"): string => {
    for (const table of ["device_types", "board_types", "mechanism_types", "fastener_types"]) {
      const row = facts.rows[table]?.[item.type];
      if (row !== undefined) return named({ en: row.label ?? "", zh: row.label_zh ?? "" }, item.type, l);
    }
    return item.type;
  };
  if (was === null) {
    const item = is;
    if (item === null) throw new Error(`Item ${id} is on neither side.`);
    return plain((w, l) => w.add(itemName(after, id, l), where(after, item, w, l)), licensed);
  }
  if (is === null) return plain((w, l) => w.remove(itemName(before, id, l)), licensed);
  if (replaced)
    return plain(
      (w, l) => w.replace(itemName(after, id, l), typeName(before, was, l), typeName(after, is, l)),
      licensed,
    );
  if (moved)
    return plain(
      (w, l) => w.move(itemName(after, id, l), where(before, was, w, l), where(after, is, w, l)),
      licensed,
    );
  return plain((w, l) => w.turn(itemName(after, id, l), mm(was.rotationDeg), mm(is.rotationDeg)), licensed);
}

const layStep = (after: MachineFacts, wire: WireFact): KitStep =>
  plain(
    (w, l) =>
      w.lay(wire.number, colourName(wire.colour, l), endName(after, wire.a, l), endName(after, wire.b, l)),
    isLicensed(wire),
  );

/** Fuses that are others: rating and speed stand in the sentence. */
function fuseSteps({ before, after }: Work): readonly KitStep[] {
  const [was, is] = [before.rows.fuses ?? {}, after.rows.fuses ?? {}];
  return Object.entries(is).flatMap(([id, row]) => {
    const old = was[id];
    const isSame = old !== undefined && ["rated_a", "speed", "size"].every((name) => old[name] === row[name]);
    if (old === undefined || isSame) return [];
    const rating = [`${row.rated_a ?? ""} A`, (row.speed ?? "").toUpperCase(), row.size ?? ""]
      .filter((text) => text !== "")
      .join(" ");
    const licensed = Object.values(after.wires).some(
      (wire) => isLicensed(wire) && [wire.a.point, wire.b.point].some((p) => p === row.from || p === row.to),
    );
    return [
      plain(
        (w, l) => w.fuse(named({ en: row.label ?? "", zh: row.label_zh ?? "" }, id, l), rating),
        licensed,
      ),
    ];
  });
}

/** Whether two rows say the same, in whatever order. */
function isSameRow(
  a: Readonly<Record<string, string>> | undefined,
  b: Readonly<Record<string, string>>,
): boolean {
  const names = Object.keys(b);
  return (
    a !== undefined && Object.keys(a).length === names.length && names.every((name) => a[name] === b[name])
  );
}

/** What is measured with the plug still out, then the tests that are others in the revision after. */
function checkSteps({ before, after, items, wires }: Work): readonly KitStep[] {
  const [was, is] = [before.rows.tests ?? {}, after.rows.tests ?? {}];
  const tests = Object.entries(is).filter(([id, row]) => row.scope === "machine" && !isSameRow(was[id], row));
  return [
    ...wires.added.map((wire) =>
      plain(
        (w, l) => w.measure(wire.number, endName(after, wire.a, l), endName(after, wire.b, l)),
        isLicensed(wire),
      ),
    ),
    ...(isLicensedWork({ before, after, items, wires }) ? [plain((w) => w.earth, true)] : []),
    ...tests.map(([id, row]) =>
      plain(
        (w, l) => w.test(named({ en: row.label ?? "", zh: row.label_zh ?? "" }, id, l)),
        ["bond", "insulation", "polarity", "interlock"].includes(row.purpose ?? ""),
      ),
    ),
  ];
}
