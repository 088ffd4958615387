import type { MachineFacts, WireFact } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { sheetWords } from "@pinwright/words";
import type { Labels } from "../change-note/about.ts";
import { shortNumber } from "../compose/number.ts";
import { itemWork } from "./kit-items.ts";
import { kitSteps } from "./kit-steps.ts";
import { kitWire, type WireWork, wireWork } from "./kit-wires.ts";
import { both, named } from "./places.ts";
import type { KitPart, RetrofitKit } from "./retrofit-kit.ts";

/** Up to here direct current counts as safety extra-low voltage when touched: IEC 60335-1 clause 8.1.4. */
const SAFE_DC_V = 42.4;

/**
 * What makes a machine that was built to one revision as another is, from the facts of both alone: parts, wires made
 * up, and the work line by line. Nothing is computed anew.
 * @param names of the two revisions; `to` null: the draft
 * @param units serial numbers of the units that it is for, as one text
 */
export function retrofitKit(
  before: MachineFacts,
  after: MachineFacts,
  names: { readonly from: string; readonly to: string | null },
  units: string,
): RetrofitKit {
  const wires = wireWork(before, after);
  const items = itemWork(before, after);
  const steps = kitSteps({ before, after, items, wires }, names.to ?? `${names.from}+`);
  const { id, labels, owner, approved } = after.machine;
  const onWires = new Set(
    [...Object.values(before.wires), ...Object.values(after.wires)].flatMap(({ a, b }) => [a.part, b.part]),
  );
  const isLoose = (part: string): boolean =>
    !onWires.has(part) && !isWireStock(before, part) && !isWireStock(after, part);
  return {
    machine: { id, labels, owner, approved },
    ...names,
    units,
    stored: storedIn([before, after]),
    cautions: cautionsOf(before, after, wires),
    sent: partsMore(before, after).filter(({ part }) => isLoose(part)),
    back: partsMore(after, before).filter(({ part }) => isLoose(part)),
    newWires: wires.added.map((wire) => kitWire(after, wire)),
    oldWires: wires.out.map((wire) => kitWire(before, wire)),
    steps,
  };
}

/** Whether a part is wire off a reel: it is sent made up. */
const isWireStock = ({ rows }: MachineFacts, part: string): boolean =>
  Object.values(rows.wire_types ?? {}).some((row) => row.part === part) ||
  rows.wire_types?.[part] !== undefined;

/** Parts of which the second side has more, by how many. */
function partsMore(before: MachineFacts, after: MachineFacts): readonly KitPart[] {
  return Object.entries(after.parts)
    .map(([part, { labels, unit, count, orderNumber }]) => ({
      part,
      labels,
      unit,
      orderNumber,
      count: count - (before.parts[part]?.count ?? 0),
    }))
    .filter(({ count }) => count > 1e-9)
    .sort((a, b) => compareText(a.part, b.part));
}

/** Supplies that stay charged, each with its energy. */
function storedIn(sides: readonly MachineFacts[]): Labels {
  const stored = new Map(
    sides.flatMap(({ rows }) =>
      Object.entries(rows.supplies ?? {}).filter(([, row]) => Number(row.stored_j ?? "0") > 0),
    ),
  );
  return both((language) =>
    [...stored]
      .map(
        ([id, row]) =>
          `${named({ en: row.label ?? "", zh: row.label_zh ?? "" }, id, language)}: ${shortNumber(Number(row.stored_j), 2)} J`,
      )
      .join("; "),
  );
}

/** What is dangerous about the wires that are worked on, each deferring to local codes and a licensed electrician. */
function cautionsOf(before: MachineFacts, after: MachineFacts, wires: WireWork): readonly Labels[] {
  const worked: readonly (readonly [MachineFacts, WireFact])[] = [
    ...wires.out.map((wire) => [before, wire] as const),
    ...wires.added.map((wire) => [after, wire] as const),
  ];
  const high = new Map<string, Readonly<Record<string, string>>>();
  for (const [{ rows }, { supply, netClass }] of worked) {
    const row = rows.supplies?.[supply];
    if (row !== undefined && netClass === "coil" && Number(row.volts ?? "0") > SAFE_DC_V)
      high.set(supply, row);
  }
  const highNames = (language: "en" | "zh"): string =>
    [...high]
      .map(([id, row]) => named({ en: row.label ?? "", zh: row.label_zh ?? "" }, id, language))
      .join(", ");
  const has = (netClass: string): boolean => worked.some(([, wire]) => wire.netClass === netClass);
  return [
    both((l) => sheetWords(l).caution.mainsMachine),
    ...(high.size === 0 ? [] : [both((l) => sheetWords(l).caution.coilSupply(highNames(l)))]),
    ...(has("earth") || has("mains") ? [both((l) => sheetWords(l).caution.earth)] : []),
  ];
}
