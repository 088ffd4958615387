import { readFileSync } from "node:fs";
import type { BalanceProblem } from "../line.ts";

/** A benchmark line in the format of A. Scholl (`.IN2`) or of A. Otto, C. Otto and A. Scholl (`.alb`). */
export const readLine = (url: URL): BalanceProblem => {
  const text = readFileSync(url, "utf8");
  return url.pathname.endsWith(".alb") ? sections(text) : lines(text);
};

const lines = (text: string): BalanceProblem => {
  const [count = "", ...rest] = text.split("\n").map((line) => line.trim());
  const n = Number(count);
  const before: (readonly [number, number])[] = [];
  for (const line of rest.slice(n)) {
    const pair = /^(\d+)\s*,\s*(\d+)$/.exec(line);
    if (pair === null) break;
    before.push([Number(pair[1]) - 1, Number(pair[2]) - 1]);
  }
  return { times: rest.slice(0, n).map(Number), before };
};

const sections = (text: string): BalanceProblem => {
  const part = (name: string): string => text.split(`<${name}>`)[1]?.split("<")[0] ?? "";
  return {
    times: [...part("task times").matchAll(/^\d+ (\d+)/gm)].map(([, time]) => Number(time)),
    before: [...part("precedence relations").matchAll(/^(\d+),(\d+)/gm)].map(
      ([, i, j]) => [Number(i) - 1, Number(j) - 1] as const,
    ),
  };
};
