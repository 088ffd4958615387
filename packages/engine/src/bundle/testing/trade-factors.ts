import { readFileSync } from "node:fs";

/** The trade's factor for each number of equal wires in the published table. */
export const tradeFactors = (): ReadonlyMap<number, number> => {
  const factors = new Map<number, number>();
  const lines = readFileSync(new URL("./trade-factors.csv", import.meta.url), "utf8")
    .trim()
    .split("\n");
  for (const line of lines.slice(1)) {
    const [range = "", factor = ""] = line.split(",");
    const [from = "", to = from] = range.split("-");
    for (let n = Number(from); n <= Number(to); n++) factors.set(n, Number(factor));
  }
  return factors;
};
