import { type BoardShape, boardShape } from "../pegs/board-shape.ts";
import { view } from "./view.ts";

/** The pinboard of a harness in lines; nothing when there is no such harness. */
export const pinboard = view<string, BoardShape>({
  uses: ({ line }, id) => [line.harnesses.get(id), line.machine.choices],
  entries: ({ line }, id) => {
    const harness = line.harnesses.get(id);
    return new Map(harness === undefined ? [] : [["", boardShape(line.machine, harness, harness.pinboard)]]);
  },
  restsInPreview: true,
});
