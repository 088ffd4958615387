import type { BookRow as TableRowOf } from "@pinwright/book";
import { appliesTo, type Item } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { rowLabel } from "../assembly/step-texts.ts";
import type { BookContext } from "./context.ts";

export type Test = TableRowOf<"tests">;

/** Tests of the whole machine in their order, with the options that it has. */
export function machineTests({ line }: BookContext): readonly Test[] {
  return line.machine.book.tables.tests
    .filter((test) => test.scope === "machine" && appliesTo(test, line.machine.options))
    .sort((a, b) => a.order - b.order || compareText(a.id, b.id));
}

const itemOf = ({ line }: BookContext, pointId: string | null): string =>
  line.machine.points.get(pointId ?? "")?.itemId ?? "";

/**
 * Whether a test is no work for an owner: of protective earth and insulation, and of voltages at what mains comes to,
 * or where the book does not say where the meter is held.
 */
export function isLicensed(context: BookContext, test: Test): boolean {
  if (test.purpose === "bond" || test.purpose === "insulation") return true;
  if (test.kind !== "measure" || !["supply", "polarity"].includes(test.purpose)) return false;
  const items = new Set([itemOf(context, test.from), itemOf(context, test.to)].filter((id) => id !== ""));
  return items.size === 0 || onMains(context, items);
}

const onMains = ({ facts }: BookContext, itemIds: Iterable<string>): boolean =>
  [...itemIds].some((id) => facts.classesOf.get(id)?.has("mains") === true);

export const testAnchor = (test: Test): string => `test:${test.id}`;

/** Purposes of tests that speak of an element. */
const OF_ELEMENT: Readonly<Partial<Record<string, readonly string[]>>> = {
  coil: ["coil"],
  motor: ["motor"],
  contact: ["switch"],
  input: ["switch", "logic"],
  led: ["lamp"],
  driver: ["logic"],
};

/** Tests of the machine that show whether some items are good again. */
export function testsFor(
  context: BookContext,
  items: readonly Item[],
): readonly { readonly title: string; readonly page: string; readonly licensed: boolean }[] {
  const { language, facts } = context;
  const ids = new Set(items.map(({ id }) => id));
  const purposes = new Set(
    items.flatMap(({ id }) => (facts.elementsOf.get(id) ?? []).flatMap((e) => OF_ELEMENT[e.row.kind] ?? [])),
  );
  if (onMains(context, ids)) for (const p of ["insulation", "supply"]) purposes.add(p);
  return machineTests(context).flatMap((test) => {
    const named = ids.has(itemOf(context, test.from)) || ids.has(itemOf(context, test.to));
    if (!named && !purposes.has(test.purpose)) return [];
    return [
      {
        title: rowLabel(test, test.id, language),
        page: context.pageOf(testAnchor(test)),
        licensed: isLicensed(context, test),
      },
    ];
  });
}
