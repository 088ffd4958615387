import { compareText } from "@pinwright/kernel";
import { type Sign, signOf } from "../steps/sign.ts";
import { view } from "./view.ts";

/** A type of fastener as maps and lists show it. */
export interface ScrewType {
  readonly id: string;
  readonly label: string;
  readonly labelZh: string;
  readonly kind: string;
  readonly thread: string;
  readonly diameterMm: number;
  readonly lengthMm: number;
  readonly drive: string;
  readonly head: string;
  readonly colour: string;
  readonly threadlocker: boolean;
  /** In the whole machine. */
  readonly count: number;
  /** Its sign; null as long as it has none. */
  readonly sign: Sign | null;
}

/** Types that the machine is screwed together with: by the letter of their signs. */
export const screwTypes = view<null, ScrewType>({
  uses: ({ line, book }) => [line.fastening.symbols, line.machine.items, book.tables.fastener_types],
  entries: ({ line, book }) => {
    const counts = new Map<string, number>();
    for (const item of line.machine.items.values()) {
      if (item.kind !== "fastener") continue;
      for (const id of [item.type.id, item.washer?.id, item.nut?.id])
        if (id !== undefined) counts.set(id, (counts.get(id) ?? 0) + 1);
    }
    const used = book.tables.fastener_types.filter(({ id }) => counts.has(id));
    const types = used.map((row): ScrewType => {
      const symbol = line.fastening.symbols.get(row.id);
      return {
        id: row.id,
        label: row.label,
        labelZh: row.label_zh,
        kind: row.kind,
        thread: row.thread,
        diameterMm: row.diameter_mm,
        lengthMm: row.length_mm,
        drive: row.drive,
        head: row.head,
        colour: row.colour,
        threadlocker: row.threadlocker,
        count: counts.get(row.id) ?? 0,
        sign: symbol === undefined ? null : signOf(symbol),
      };
    });
    types.sort(
      (a, b) => compareText(a.sign?.letter ?? "~", b.sign?.letter ?? "~") || compareText(a.id, b.id),
    );
    return new Map(types.map((type) => [type.id, type]));
  },
  restsInPreview: true,
});
