import { type ScrewSymbol, symbolOutline } from "@pinwright/engine";

/** The sign of a fastener type as it is drawn. */
export interface Sign {
  readonly letter: string;
  /** Path about its middle in millimetres of the design, 4 across; y is up, filled by the even-odd rule. */
  readonly d: string;
}

const DESIGN_MM = 4;

const hundredths = (mm: number): number => Math.round(mm * 100) / 100;

/** Draws a sign. */
export const signOf = (symbol: ScrewSymbol): Sign => ({
  letter: symbol.letter,
  d: symbolOutline(symbol, DESIGN_MM)
    .map((ring) => `M${ring.map((p) => `${hundredths(p.xMm)} ${hundredths(p.yMm)}`).join("L")}Z`)
    .join(""),
});
