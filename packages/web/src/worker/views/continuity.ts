import { type ContinuityList, continuityList, type ProbeSpot } from "@pinwright/engine";
import { view } from "./view.ts";

/** One thing to try with a tester while the harness lies on the bench, or once it is fitted. */
export interface ContinuityLine {
  readonly expect: "joined" | "open" | "fitted";
  readonly netId: string;
  /** Spots that must read joined; for `open` and `fitted` the two that are tried. */
  readonly spots: readonly {
    readonly pointId: string;
    readonly wires: readonly number[];
    readonly loose: boolean;
  }[];
  /** Part of the net, where the harness alone does not join all of it. */
  readonly part: number;
  readonly parts: number;
  /** Why an open pair is tried; the terminal at which wires meet once fitted. */
  readonly why: string;
}

const spotOf = ({ pointId, wires, loose }: ProbeSpot) => ({ pointId, wires: [...wires], loose });

function continuityLines(list: ContinuityList): readonly ContinuityLine[] {
  return [
    ...list.joined
      .filter(({ spots }) => spots.length > 1)
      .map(
        ({ netId, part, parts, spots }): ContinuityLine => ({
          expect: "joined",
          netId,
          spots: spots.map(spotOf),
          part,
          parts,
          why: "",
        }),
      ),
    ...list.open.map(
      ({ a, b, reason }): ContinuityLine => ({
        expect: "open",
        netId: "",
        spots: [spotOf(a), spotOf(b)],
        part: 1,
        parts: 1,
        why: reason,
      }),
    ),
    ...list.fitted.map(
      ({ netId, at, a, b }): ContinuityLine => ({
        expect: "fitted",
        netId,
        spots: [a, b].map((pointId) => ({ pointId, wires: [], loose: false })),
        part: 1,
        parts: 1,
        why: at,
      }),
    ),
  ];
}

/** What a harness must show when it is measured: joined, open, and joined once fitted. */
export const continuity = view<string, ContinuityLine>({
  uses: ({ line }, id) => [line.harnesses.get(id), line.machine.elements],
  entries: ({ line }, id) => {
    const harness = line.harnesses.get(id);
    if (harness === undefined) return new Map();
    const lines = continuityLines(continuityList(line.machine, harness));
    return new Map(lines.map((one, i) => [String(i), one]));
  },
  restsInPreview: true,
});
