/** Pieces of one size. */
export interface CutPiece {
  /** Along the sheet's width, which is the way of the grain. */
  readonly widthMm: number;
  readonly heightMm: number;
  readonly count: number;
  /** Whether it may lie turned by 90°; not when the grain matters. */
  readonly mayTurn: boolean;
}

/** What is trimmed off a sheet before cutting, kerf included. */
export interface SheetTrim {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
  readonly topMm: number;
}

/** One size of stock sheet. */
export interface StockSheet {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly trim: SheetTrim;
  /** How many there are; null: as many as are wanted. */
  readonly count: number | null;
  /** What one costs; 1 for all sizes counts sheets. */
  readonly cost: number;
}

/** A rip runs along the sheet's width and divides its height; a cross cut runs along the height. */
export type CutKind = "rip" | "cross";

/** How the saw cuts. Every cut goes from edge to edge through the part in hand. */
export interface CuttingRules {
  /** Width of the saw cut, lost at every cut. */
  readonly kerfMm: number;
  /** How often the direction of cutting may be chosen anew; null: any number. */
  readonly stages: number | null;
  /** Direction of the first stage. Without a limit of stages it makes no difference. */
  readonly firstCut: CutKind | "either";
  /** Whether, after the last stage, one more cut may part a piece from mere waste. */
  readonly lastTrim: boolean;
}

export interface CuttingProblem extends CuttingRules {
  readonly pieces: readonly CutPiece[];
  readonly sheets: readonly StockSheet[];
}

/** A size in whole units, kerf added to both lengths: so parts that lie side by side simply add up. */
export interface Size {
  readonly w: number;
  readonly h: number;
}

/** The problem in whole units. */
export interface Units {
  /** One unit. */
  readonly micrometres: number;
  readonly kerf: number;
  readonly pieces: readonly Size[];
  /** What is left of each sheet inside its trim. */
  readonly sheets: readonly Size[];
}

const MICROMETRES_PER_MM = 1000;

/** A length in whole micrometres. */
export const micrometres = (mm: number): number => Math.round(mm * MICROMETRES_PER_MM);

/** A length of so many micrometres. */
export const millimetres = (um: number): number => um / MICROMETRES_PER_MM;

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** Width and height of a sheet inside its trim, in micrometres. */
export const insideTrim = ({ widthMm, heightMm, trim }: StockSheet): Size => ({
  w: micrometres(widthMm) - micrometres(trim.leftMm) - micrometres(trim.rightMm),
  h: micrometres(heightMm) - micrometres(trim.bottomMm) - micrometres(trim.topMm),
});

/**
 * Lengths as whole numbers of their greatest common divisor, resolved to 1 µm. A part of width x and a kerf k is
 * x + k units wide, and so is the sheet; then two parts and the cut between them are as wide as their sum.
 * @throws RangeError when a length is not positive or not finite, a trim or the kerf is negative, a count is not a
 * whole number of at least 0, a cost is not positive or the stages are not a whole number of at least 1.
 */
export const unitsOf = (problem: CuttingProblem): Units => {
  refuse(problem);
  const k = micrometres(problem.kerfMm);
  const grow = ({ w, h }: Size): Size => ({ w: w + k, h: h + k });
  const pieces = problem.pieces.map((p) => grow({ w: micrometres(p.widthMm), h: micrometres(p.heightMm) }));
  const sheets = problem.sheets.map((sheet) => grow(insideTrim(sheet)));
  const um = [...pieces, ...sheets].reduce((d, { w, h }) => gcd(gcd(d, Math.abs(w)), Math.abs(h)), k) || 1;
  const divide = ({ w, h }: Size): Size => ({ w: w / um, h: h / um });
  return { micrometres: um, kerf: k / um, pieces: pieces.map(divide), sheets: sheets.map(divide) };
};

const refuse = ({ pieces, sheets, kerfMm, stages }: CuttingProblem): void => {
  const whole = (x: number): boolean => Number.isSafeInteger(x) && x >= 0;
  const long = (x: number): boolean => Number.isFinite(x) && micrometres(x) > 0;
  const wide = (x: number): boolean => Number.isFinite(x) && x >= 0;
  if (!wide(kerfMm)) throw new RangeError(`kerf ${kerfMm}`);
  if (stages !== null && !(whole(stages) && stages > 0)) throw new RangeError(`stages ${stages}`);
  pieces.forEach(({ widthMm, heightMm, count }, i) => {
    if (!(long(widthMm) && long(heightMm))) throw new RangeError(`piece ${i}: ${widthMm} × ${heightMm} mm`);
    if (!whole(count)) throw new RangeError(`piece ${i}: count ${count}`);
  });
  sheets.forEach(({ widthMm, heightMm, trim, count, cost }, i) => {
    if (!(long(widthMm) && long(heightMm))) throw new RangeError(`sheet ${i}: ${widthMm} × ${heightMm} mm`);
    const edges = [trim.leftMm, trim.rightMm, trim.bottomMm, trim.topMm];
    if (!edges.every(wide)) throw new RangeError(`sheet ${i}: trim ${edges.join(", ")} mm`);
    if (count !== null && !whole(count)) throw new RangeError(`sheet ${i}: count ${count}`);
    if (!(Number.isFinite(cost) && cost > 0)) throw new RangeError(`sheet ${i}: cost ${cost}`);
  });
};
