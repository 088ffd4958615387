import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import { eachLeaf } from "./leaves.ts";
import type { Box, Ink, Leaf, Mark, PagePoint, Stroke } from "./mark.ts";

/** A length in whole micrometres: equal drawings give equal texts whatever noise their sums carry. */
const um = (mm: number): string => String(Math.round(mm * 1000) + 0);

const pointText = (p: PagePoint, dx: number, dy: number): string => `${um(p.xMm + dx)},${um(p.yMm + dy)}`;
const boxText = (b: Box, dx: number, dy: number): string =>
  `${um(b.xMm + dx)},${um(b.yMm + dy)},${um(b.widthMm)},${um(b.heightMm)}`;

function strokeText(stroke: Stroke | null): string {
  if (stroke === null) return "-";
  const dash = stroke.dashMm === undefined ? "" : `/${stroke.dashMm.map(um).join("/")}`;
  return `${stroke.ink}:${um(stroke.widthMm)}${dash}`;
}

const fillText = (fill: Ink | null): string => fill ?? "-";

/** All that a mark says where its groups put it, one line of text a mark: fields in a fixed order. */
export function leafText(leaf: Leaf, dx: number, dy: number): string {
  const point = (p: PagePoint): string => pointText(p, dx, dy);
  const points = (list: readonly PagePoint[]): string => list.map(point).join(";");
  const head = `${leaf.kind} ${leaf.layer}`;
  switch (leaf.kind) {
    case "line":
      return `${head} ${point(leaf.from)} ${point(leaf.to)} ${strokeText(leaf.stroke)}`;
    case "polyline":
      return `${head} ${points(leaf.points)} ${strokeText(leaf.stroke)}`;
    case "polygon":
      return `${head} ${points(leaf.points)} ${strokeText(leaf.stroke)} ${fillText(leaf.fill)} ${um(leaf.hatchMm ?? 0)}`;
    case "area":
      return `${head} ${leaf.rings.map(points).join("/")} ${leaf.fill}`;
    case "circle":
      return `${head} ${point(leaf.at)} ${um(leaf.radiusMm)} ${strokeText(leaf.stroke)} ${fillText(leaf.fill)}`;
    case "arc":
      return `${head} ${point(leaf.at)} ${um(leaf.radiusMm)} ${um(leaf.fromDeg)} ${um(leaf.toDeg)} ${strokeText(leaf.stroke)}`;
    case "rect":
      return `${head} ${boxText(leaf.box, dx, dy)} ${strokeText(leaf.stroke)} ${fillText(leaf.fill)}`;
    case "text":
      return `${head} ${point(leaf.at)} ${um(leaf.heightMm)} ${leaf.weight} ${leaf.ink} ${leaf.anchor} ${um(leaf.turnDeg)} ${JSON.stringify(leaf.text)}`;
    case "code":
      return `${head} ${point(leaf.at)} ${um(leaf.sizeMm)} ${JSON.stringify(leaf.text)}`;
  }
}

/** SHA-256 (FIPS 180-4) of a text in UTF-8, in hexadecimal. */
export function textHash(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

interface Hashed {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly Mark[];
}

/** What a page says, as text: everything but the groups that hold what differs between prints that say the same. */
function pageText(page: Hashed): string {
  const lines = [`page ${um(page.widthMm)} ${um(page.heightMm)}`];
  eachLeaf(
    page.marks,
    (leaf, dx, dy, clip, frame) => {
      if (frame) return;
      const text = leafText(leaf, dx, dy);
      lines.push(clip === null ? text : `${text} in ${boxText(clip, 0, 0)}`);
    },
    (group, dx, dy) => {
      if (group.hash === undefined) return true;
      const window = group.clip === null ? "" : ` in ${boxText(group.clip, dx, dy)}`;
      lines.push(`group ${um(dx + group.dxMm)},${um(dy + group.dyMm)} ${group.hash}${window}`);
      return false;
    },
  );
  return lines.join("\n");
}

/** Hashes of what pages say, of each by itself and of all together. */
export function bodyHashes(pages: readonly Hashed[]): {
  readonly all: string;
  readonly pages: readonly string[];
} {
  const texts = pages.map(pageText);
  return { all: textHash(texts.join("\n")), pages: texts.map(textHash) };
}

/** Hash of what pages say together: SHA-256 of their texts. */
export const bodyHash = (pages: readonly Hashed[]): string => textHash(pages.map(pageText).join("\n"));
