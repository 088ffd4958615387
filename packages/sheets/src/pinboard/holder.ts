import {
  cavityGrid,
  type Landing,
  type Machine,
  type PinboardHolder,
  wireEntryCell,
} from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { LINE, line, stroke, TEXT } from "../compose/draw.ts";
import type { LabelLine, LabelPlace } from "../compose/label.ts";
import type { LabelRequest } from "../compose/label-placer.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";
import { corners, offset, type TurnedBox } from "../compose/plane.ts";
import { label, say } from "../compose/say.ts";

/** A holder as marks. */
export interface HolderDrawing {
  readonly landingId: string;
  readonly box: TurnedBox;
  readonly marks: readonly Mark[];
  readonly landing: Landing | undefined;
  readonly labels: { readonly en: string; readonly zh: string };
}

function squareMark(middle: PagePoint, turnDeg: number, sideMm: number, filled: boolean): Mark {
  const square = corners({ middle, turnDeg, widthMm: sideMm, heightMm: sideMm });
  return {
    kind: "polygon",
    points: square.map(([xMm, yMm]) => ({ xMm, yMm })),
    stroke: stroke("ink", LINE.hair),
    fill: filled ? "ink" : null,
    layer: "HOLDERS",
  };
}

/**
 * Cavities at true pitch, as one sees them looking at the wire-entry side from the harness; the upper row lies
 * farther from the entry. Bare terminals are a row of rings.
 */
function cavityMarks(
  machine: Machine,
  landing: Landing,
  holder: PinboardHolder,
  entry: PagePoint,
  intoDeg: number,
): Mark[] {
  const { connector } = landing;
  const family = machine.points.get(landing.pointIds[0] ?? "")?.family;
  if (connector === null || family === undefined) return terminalMarks(landing, holder, entry, intoDeg);
  const grid = cavityGrid(connector, family);
  const side = Math.min(grid.pitchMm, grid.rowPitchMm) * 0.62;
  return landing.pointIds.map((_, index) => {
    const cell = wireEntryCell(machine, landing, index + 1);
    const alongMm = holder.depthMm / 2 + ((grid.rows - 1) / 2 - cell.row) * grid.rowPitchMm;
    const leftMm = ((grid.columns - 1) / 2 - cell.column) * grid.pitchMm;
    return squareMark(offset(entry, intoDeg, alongMm, leftMm), intoDeg, side, index === 0);
  });
}

function terminalMarks(landing: Landing, holder: PinboardHolder, entry: PagePoint, intoDeg: number): Mark[] {
  const count = landing.pointIds.length;
  const pitchMm = holder.widthMm / Math.max(1, count);
  return landing.pointIds.map(
    (_, index): Mark => ({
      kind: "circle",
      at: offset(entry, intoDeg, holder.depthMm / 2, ((count - 1) / 2 - index) * pitchMm),
      radiusMm: 1.4,
      stroke: stroke("ink", LINE.thin),
      fill: null,
      layer: "HOLDERS",
    }),
  );
}

/** Draws a holder: its block, its wire-entry face and the cavities. `entry` is the middle of that face. */
export function drawHolder(machine: Machine, holder: PinboardHolder, entry: PagePoint): HolderDrawing {
  const landing = machine.landings.get(holder.landingId);
  const item = landing === undefined ? undefined : machine.items.get(landing.itemId);
  const intoDeg = holder.towardDeg + 180;
  const block: TurnedBox = {
    middle: offset(entry, intoDeg, holder.depthMm / 2),
    widthMm: holder.depthMm,
    heightMm: holder.widthMm,
    turnDeg: intoDeg,
  };
  const half = holder.widthMm / 2;
  return {
    landingId: holder.landingId,
    box: block,
    landing,
    labels: item?.labels ?? { en: "", zh: "" },
    marks: [
      {
        kind: "polygon",
        points: corners(block).map(([xMm, yMm]) => ({ xMm, yMm })),
        stroke: stroke("ink", LINE.medium),
        fill: "paper",
        layer: "HOLDERS",
      },
      line(
        offset(entry, intoDeg, 0, -half),
        offset(entry, intoDeg, 0, half),
        stroke("ink", LINE.frame),
        "HOLDERS",
      ),
      ...(landing === undefined ? [] : cavityMarks(machine, landing, holder, entry, intoDeg)),
    ],
  };
}

/** The label of a holder: the id of the landing in big letters, what it is, how many ways. */
export function holderLabel(drawing: HolderDrawing, language: SheetLanguage): LabelRequest {
  const { landing, box } = drawing;
  const ways = landing?.connector?.ways;
  const terminals = (landing?.pointIds ?? []).map((id) => id.slice(id.lastIndexOf(":") + 1));
  const size = say(
    language,
    (w) => (ways === undefined ? w.pinboard.terminals(terminals.join(", ")) : w.pinboard.ways(ways)),
    " · ",
  );
  const names = label(language, drawing.labels, "")
    .split("\n")
    .filter((t) => t !== "");
  const lines: LabelLine[] = [
    { text: drawing.landingId, heightMm: TEXT.large, weight: "bold" },
    ...names.map((text) => ({ text, heightMm: TEXT.normal })),
    { text: size, heightMm: TEXT.small },
  ];
  return {
    id: drawing.landingId,
    lines,
    target: box.middle,
    layer: "HOLDERS",
    places: ({ widthMm, heightMm }) => {
      const reach = Math.hypot(box.widthMm, box.heightMm) / 2;
      const places: LabelPlace[] = [];
      const add = (dx: number, dy: number, cost: number): void => {
        places.push({ middle: { xMm: box.middle.xMm + dx, yMm: box.middle.yMm + dy }, turnDeg: 0, cost });
      };
      const out = ((box.turnDeg % 360) + 360) % 360;
      const extentX = boxReach(box, 0);
      const extentY = boxReach(box, 90);
      const right = extentX + 1.5 + widthMm / 2;
      const up = extentY + 1 + heightMm / 2;
      const prefer = (deg: number): number => Math.min(Math.abs(out - deg), 360 - Math.abs(out - deg)) / 90;
      add(right, 0, prefer(0));
      add(0, -up, prefer(90));
      add(-right, 0, prefer(180));
      add(0, up, prefer(270));
      for (const [sx, sy, deg] of [
        [1, -1, 45],
        [-1, -1, 135],
        [-1, 1, 225],
        [1, 1, 315],
      ] as const) {
        add(sx * (reach * 0.7 + 1 + widthMm / 2), sy * (reach * 0.7 + heightMm / 2), 0.5 + prefer(deg));
      }
      return places;
    },
  };
}

/** Half extent of a turned box along the page's x (0°) or y (90°). */
function boxReach(b: TurnedBox, deg: 0 | 90): number {
  const a = ((b.turnDeg - deg) * Math.PI) / 180;
  return (Math.abs(Math.cos(a)) * b.widthMm + Math.abs(Math.sin(a)) * b.heightMm) / 2;
}
