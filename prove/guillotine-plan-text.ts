import type { CutPart, SheetPlan } from "@pinwright/kernel";

/** A part as text without commas: `.` waste, `p3` or `t3` a piece (turned), `(r25 first rest)` a rip or cross cut. */
const partText = (part: CutPart): string => {
  if (part.kind === "waste") return ".";
  if (part.kind === "piece") return `${part.turned ? "t" : "p"}${part.piece}`;
  return `(${part.cut === "rip" ? "r" : "c"}${part.atMm} ${partText(part.first)} ${partText(part.rest)})`;
};

/** Plans as one text, sheets parted by `|`. */
export const plansText = (plans: readonly SheetPlan[]): string =>
  plans.map(({ part }) => partText(part)).join("|");

/** Reads plans of sheets of one size. */
export const readPlans = (text: string): SheetPlan[] =>
  text.split("|").map((sheet) => {
    const tokens = sheet.match(/[()]|[^()\s]+/g) ?? [];
    return { sheet: 0, part: readPart(tokens.values()) };
  });

const readPart = (tokens: Iterator<string>): CutPart => {
  const token = tokens.next();
  if (token.done === true) throw new RangeError("plan ends early");
  const kind = token.value[0];
  const number = Number(token.value.slice(1));
  if (kind === ".") return { kind: "waste" };
  if (kind === "p" || kind === "t") return { kind: "piece", piece: number, turned: kind === "t" };
  const cut = tokens.next();
  if (cut.done === true) throw new RangeError("plan ends early");
  const first = readPart(tokens);
  const rest = readPart(tokens);
  tokens.next();
  return {
    kind: "cut",
    cut: cut.value[0] === "r" ? "rip" : "cross",
    atMm: Number(cut.value.slice(1)),
    first,
    rest,
  };
};
