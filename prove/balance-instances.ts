import { readFileSync } from "node:fs";
import { cells } from "./write-results.ts";

/** A benchmark line with a takt (SALBP-1) or a number of stations (SALBP-2), and the published optimum. */
export interface BalanceInstance {
  readonly name: string;
  readonly problem: string;
  readonly given: number;
  readonly file: URL;
  readonly optimum: number;
  /** How the published value was confirmed. */
  readonly checked: string;
}

/** Every line, those of the kernel's tests first. */
export const balanceInstances = (): BalanceInstance[] =>
  ["../packages/kernel/src/optimise/balance/testing/", "data/line-balancing/"].flatMap((folder) => {
    const at = new URL(folder, import.meta.url);
    return cells(readFileSync(new URL("optima.csv", at), "utf8")).map(
      ([name = "", problem = "", given = "", optimum = "", checked = ""]) => ({
        name,
        problem,
        given: Number(given),
        file: new URL(name, at),
        optimum: Number(optimum),
        checked,
      }),
    );
  });
