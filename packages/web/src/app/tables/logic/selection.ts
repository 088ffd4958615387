/** A cell by its place on the screen. */
export interface Spot {
  readonly row: number;
  readonly col: number;
}

/** A rectangle of cells, all four edges included. */
export interface Range {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** What is selected: a rectangle between two corners, and in it the cell that typing goes to. */
export interface Selection {
  /** Corner that stays when the selection is extended. */
  readonly anchor: Spot;
  /** Corner that moves. */
  readonly head: Spot;
  readonly active: Spot;
}

/** The cells that there are. */
export interface Area {
  /** Rows, the blank one at the end included. */
  readonly rows: number;
  /** The last row that is not the blank one. */
  readonly last: number;
  readonly cols: number;
  /** Rows that fit on the screen. */
  readonly page: number;
  readonly filled: (row: number, col: number) => boolean;
}

export const at = (row: number, col: number): Selection => {
  const spot = { row, col };
  return { anchor: spot, head: spot, active: spot };
};

export const rangeOf = ({ anchor, head }: Pick<Selection, "anchor" | "head">): Range => ({
  top: Math.min(anchor.row, head.row),
  left: Math.min(anchor.col, head.col),
  bottom: Math.max(anchor.row, head.row),
  right: Math.max(anchor.col, head.col),
});

export const sizeOf = (range: Range): { readonly rows: number; readonly cols: number } => ({
  rows: range.bottom - range.top + 1,
  cols: range.right - range.left + 1,
});

const clamp = (value: number, most: number): number => Math.max(0, Math.min(value, most));

const inside = (spot: Spot, area: Area): Spot => ({
  row: clamp(spot.row, area.rows - 1),
  col: clamp(spot.col, area.cols - 1),
});

/** The selection cut to the cells that there are now. */
export const cutTo = (selection: Selection, area: Area): Selection => ({
  anchor: inside(selection.anchor, area),
  head: inside(selection.head, area),
  active: inside(selection.active, area),
});

/** The moving corner goes to a cell. */
export const extendTo = (selection: Selection, head: Spot): Selection => ({
  anchor: selection.anchor,
  head,
  active: selection.anchor,
});

export const wholeRows = (from: number, to: number, area: Area): Selection => ({
  anchor: { row: from, col: 0 },
  head: { row: to, col: area.cols - 1 },
  active: { row: from, col: 0 },
});

export const wholeColumns = (from: number, to: number, area: Area): Selection => ({
  anchor: { row: 0, col: from },
  head: { row: area.last, col: to },
  active: { row: 0, col: from },
});

export const everything = (area: Area): Selection => ({
  ...wholeColumns(0, area.cols - 1, area),
});

/** Whether the selection is made of whole rows. */
export const isWholeRows = (selection: Selection, area: Area): boolean => {
  const { left, right } = rangeOf(selection);
  return left === 0 && right === area.cols - 1 && area.cols > 1;
};

/** To the edge of a run of filled or blank cells, as Ctrl+arrow does it in a spreadsheet. */
function jump(spot: Spot, dRow: number, dCol: number, area: Area): Spot {
  const step = (s: Spot): Spot => ({ row: s.row + dRow, col: s.col + dCol });
  const there = (s: Spot): boolean => s.row >= 0 && s.col >= 0 && s.row < area.rows && s.col < area.cols;
  let now = spot;
  const first = step(now);
  if (!there(first)) return now;
  const runs = area.filled(now.row, now.col) && area.filled(first.row, first.col);
  for (let next = first; there(next); next = step(next)) {
    if (runs && !area.filled(next.row, next.col)) return now;
    now = next;
    if (!runs && area.filled(now.row, now.col)) return now;
  }
  return now;
}

interface Keys {
  readonly ctrl: boolean;
  readonly shift: boolean;
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

function target(key: string, spot: Spot, ctrl: boolean, area: Area): Spot | null {
  const arrow = ARROWS[key];
  if (arrow !== undefined)
    return ctrl ? jump(spot, ...arrow, area) : { row: spot.row + arrow[0], col: spot.col + arrow[1] };
  switch (key) {
    case "Home":
      return { row: ctrl ? 0 : spot.row, col: 0 };
    case "End":
      return { row: ctrl ? area.last : spot.row, col: area.cols - 1 };
    case "PageUp":
      return { row: spot.row - area.page, col: spot.col };
    case "PageDown":
      return { row: spot.row + area.page, col: spot.col };
    default:
      return null;
  }
}

/** What a key of movement does to the selection; null for other keys. */
export function navigate(selection: Selection, key: string, keys: Keys, area: Area): Selection | null {
  if (key === "a" && keys.ctrl) return everything(area);
  if (key === " " && keys.ctrl) {
    const { left, right } = rangeOf(selection);
    return wholeColumns(left, right, area);
  }
  if (key === " " && keys.shift) {
    const { top, bottom } = rangeOf(selection);
    return wholeRows(top, bottom, area);
  }
  const from = keys.shift ? selection.head : selection.active;
  const to = target(key, from, keys.ctrl, area);
  if (to === null) return null;
  const spot = inside(to, area);
  return keys.shift ? extendTo(selection, spot) : at(spot.row, spot.col);
}

/**
 * The active cell goes on: within a selection of several cells round and round inside it, else to the next cell;
 * `across` for Tab, down for Enter.
 */
export function advance(selection: Selection, across: boolean, back: boolean, area: Area): Selection {
  const range = rangeOf(selection);
  const { rows, cols } = sizeOf(range);
  const { active } = selection;
  const step = back ? -1 : 1;
  if (rows * cols > 1) {
    const row = active.row - range.top;
    const col = active.col - range.left;
    const index = across ? row * cols + col : col * rows + row;
    const next = (index + step + rows * cols) % (rows * cols);
    const spot = across
      ? { row: Math.floor(next / cols), col: next % cols }
      : { row: next % rows, col: Math.floor(next / rows) };
    return { ...selection, active: { row: range.top + spot.row, col: range.left + spot.col } };
  }
  const flat = active.row * area.cols + active.col + step;
  const to = across
    ? { row: Math.floor(flat / area.cols), col: ((flat % area.cols) + area.cols) % area.cols }
    : { row: active.row + step, col: active.col };
  if (across && (flat < 0 || flat >= area.rows * area.cols)) return selection;
  const spot = inside(to, area);
  return at(spot.row, spot.col);
}
