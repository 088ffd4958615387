import type { BookRow } from "@pinwright/book";
import { fromFrame } from "@pinwright/kernel";
import { markedSide } from "@pinwright/sheets";
import { centredRing, flat } from "./rings.ts";
import { view } from "./view.ts";

/** A part on a kind of board, with its outline on it. */
interface BoardPart {
  readonly reference: string;
  readonly partId: string;
  readonly part: string;
  readonly partZh: string;
  readonly value: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly heightMm: number;
  readonly joints: number;
  /** What marks the right way round; blank: either way. */
  readonly polarity: string;
  readonly isAfterWash: boolean;
  readonly masks: number;
  readonly isHidden: boolean;
  /** Corners by turns of x and y, in the board's frame. */
  readonly ring: readonly number[];
  /** Where the mark of the right way round is drawn: the ends of a bar, or one place for a dot; blank: none. */
  readonly mark: readonly number[];
}

/** A kind of board as it is drawn. */
export interface BoardFace {
  readonly widthMm: number;
  readonly depthMm: number;
  readonly rings: readonly (readonly number[])[];
  /** Fixing holes. */
  readonly holes: readonly { readonly xMm: number; readonly yMm: number }[];
  readonly parts: readonly BoardPart[];
}

function holesOf(text: string): BoardFace["holes"] {
  return text.split(" ").flatMap((pair) => {
    const [x, y] = pair.split(",").map(Number);
    return x === undefined || y === undefined || !Number.isFinite(x + y) ? [] : [{ xMm: x, yMm: y }];
  });
}

/** One kind of board with all its parts, as seen from the side that is stuffed; nothing when there is no such kind. */
export const boardPlacements = view<{ readonly typeId: string }, BoardFace>({
  uses: ({ book }) => [book.tables.board_types, book.tables.placements, book.tables.parts, book.outlines],
  entries: ({ book }, { typeId }) => {
    const type = book.tables.board_types.find(({ id }) => id === typeId);
    if (type === undefined) return new Map();
    const outline = type.outline === null ? undefined : book.outlines.get(type.outline);
    const parts = new Map(book.tables.parts.map((row) => [row.id, row]));
    const { width_mm: widthMm, depth_mm: depthMm } = type;
    const face: BoardFace = {
      widthMm,
      depthMm,
      rings: outline?.rings.map(flat) ?? [centredRing(widthMm / 2, depthMm / 2, 0, widthMm, depthMm)],
      holes: holesOf(type.holes),
      parts: book.tables.placements
        .filter(({ board_type }) => board_type === typeId)
        .map((row) => {
          const part = parts.get(row.part);
          return {
            reference: row.reference,
            partId: row.part,
            part: part?.label ?? "",
            partZh: part?.label_zh ?? "",
            value: part?.value ?? "",
            xMm: row.x_mm,
            yMm: row.y_mm,
            heightMm: row.height_mm,
            joints: row.joints,
            polarity: row.polarity,
            isAfterWash: row.after_wash,
            masks: row.masks,
            isHidden: row.hidden,
            ring: centredRing(row.x_mm, row.y_mm, row.rotation_deg, row.width_mm, row.depth_mm),
            mark: markOf(row, type),
          };
        }),
    };
    return new Map([["", face]]);
  },
  restsInPreview: true,
});

/** How far a mark is inside of a part, as a share of its half extent. */
const INSIDE = 0.82;
/** A dot is at most so far from the corner or edge. */
const DOT_MM = 1.2;

/** The mark as on the printed picture: a bar along the marked side, a dot for a notch or a leg. */
function markOf(row: BookRow<"placements">, type: BookRow<"board_types">): readonly number[] {
  if (row.polarity === "") return [];
  const [hw, hd] = [row.width_mm / 2, row.depth_mm / 2];
  const frame = { xMm: row.x_mm, yMm: row.y_mm, rotationDeg: row.rotation_deg };
  const at = (xMm: number, yMm: number): readonly number[] => {
    const p = fromFrame(frame, { xMm, yMm });
    return [p.xMm, p.yMm];
  };
  if (/notch|leg/u.test(row.polarity)) {
    const inMm = Math.min(DOT_MM, 0.4 * Math.min(hw, hd) + 0.2);
    return at(inMm - hw, row.polarity.includes("leg") ? hd - inMm : 0);
  }
  const [x, y] = markedSide(row, type);
  const ends = [-1, 1].map((end) =>
    x === 0 ? at(end * hw * INSIDE, y * hd * INSIDE) : at(x * hw * INSIDE, end * hd * INSIDE),
  );
  return ends.flat();
}
