/** Direction in which a box's parts follow each other: 0 along the width (cross cuts), 1 along the height (rips). */
export type Direction = 0 | 1;

/** How deep boxes may be nested. */
export interface Depth {
  readonly stages: number;
  /** Whether a piece of the last stage may be parted from waste by one more cut. */
  readonly lastTrim: boolean;
}

/**
 * A part of a sheet from the inside out: a piece, or parts one after the other in one direction, just as large as they
 * need. Parts at level n are divided by cuts of stage n; a part that is smaller than its place is trimmed by one more.
 */
export class Box {
  readonly direction: Direction;
  /** Type of the piece; -1: a box of boxes. */
  readonly piece: number;
  readonly turned: boolean;
  w: number;
  h: number;
  level = 0;
  parent: Box | null = null;
  children: Box[] = [];
  /** How large it may grow while everything beside it stays. */
  roomW = 0;
  roomH = 0;
  /** Area of the pieces in it. */
  usedArea = 0;

  constructor(direction: Direction, piece = -1, turned = false, w = 0, h = 0) {
    this.direction = direction;
    this.piece = piece;
    this.turned = turned;
    this.w = w;
    this.h = h;
  }

  add(child: Box): void {
    child.parent = this;
    this.children.push(child);
  }
}

/** A place for a piece: at the end of a box of boxes, or in a new box together with the piece that stood there. */
export interface Place {
  box: Box | null;
  sheet: number;
  turned: boolean;
  cost: number;
}

/** A copy of a box and all in it. */
export const copyBox = (box: Box): Box => {
  const copy = new Box(box.direction, box.piece, box.turned, box.w, box.h);
  copy.level = box.level;
  copy.roomW = box.roomW;
  copy.roomH = box.roomH;
  copy.usedArea = box.usedArea;
  for (const child of box.children) copy.add(copyBox(child));
  return copy;
};

const measure = (box: Box, level: number): void => {
  box.level = level;
  if (box.piece >= 0) {
    box.usedArea = box.w * box.h;
    return;
  }
  let along = 0;
  let across = 0;
  let used = 0;
  for (const child of box.children) {
    measure(child, level + 1);
    used += child.usedArea;
    along += box.direction === 0 ? child.w : child.h;
    across = Math.max(across, box.direction === 0 ? child.h : child.w);
  }
  box.usedArea = used;
  box.w = box.direction === 0 ? along : across;
  box.h = box.direction === 0 ? across : along;
};

const giveRoom = (box: Box): void => {
  for (const child of box.children) {
    child.roomW = box.direction === 0 ? box.roomW - box.w + child.w : box.roomW;
    child.roomH = box.direction === 0 ? box.roomH : box.roomH - box.h + child.h;
    giveRoom(child);
  }
};

/** Works out levels, sizes and rooms of a sheet's boxes anew. */
export const refresh = (root: Box, width: number, height: number): void => {
  measure(root, 0);
  root.roomW = width;
  root.roomH = height;
  giveRoom(root);
};

/**
 * How much more the boxes around would hold when a box becomes w × h: the inner ones weigh less, since their waste can
 * still be used. The outermost always takes the whole sheet across.
 */
const growth = (from: Box, toW: number, toH: number): number => {
  let box = from;
  let w = toW;
  let h = toH;
  let cost = 0;
  for (;;) {
    const parent = box.parent;
    if (parent === null) {
      return cost + (box.direction === 0 ? (w - box.w) * box.roomH : (h - box.h) * box.roomW);
    }
    cost += (w * h - box.w * box.h) / (1 << Math.min(box.level, 20));
    const dw = w - box.w;
    const dh = h - box.h;
    if (dw === 0 && dh === 0) return cost;
    w = parent.direction === 0 ? parent.w + dw : Math.max(parent.w, w);
    h = parent.direction === 0 ? Math.max(parent.h, h) : parent.h + dh;
    box = parent;
  }
};

/** Looks through a sheet's boxes for the place of a piece that lets them grow least. */
export class PlaceFinder {
  readonly best: Place = { box: null, sheet: -1, turned: false, cost: Number.POSITIVE_INFINITY };
  /** Places looked at. */
  steps = 0;
  /** Places passed over, as a share of all. */
  blink = 0;
  private readonly depth: Depth;
  private readonly random: () => number;
  private w = 0;
  private h = 0;
  private turned = false;
  private sheet = 0;

