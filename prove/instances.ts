import { readFileSync } from "node:fs";
import { cells } from "./write-results.ts";

/** A benchmark instance with its published optimum. */
export interface Instance {
  readonly set: string;
  readonly name: string;
  readonly file: URL;
  readonly optimum: number;
}

/** Every instance with its optimum, those of the kernel's tests first. */
export const steinerInstances = (): Instance[] => {
  const kernel = new URL("../packages/kernel/src/graph/testing/steinlib/", import.meta.url);
  const data = new URL("data/steinlib/", import.meta.url);
  return [
    ...cells(readFileSync(new URL("optima.csv", kernel), "utf8")).map(([name = "", optimum = ""]) => ({
      set: name.startsWith("b") ? "B" : "C",
      name,
      file: new URL(`${name}.stp`, kernel),
      optimum: Number(optimum),
    })),
    ...cells(readFileSync(new URL("optima.csv", data), "utf8")).map(
      ([set = "", name = "", file = "", optimum = ""]) => ({
        set,
        name,
        file: new URL(file, data),
        optimum: Number(optimum),
      }),
    ),
  ];
};

/** Every tour with its published length, those of the kernel's tests first. */
export const tourInstances = (): Instance[] =>
  ["../packages/kernel/src/optimise/testing/tsplib/", "data/tsplib/"].flatMap((folder) => {
    const at = new URL(folder, import.meta.url);
    return cells(readFileSync(new URL("optima.csv", at), "utf8")).map(([name = "", optimum = ""]) => ({
      set: "TSPLIB",
      name,
      file: new URL(`${name}.tsp`, at),
      optimum: Number(optimum),
    }));
  });
