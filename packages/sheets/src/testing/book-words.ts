import type { LineResult } from "@pinwright/engine";
import { wireNo } from "../facts.ts";

/** Tokens of a text that hold a digit: figures, pins, ids, part numbers; without the signs round them. */
export const figuresIn = (text: string): readonly string[] =>
  text
    .split(/[\s,;()（）、，；：。|→]+/u)
    .map((t) => t.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}%Ω]+$/gu, ""))
    .filter((t) => /\d/u.test(t));

/** All texts and figures of a value, however deep. */
function* saidIn(value: unknown): Generator<string, void> {
  if (typeof value === "string") yield value;
  else if (typeof value === "number") yield String(value);
  else if (Array.isArray(value) || value instanceof Set) for (const each of value) yield* saidIn(each);
  else if (value instanceof Map)
    for (const [key, each] of value) {
      yield* saidIn(key);
      yield* saidIn(each);
    }
  else if (typeof value === "object" && value !== null)
    for (const each of Object.values(value)) yield* saidIn(each);
}

/** Every piece that the book of a machine, its shop's tools and what follows from both say, letter by letter. */
export function factsOfBook(line: LineResult): ReadonlySet<string> {
  const known = new Set<string>();
  const take = (text: string): void => {
    known.add(text);
    for (const figure of figuresIn(text)) {
      known.add(figure);
      for (const part of figure.split(/[:/·]+/u)) known.add(part);
    }
  };
  for (const text of saidIn(line.machine.book.tables)) take(text);
  for (const text of saidIn(line.machine.book.machine)) take(text);
  for (const text of saidIn(line.machine.shop.tables.drivers)) take(text);
  for (const id of [
    ...line.machine.points.keys(),
    ...line.machine.landings.keys(),
    ...line.machine.items.keys(),
  ])
    take(id);
  for (const harness of line.harnesses.values()) {
    take(`H${harness.harness.number}`);
    for (const wire of harness.wires) {
      take(wireNo(harness, wire.number));
      take(String(wire.number));
    }
    for (const splice of harness.splices) take(splice.id);
  }
  return known;
}
