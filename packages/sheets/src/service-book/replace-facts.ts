import { endKind, type Item } from "@pinwright/engine";
import type { BookContext } from "./context.ts";
import type { HazardId } from "./hazards.ts";
import { runsText } from "./runs-text.ts";
import { testsFor } from "./test-facts.ts";

/** An item with the devices of its mechanism. */
const withChildren = ({ facts }: BookContext, item: Item): readonly Item[] => [
  item,
  ...(facts.childrenOf.get(item.id) ?? []),
];

/** Items that come off first to reach the screws of an item, in their order. */
export function comesOffFirst({ line, facts }: BookContext, item: Item): readonly string[] {
  const first: string[] = [];
  for (const fastener of facts.fastenersOf.get(item.id) ?? [])
    for (const id of line.fastening.reaches.get(fastener.id)?.comesOff ?? [])
      if (id !== item.id && !first.includes(id)) first.push(id);
  return first;
}

/** Plugs and ends of an item that are pulled: each with its wires, in a few words. */
export function pullLines(context: BookContext, item: Item): readonly string[] {
  const { facts } = context;
  return withChildren(context, item).flatMap((own) =>
    (facts.landingsOf.get(own.id) ?? []).flatMap((landing) => {
      const wires = landing.pointIds.flatMap((pointId) =>
        (facts.wiresAt.get(pointId) ?? []).map((w) => ({ pointId, ...w })),
      );
      if (wires.length === 0) return [];
      if (landing.connector === null)
        return [
          `${landing.id}: ${wires
            .map(
              ({ pointId, number, wire }) =>
                `${pointId.slice(pointId.indexOf(":") + 1)} ${number} ${wire.colour}`,
            )
            .join(", ")}`,
        ];
      const byHarness = new Map<number, number[]>();
      for (const { harness, wire } of wires) {
        const n = harness.harness.number;
        byHarness.set(n, [...(byHarness.get(n) ?? []), wire.number]);
      }
      return [
        `${landing.id}: ${[...byHarness].map(([n, numbers]) => `H${n} (${runsText(numbers)})`).join(", ")}`,
      ];
    }),
  );
}

/** Hazards of taking an item out. */
export function hazardsAt(context: BookContext, item: Item): readonly HazardId[] {
  const { line, facts } = context;
  const own = withChildren(context, item);
  const kinds = new Set(own.flatMap(({ id }) => (facts.elementsOf.get(id) ?? []).map((e) => e.row.kind)));
  const classes = new Set(own.flatMap(({ id }) => [...(facts.classesOf.get(id) ?? [])]));
  const isSoldered = (pointId: string): boolean => {
    const family = line.machine.points.get(pointId)?.family;
    return family !== undefined && endKind(family) === "solder" && facts.wiresAt.has(pointId);
  };
  const soldered = own.some(({ id }) =>
    (facts.landingsOf.get(id) ?? []).some((landing) => landing.pointIds.some(isSoldered)),
  );
  const moves = kinds.has("coil") || kinds.has("motor");
  const list: readonly (readonly [HazardId, boolean])[] = [
    ["mains", classes.has("mains")],
    ["stored", classes.has("mains")],
    ["volts", kinds.has("coil")],
    ["earth", classes.has("earth")],
    ["moving", moves],
    ["hot", kinds.has("coil")],
    [
      "raised",
      item.place.side === "under" && line.machine.panels.get(item.place.panelId)?.purpose === "playfield",
    ],
    ["springs", item.kind === "mechanism"],
    ["solder", soldered],
  ];
  return list.flatMap(([id, is]) => (is ? [id] : []));
}

/** Titles of the tests that come after an item was changed, each with its page; those of a licensed person together. */
export function testTitles(context: BookContext, item: Item): readonly string[] {
  const { words } = context;
  const tests = testsFor(context, withChildren(context, item));
  const titled = (title: string, page: string): string =>
    page === "" ? title : words((w) => w.see(title, page));
  const licensed = tests.some((test) => test.licensed)
    ? [
        titled(
          words((w) => w.tests.licensed),
          context.pageOf("tests:licensed"),
        ),
      ]
    : [];
  return [
    ...tests.filter((test) => !test.licensed).map(({ title, page }) => titled(title, page)),
    ...licensed,
  ];
}