  constructor(depth: Depth, random: () => number) {
    this.depth = depth;
    this.random = random;
  }

  /** Forgets the best place. */
  reset(): void {
    this.best.box = null;
    this.best.cost = Number.POSITIVE_INFINITY;
  }

  /** Looks for a place of a w × h piece on one sheet. */
  look(root: Box, sheet: number, w: number, h: number, turned: boolean): void {
    this.w = w;
    this.h = h;
    this.turned = turned;
    this.sheet = sheet;
    if (this.mayHold(root)) this.visit(root);
  }

  private visit(box: Box): void {
    this.steps++;
    const { w, h } = this;
    if (box.piece >= 0) {
      // The new box lies across the direction in which the piece stands among others.
      const beside = box.direction === 0;
      const toW = beside ? box.w + w : Math.max(box.w, w);
      const toH = beside ? Math.max(box.h, h) : box.h + h;
      if (this.fits(box.level + 1, beside ? box.h === h : box.w === w)) this.offer(box, toW, toH);
      return;
    }
    const beside = box.direction === 0;
    const toW = beside ? box.w + w : Math.max(box.w, w);
    const toH = beside ? Math.max(box.h, h) : box.h + h;
    const across =
      box.parent === null && beside ? box.roomH : box.parent === null ? box.roomW : beside ? box.h : box.w;
    if (this.fits(box.level + 1, across === (beside ? h : w))) this.offer(box, toW, toH);
    for (const child of box.children) if (this.mayHold(child)) this.visit(child);
  }

  /** Whether there can be room for the piece in a box, in each direction and by area. */
  private mayHold({ roomW, roomH, usedArea }: Box): boolean {
    const { w, h } = this;
    return w <= roomW && h <= roomH && w * h <= roomW * roomH - usedArea;
  }

  private fits(level: number, flush: boolean): boolean {
    const { stages, lastTrim } = this.depth;
    return level < stages || (level === stages && (lastTrim || flush));
  }

  private offer(box: Box, toW: number, toH: number): void {
    if (toW > box.roomW || toH > box.roomH) return;
    if (this.blink > 0 && this.random() < this.blink) return;
    const cost = growth(box, toW, toH);
    if (cost >= this.best.cost) return;
    this.best.cost = cost;
    this.best.box = box;
    this.best.sheet = this.sheet;
    this.best.turned = this.turned;
  }
}

/** Direction across the given one. */
const across = (direction: Direction): Direction => (direction === 0 ? 1 : 0);

/**
 * A piece for a box. A piece's own direction is that of the box that it would open together with another, which lies
 * across the one it stands in.
 */
const pieceBox = (into: Direction, piece: number, turned: boolean, w: number, h: number): Box =>
  new Box(across(into), piece, turned, w, h);

/** Puts a piece into a place that was found; the sheet then needs a refresh. */
export const put = (at: Box, piece: number, turned: boolean, w: number, h: number): void => {
  if (at.piece < 0) {
    at.add(pieceBox(at.direction, piece, turned, w, h));
    return;
  }
  const { parent } = at;
  if (parent === null) return;
  const pair = new Box(at.direction);
  pair.add(pieceBox(at.direction, at.piece, at.turned, at.w, at.h));
  pair.add(pieceBox(at.direction, piece, turned, w, h));
  pair.parent = parent;
  parent.children[parent.children.indexOf(at)] = pair;
};

/** Takes a box out; boxes left empty or with one part only are dissolved. The sheet then needs a refresh. */
export const take = (box: Box): void => {
  const { parent } = box;
  if (parent === null) {
    box.children = [];
    return;
  }
  parent.children.splice(parent.children.indexOf(box), 1);
  dissolve(parent);
};

const dissolve = (box: Box): void => {
  const { parent } = box;
  if (parent === null) return;
  const [only, second] = box.children;
  if (only === undefined) {
    take(box);
    return;
  }
  if (second !== undefined) return;
  const at = parent.children.indexOf(box);
  const parts =
    only.piece >= 0 ? [pieceBox(parent.direction, only.piece, only.turned, only.w, only.h)] : only.children;
  for (const part of parts) part.parent = parent;
  parent.children.splice(at, 1, ...parts);
};

/** The types of the pieces in a box. */
export const piecesIn = (box: Box, found: number[] = []): number[] => {
  if (box.piece >= 0) found.push(box.piece);
  for (const child of box.children) piecesIn(child, found);
  return found;
};
