import { view } from "./view.ts";

let count = 0;

/** A number that is another whenever plans of runs have to be made anew. */
export const planMoment = view<null, { readonly count: number }>({
  uses: ({ line, book, shop }) => [line.parts, line.steps, line.panels, line.machine.book, book, shop],
  entries: () => {
    count++;
    return new Map([["", { count }]]);
  },
  restsInPreview: true,
});
