import { writeFile } from "node:fs/promises";
import { readBook, readShop } from "@pinwright/book/io";
import { Line, type Pinboard, type PinboardHolder } from "@pinwright/engine";
import { directionDeg, fromFrame, pointAlong, subtractPoints } from "@pinwright/kernel";

/**
 * Draws the pinboard of one harness as an SVG in millimetres, for eyes: lanes, pegs, holders, ties and ids.
 * Usage: npx tsx tools/pinboard-svg.ts <book folder> <harness id | all> <out.svg | folder>
 */

const quoted = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");

function holderSvg(holder: PinboardHolder, up: (y: number) => number): string {
  const frame = { ...holder.at, rotationDeg: holder.towardDeg + 90 };
  const half = holder.widthMm / 2;
  const corners = [
    [-half, 0],
    [half, 0],
    [half, holder.depthMm],
    [-half, holder.depthMm],
  ].map(([xMm = 0, yMm = 0]) => fromFrame(frame, { xMm, yMm }));
  const points = corners.map((p) => `${p.xMm},${up(p.yMm)}`).join(" ");
  const label = fromFrame(frame, { xMm: 0, yMm: holder.depthMm + 8 });
  return `<polygon points="${points}" class="holder"/><text x="${label.xMm}" y="${up(label.yMm)}">${quoted(holder.landingId)}</text>`;
}

/** The pinboard as an SVG document. */
export function pinboardSvg(board: Pinboard): string {
  const { widthMm, heightMm } = board;
  const up = (yMm: number): number => heightMm - yMm;
  const lines = board.branches.map(
    (b) => `<polyline points="${b.line.map((p) => `${p.xMm},${up(p.yMm)}`).join(" ")}" class="branch"/>`,
  );
  const ties = board.branches.flatMap((b) =>
    b.tiesMm.map((at) => {
      const p = pointAlong(b.line, at);
      const next = pointAlong(b.line, at + 0.5);
      const deg = -directionDeg(subtractPoints(next, p));
      return `<rect x="-1.5" y="-6" width="3" height="12" class="tie" transform="translate(${p.xMm},${up(p.yMm)}) rotate(${deg})"/>`;
    }),
  );
  const pegs = [
    ...board.nodes.filter((n) => n.peg).map((n) => ({ ...n.at, kind: "peg" })),
    ...board.bendPegs.map((p) => ({ ...p, kind: "bend" })),
  ].map((p) => `<circle cx="${p.xMm}" cy="${up(p.yMm)}" r="5" class="${p.kind}"/>`);
  const title = `${board.harnessId}: ${widthMm} × ${heightMm} mm, ${board.kind}, ${board.branches.length} branches, ${board.holders.length} holders, ${board.crossings} crossings, ${board.overlaps} overlaps`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}">`,
    "<style>text{font:7px sans-serif;text-anchor:middle}.branch{fill:none;stroke:#224;stroke-width:4;stroke-linejoin:round}.holder{fill:#cde;stroke:#036}.tie{fill:#4a8}.peg{fill:#fff;stroke:#c30;stroke-width:2}.bend{fill:#fc0;stroke:#c30;stroke-width:2}</style>",
    `<rect width="${widthMm}" height="${heightMm}" fill="#fffdf8" stroke="#888"/>`,
    `<text x="${widthMm / 2}" y="24" style="font-size:16px">${quoted(title)}</text>`,
    ...lines,
    ...ties,
    ...board.holders.map((h) => holderSvg(h, up)),
    ...pegs,
    "</svg>",
  ].join("\n");
}

const [folder, harnessId, out] = process.argv.slice(2);
if (folder === undefined || harnessId === undefined || out === undefined) {
  console.error("usage: npx tsx tools/pinboard-svg.ts <book folder> <harness id | all> <out.svg | folder>");
  process.exitCode = 2;
} else {
  const { book, shop: own } = await readBook(folder);
  const shop = own ?? (await readShop(`${folder}/shop`)).shop;
  const { harnesses } = new Line().run(book, shop);
  const chosen = [...harnesses].filter(([id]) => harnessId === "all" || id === harnessId);
  if (chosen.length === 0) {
    console.error(`no harness "${harnessId}"; there are: ${[...harnesses.keys()].join(", ")}`);
    process.exitCode = 1;
  }
  for (const [id, { pinboard }] of chosen) {
    const file = harnessId === "all" ? `${out}/${id}.svg` : out;
    await writeFile(file, pinboardSvg(pinboard));
    console.log(`${file}: ${pinboard.widthMm} × ${pinboard.heightMm} mm, ${pinboard.kind}`);
  }
}
