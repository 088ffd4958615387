import { type LineResult, type ScrewSymbol, symbolOutline } from "@pinwright/engine";
import type { Layer, Mark, PagePoint } from "../compose/mark.ts";

/** The sign of a fastener type, `sizeMm` high and wide about its middle. */
export function symbolMark(
  symbol: Pick<ScrewSymbol, "shape" | "shade">,
  middle: PagePoint,
  sizeMm: number,
  layer: Layer = "TEXT",
): Mark {
  return {
    kind: "area",
    rings: symbolOutline(symbol, sizeMm).map((ring) =>
      // Page y runs down.
      ring.map((p) => ({ xMm: middle.xMm + p.xMm, yMm: middle.yMm - p.yMm })),
    ),
    fill: "ink",
    layer,
  };
}

/** The symbol of a type; a type without one, which the line has not seen, is a plain circle with a question mark. */
export function symbolOf(line: LineResult, typeId: string): ScrewSymbol {
  return line.fastening.symbols.get(typeId) ?? { typeId, letter: "?", shape: "circle", shade: "open" };
}
