import { readFileSync } from "node:fs";

/** A published value of an instance, under one set of rules. */
export interface Published {
  readonly instance: string;
  readonly file: URL;
  readonly cuts: string;
  readonly turning: boolean;
  readonly value: number;
  readonly proven: boolean;
}

/** The rows of an `optima.csv`, with the files beside it. */
export const readPublished = (optima: URL): Published[] =>
  readFileSync(optima, "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => {
      const [instance = "", file = "", cuts = "", orientation, value, proven] = line.split(",");
      return {
        instance,
        file: new URL(file, optima),
        cuts,
        turning: orientation === "turning",
        value: Number(value),
        proven: proven === "yes",
      };
    });
