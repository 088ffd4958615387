import {
  type HarnessPart,
  type HarnessPartKind,
  type HarnessResult,
  type LineResult,
  partsOfHarness,
} from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { TEXT } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableRow, TICK, table } from "../compose/table.ts";
import { gaugeText, metresUp } from "../facts.ts";

/** Kinds in the order in which they are fetched. */
const KINDS: readonly HarnessPartKind[] = [
  "housing",
  "key",
  "contact",
  "splice",
  "wire",
  "cable",
  "sleeve",
  "tie",
];

/** What to fetch for one harness before it is begun: a row for each kind of part, wire in metres rounded up. */
export function kitBlocks(
  line: LineResult,
  harness: HarnessResult,
  language: SheetLanguage,
  widthMm: number,
): readonly Block[] {
  const parts = partsOfHarness(line.machine, harness, line.keys);
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const rows = KINDS.flatMap((kind): TableRow[] => {
    // Several families may use one part: what is fetched is the part.
    const sums = new Map<string, number>();
    for (const part of parts) {
      // A lug has no contact of its own: nothing is fetched for it.
      if (part.kind !== kind || (kind === "contact" && part.partId === null)) continue;
      const name = partName(line, part);
      sums.set(name, (sums.get(name) ?? 0) + part.quantity);
    }
    if (sums.size === 0) return [];
    const unit = kind === "wire" || kind === "cable" || kind === "sleeve";
    const list = [...sums].map(([name, n]) => (unit ? `${name}: ${metresUp(n)} m` : `${n} × ${name}`));
    return [{ kind: "row", cells: [words((w) => w.kit.kinds[kind]), list.join("; "), TICK] }];
  });
  const labels: TableRow = {
    kind: "row",
    cells: [words((w) => w.kit.labels), String(2 * harness.wires.length), TICK],
  };
  return [
    {
      ...paragraph(
        words((w) => w.kit.title),
        widthMm,
        TEXT.large,
        true,
      ),
      keepMm: 20,
    },
    ...table(
      [
        { header: words((w) => w.kit.what), weight: "bold" },
        { header: words((w) => w.kit.parts), grow: true },
        { header: words((w) => w.common.done), align: "middle" },
      ],
      [...rows, labels],
      widthMm,
      words((w) => w.common.continued),
    ),
  ];
}

/** A part by its id; without one what it is in the book. Wire by colour and gauge, as it stands on its reel. */
function partName(line: LineResult, part: HarnessPart): string {
  const name = part.partId ?? part.refId;
  if (part.kind !== "wire") return name;
  const type = line.machine.wireTypes.get(part.refId);
  return `${part.colour} ${type === undefined ? part.refId : gaugeText(type)} (${name})`;
}
