import { compareText } from "@pinwright/kernel";
import { type BoardItem, type Finding, makeFinding } from "../../../model/index.ts";
import { busSegments } from "./buses.ts";
import type { ProgramFacts } from "./facts.ts";

/** Boards that one head asks, on whichever of its ports, are told apart by their address alone. */
export function addressTwice({ machine }: ProgramFacts): readonly Finding[] {
  const buses = new Map<string, Map<number, Map<string, BoardItem>>>();
  for (const [i, { headId, nodes }] of busSegments(machine).entries()) {
    const key = headId ?? `${i}`;
    const bus = buses.get(key) ?? new Map<number, Map<string, BoardItem>>();
    buses.set(key, bus);
    for (const board of nodes) {
      if (board.address === null) continue;
      const alike = bus.get(board.address) ?? new Map<string, BoardItem>();
      bus.set(board.address, alike.set(board.id, board));
    }
  }
  return [...buses.values()].flatMap((bus) =>
    [...bus].flatMap(([address, boards]) =>
      boards.size < 2
        ? []
        : [makeFinding("address-twice", "error", [...boards.keys()].sort(compareText), { address })],
    ),
  );
}
