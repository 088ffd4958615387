import type { Book, Shop } from "@pinwright/book";
import { resolveMachine } from "@pinwright/engine";
import { rows, type Topic } from "./author.ts";
import { ROW_SPOTS } from "./crossings.ts";

/**
 * Plugs of the bundles that come over a hinge from the cabinet leave them behind the second hold, so that nothing is
 * joined in the length that flexes.
 */
export function inlineTails(book: Book, shop: Shop): Topic {
  const machine = resolveMachine(book, shop);
  const panelOf = (point: string): string => machine.points.get(point)?.place.panelId ?? "";
  const fromCabinet = new Set(
    machine.ends.filter(({ point }) => panelOf(point).startsWith("cab.")).map(({ harness }) => harness),
  );
  const harnessOf = new Map(
    machine.ends.map(({ point, harness }) => [machine.points.get(point)?.landingId ?? "", harness]),
  );
  const attached = [...machine.landings.values()].flatMap(({ id, half, place }) => {
    if (half === null || !fromCabinet.has(harnessOf.get(id) ?? "")) return [];
    const [nearest] = ROW_SPOTS.filter((s) => s.panel === place.panelId && s.side === place.side)
      .map((s) => ({ id: s.id, mm: Math.hypot(s.at.xMm - place.xMm, s.at.yMm - place.yMm) }))
      .toSorted((a, b) => a.mm - b.mm);
    return nearest === undefined ? [] : [{ subject: id, value: nearest.id }];
  });
  return {
    tables: {
      choices: rows(
        "choices",
        attached.map((row) => ({
          kind: "attach",
          ...row,
          held: "pinned",
          by: "designer",
          reason: "Nothing is joined between the two holds of a bundle that flexes.",
        })),
      ),
    },
  };
}
