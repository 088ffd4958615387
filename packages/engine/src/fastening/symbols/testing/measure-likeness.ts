import { roundTo } from "@pinwright/kernel";
import { designRings } from "../drawing.ts";
import { SIGNS, type Sign } from "../symbol-likeness.ts";
import { blur, inkInCommon, quarterTurn, type Raster, rasterise } from "./raster.ts";

/** How finely drawings are compared. */
const CELL_MM = 0.2;

/** Standard deviation of the blur of a glance at arm's length; also what a worn printer does. */
const GLANCE_MM = 0.3;

function turnsOf(ink: Raster): readonly Raster[] {
  const turns = [ink];
  let last = ink;
  for (let i = 0; i < 3; i++) {
    last = quarterTurn(last);
    turns.push(last);
  }
  return turns;
}

const signKey = (sign: Sign): string => `${sign.shape} ${sign.shade}`;

/**
 * How much alike every two signs look, as the rows of `SYMBOL_LIKENESS`: for each sign of `SIGNS` its likeness to
 * those before it, in thousandths. It is the mean of the ink that their filled shapes have in common and the ink that
 * the drawings themselves have in common, both measured on drawings of 4 mm blurred by 0.3 mm, in the quarter turn
 * in which they agree best: a tray is also read from the other side of the bench.
 */
export function measureLikeness(): readonly string[] {
  const seen = new Map(
    SIGNS.map((sign): [string, readonly Raster[]] => [
      signKey(sign),
      turnsOf(blur(rasterise(designRings(sign.shape, sign.shade), CELL_MM), GLANCE_MM)),
    ]),
  );
  const inCommon = (a: Sign, b: Sign): number => {
    const other = seen.get(signKey(b))?.[0];
    if (other === undefined) return Number.NaN;
    return Math.max(...(seen.get(signKey(a)) ?? []).map((turn) => inkInCommon(turn, other)));
  };
  const shapes = new Map<string, number>();
  const shapesInCommon = (a: Sign, b: Sign): number => {
    const key = `${a.shape} ${b.shape}`;
    const known =
      shapes.get(key) ?? inCommon({ shape: a.shape, shade: "solid" }, { shape: b.shape, shade: "solid" });
    shapes.set(key, known);
    return known;
  };
  return SIGNS.map((a, i) =>
    SIGNS.slice(0, i)
      .map((b) => roundTo(500 * (shapesInCommon(a, b) + inCommon(a, b)), 1))
      .join(" "),
  );
}
