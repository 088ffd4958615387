import {
  type Published,
  readPublished,
} from "../packages/kernel/src/optimise/guillotine/testing/instances.ts";

/** A run: an instance under one set of rules, with the value it is held against. */
export interface GuillotineRun extends Published {
  readonly family: string;
  /** Whether the value is of the same cuts, or of any that don't overlap: then it is only a bound. */
  readonly reference: "same" | "bound";
}

/** All runs: each published guillotine value; and any number of stages where only a value of free packing is given. */
export const guillotineRuns = (): GuillotineRun[] => {
  const published = readPublished(new URL("data/guillotine/optima.csv", import.meta.url));
  const key = ({ file, turning }: Published): string => `${file.href} ${turning}`;
  const guillotine = new Set(published.filter(({ cuts }) => cuts !== "free").map(key));
  const runs = published.flatMap((row): GuillotineRun[] => {
    const family = row.file.pathname.split("/").at(-2) ?? "";
    if (row.cuts !== "free") return [{ ...row, family, reference: "same" }];
    return guillotine.has(key(row)) ? [] : [{ ...row, cuts: "any-stage", family, reference: "bound" }];
  });
  // Those that no plan can bring to the bound come last, since they take all steps.
  return runs.sort((a, b) => Number(a.family === "one-sheet") - Number(b.family === "one-sheet"));
};

/** The published value of free packing of each instance and orientation. */
export const freeValues = (): Map<string, number> => {
  const free = readPublished(new URL("data/guillotine/optima.csv", import.meta.url)).filter(
    ({ cuts }) => cuts === "free",
  );
  return new Map(free.map(({ instance, turning, value }) => [`${instance} ${turning}`, value]));
};
