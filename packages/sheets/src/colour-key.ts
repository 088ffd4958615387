import type { HarnessResult, SizedWire } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { TEXT } from "./compose/draw.ts";
import type { Block } from "./compose/flow.ts";
import { paragraph } from "./compose/paragraph.ts";
import { say } from "./compose/say.ts";

/** The two-letter codes that a colour is written with: `WHRD` is white, then red. */
function codesOf(colour: string): readonly string[] {
  return colour.match(/[A-Z]{2}/gu) ?? [];
}

/** A line that says what the colour codes of a harness stand for. */
export function colourKey(harness: HarnessResult, language: SheetLanguage, widthMm: number): Block {
  return colourKeyOf(harness.wires, language, widthMm);
}

/** A line that says what the colour codes of some wires stand for. */
export function colourKeyOf(wires: readonly SizedWire[], language: SheetLanguage, widthMm: number): Block {
  const used = [...new Set(wires.flatMap((w) => codesOf(w.colour)))].sort();
  const text = say(language, (w, l) => {
    const names = new Map<string, string>(Object.entries(sheetWords(l).colours));
    return `${w.common.colourKey}: ${used.map((c) => `${c} ${names.get(c) ?? c}`).join(", ")}`;
  });
  return paragraph(text, widthMm, TEXT.small);
}
