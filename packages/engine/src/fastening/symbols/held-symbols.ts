import type { BookRow } from "@pinwright/book";
import { type Finding, makeFinding, type ScrewSymbol } from "../../model/index.ts";
import { SHADES } from "./drawing.ts";
import { SHAPES } from "./shapes.ts";

type Choice = BookRow<"choices">;

export interface HeldSymbols {
  /** By type id. */
  readonly symbols: ReadonlyMap<string, ScrewSymbol>;
  readonly findings: readonly Finding[];
}

/** The symbol that a choice writes as `letter shape shade`; null when it is not one. */
function readSymbol(typeId: string, value: string): ScrewSymbol | null {
  const [letter = "", shapeName, shadeName, ...more] = value.trim().split(/ +/);
  const shape = SHAPES.find((s) => s === shapeName);
  const shade = SHADES.find((s) => s === shadeName);
  if (!/^[A-Z]{1,2}$/.test(letter) || shape === undefined || shade === undefined || more.length > 0)
    return null;
  return { typeId, letter, shape, shade };
}

/**
 * The symbols that are decided already, pinned ones first. A letter is used once: of two that want it the second, and
 * of two kept ones with the same shape and shade the second too, is decided anew and told of.
 */
export function heldSymbols(
  typeIds: readonly string[],
  choices: ReadonlyMap<string, Choice> | undefined,
): HeldSymbols {
  const symbols = new Map<string, ScrewSymbol>();
  const findings: Finding[] = [];
  const letters = new Set<string>();
  const signs = new Set<string>();
  for (const held of ["pinned", "settled"] as const) {
    for (const id of typeIds) {
      const choice = choices?.get(id);
      if (choice === undefined || choice.held !== held) continue;
      const symbol = readSymbol(id, choice.value);
      const sign = symbol === null ? "" : `${symbol.shape} ${symbol.shade}`;
      const taken =
        symbol !== null && (letters.has(symbol.letter) || (held === "settled" && signs.has(sign)));
      if (symbol === null || taken) {
        const rule = held === "pinned" ? "choice-not-followed" : "settled-dropped";
        const numbers = { kind: "symbol", value: choice.value };
        findings.push(makeFinding(rule, held === "pinned" ? "error" : "note", [id], numbers));
        continue;
      }
      symbols.set(id, symbol);
      letters.add(symbol.letter);
      signs.add(sign);
    }
  }
  return { symbols, findings };
}
