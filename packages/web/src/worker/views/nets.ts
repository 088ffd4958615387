import type { BookRow } from "@pinwright/book";
import { type NetRow, netTree } from "../wires/net-tree.ts";
import { type Both, bothOf } from "../wires/wires-at.ts";
import { view } from "./view.ts";

type Net = BookRow<"nets">;

/** A net in the list of nets. */
export interface NetLine {
  readonly id: string;
  readonly label: Both;
  readonly class: Net["class"];
  readonly supply: string | null;
  readonly volts: number | null;
  readonly amps: number | null;
  readonly ends: number;
  readonly wires: number;
}

/** A net with how it is joined. */
export interface NetFigures extends NetLine {
  /** How its ends are asked to be joined. */
  readonly shape: Net["shape"];
  /** Wire as cut, m. */
  readonly metres: number;
  readonly harnesses: readonly { readonly id: string; readonly number: number; readonly label: Both }[];
  readonly rows: readonly NetRow[];
}

const lineOf = (net: Net, ends: number, wires: number): NetLine => ({
  id: net.id,
  label: bothOf(net),
  class: net.class,
  supply: net.supply,
  volts: net.volts,
  amps: net.amps,
  ends,
  wires,
});

const counted = (ids: Iterable<string>): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const id of ids) counts.set(id, (counts.get(id) ?? 0) + 1);
  return counts;
};

/** Every net, in the order of the book. */
export const nets = view<null, NetLine>({
  uses: ({ line }) => [line.machine.nets, line.machine.ends, ...line.harnesses.values()],
  entries: ({ line }) => {
    const ends = counted(line.machine.ends.map((end) => end.net));
    const wires = counted(
      [...line.harnesses.values()].flatMap((harness) => harness.wires.map((wire) => wire.netId)),
    );
    return new Map(
      [...line.machine.nets.values()].map((net) => [
        net.id,
        lineOf(net, ends.get(net.id) ?? 0, wires.get(net.id) ?? 0),
      ]),
    );
  },
  restsInPreview: true,
});

/** One net; nothing when there is none of this id. */
export const net = view<string, NetFigures>({
  uses: ({ line }) => [
    line.machine.nets,
    line.machine.ends,
    line.machine.elements,
    ...line.harnesses.values(),
  ],
  entries: ({ line }, id) => {
    const row = line.machine.nets.get(id);
    if (row === undefined) return new Map();
    const within = [...line.harnesses.values()].flatMap((harness) => {
      const wires = harness.wires.filter((wire) => wire.netId === id);
      return wires.length === 0 ? [] : [{ harness, wires }];
    });
    const wires = within.flatMap((one) => one.wires);
    const ends = line.machine.ends.filter((end) => end.net === id).length;
    return new Map([
      [
        "",
        {
          ...lineOf(row, ends, wires.length),
          shape: row.shape,
          metres: wires.reduce((sum, wire) => sum + wire.cutMm, 0) / 1000,
          harnesses: within.map(({ harness }) => ({
            id: harness.harness.id,
            number: harness.harness.number,
            label: harness.labels,
          })),
          rows: netTree(line, id),
        },
      ],
    ]);
  },
  restsInPreview: true,
});
