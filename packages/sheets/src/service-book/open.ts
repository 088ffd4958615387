import type { LineResult } from "@pinwright/engine";
import { convexHull, rotateXyz } from "@pinwright/kernel";
import { at, group, LINE, polyline, stroke, TEXT } from "../compose/draw.ts";
import { type Block, gap, stacked } from "../compose/flow.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label } from "../compose/say.ts";
import { figure } from "../compose/tag.ts";
import { hazardBlocks, listed, note, prose, sectionHead } from "./blocks.ts";
import type { BookContext } from "./context.ts";
import { movedPanels } from "./hazards.ts";

const GUTTER_MM = 6;
/** Highest picture of a pose. */
const MOST_MM = 62;

/** How the machine is opened and closed: what comes before, glass, playfield, backbox. */
export function openBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words, list, hazards, line } = context;
  const has = new Set(hazards.map(({ id }) => id));
  const panels = [...line.machine.panels.values()];
  return [
    ...hazardBlocks(context, ["mains", "stored", "volts"], "open", widthMm),
    sectionHead(
      words((w) => w.open.before),
      "open:before",
      widthMm,
    ),
    ...listed(
      list((w) => w.open.beforeSteps),
      widthMm,
      true,
    ),
    ...poseBlocks(context, widthMm),
    ...(has.has("glass")
      ? [
          sectionHead(
            words((w) => w.open.glass),
            "open:glass",
            widthMm,
            60,
          ),
          ...hazardBlocks(context, ["glass"], "open-glass", widthMm),
          ...listed(
            list((w) => w.open.glassSteps),
            widthMm,
            true,
          ),
        ]
      : []),
    ...(has.has("raised")
      ? [
          sectionHead(
            words((w) => w.open.field),
            "open:field",
            widthMm,
            60,
          ),
          ...hazardBlocks(
            context,
            ["raised", "moving"],
            "open-field",
            widthMm,
            poseCautions(context, "playfield"),
          ),
          ...listed(
            list((w) => w.open.fieldSteps),
            widthMm,
            true,
          ),
          prose(
            words((w) => w.open.fieldDown),
            widthMm,
          ),
        ]
      : []),
    ...(panels.some((panel) => panel.purpose === "backbox")
      ? [
          sectionHead(
            words((w) => w.open.back),
            "open:backbox",
            widthMm,
            60,
          ),
          ...hazardBlocks(
            context,
            ["mains", "folded"],
            "open-backbox",
            widthMm,
            poseCautions(context, "backbox"),
          ),
          ...listed(
            list((w) => w.open.backSteps),
            widthMm,
            true,
          ),
        ]
      : []),
    prose(
      words((w) => w.open.close),
      widthMm,
    ),
  ];
}

/** The designer's own cautions of poses in which a panel of a purpose lies otherwise than in play. */
function poseCautions({ line, language, words }: BookContext, purpose: string): readonly string[] {
  return line.machine.book.tables.poses.flatMap((pose) => {
    const moved = movedPanels(line, pose.id).map((id) => line.machine.panels.get(id)?.purpose);
    const caution = label(language, { en: pose.caution, zh: pose.caution_zh }, "");
    if (caution === "" || !moved.some((own) => own === purpose)) return [];
    return [
      words((w) =>
        w.open.poseCaution(label(language, { en: pose.label, zh: pose.label_zh }, pose.id), caution),
      ),
    ];
  });
}

/** The panels of a machine in a pose, seen from the side, as outlines in millimetres: y to the right, z up. */
function sideOutlines(
  line: LineResult,
  poseId: string,
): readonly { readonly panelId: string; readonly ring: readonly { yMm: number; zMm: number }[] }[] {
  return line.machine.book.tables.pose_places.flatMap((place) => {
    const panel = line.machine.panels.get(place.panel);
    if (place.pose !== poseId || panel === undefined) return [];
    const corners = [0, panel.width_mm].flatMap((xMm) =>
      [0, panel.height_mm].flatMap((yMm) =>
        [0, -panel.thickness_mm].map((zMm) => {
          const p = rotateXyz({ xMm, yMm, zMm }, place.rx_deg, place.ry_deg, place.rz_deg);
          return { xMm: p.yMm + place.y_mm, yMm: p.zMm + place.z_mm };
        }),
      ),
    );
    const hull = convexHull(corners).map((p) => ({ yMm: p.xMm, zMm: p.yMm }));
    return [{ panelId: place.panel, ring: hull }];
  });
}

/** The poses of the machine side by side, at one scale. */
function poseBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { line, language, words } = context;
  const { poses } = line.machine.book.tables;
  const drawn = poses.flatMap((pose) => {
    const outlines = sideOutlines(line, pose.id);
    return outlines.length === 0 ? [] : [{ pose, outlines }];
  });
  const all = drawn.flatMap(({ outlines }) => outlines.flatMap(({ ring }) => ring));
  if (drawn.length < 2 || all.length === 0) return [];
  const least = { y: Math.min(...all.map((p) => p.yMm)), z: Math.min(...all.map((p) => p.zMm)) };
  const spanY = Math.max(...all.map((p) => p.yMm)) - least.y;
  const top = Math.max(...all.map((p) => p.zMm));
  const columns = Math.min(3, drawn.length);
  const columnMm = (widthMm - (columns - 1) * GUTTER_MM) / columns;
  const scale = Math.min(columnMm / Math.max(spanY, 1), MOST_MM / Math.max(top - least.z, 1));
  const heightMm = (top - least.z) * scale;
  const toPage = (p: { yMm: number; zMm: number }): PagePoint =>
    at((p.yMm - least.y) * scale, (top - p.zMm) * scale);
  const column = ({ pose, outlines }: (typeof drawn)[number]): Block => {
    const name = label(language, { en: pose.label, zh: pose.label_zh }, pose.id);
    const marks = outlines.map(({ panelId, ring }): Mark => {
      const purpose = line.machine.panels.get(panelId)?.purpose;
      const dark = purpose === "playfield" || purpose === "glass";
      return {
        kind: "polygon",
        points: ring.map(toPage),
        stroke: dark ? stroke("ink", LINE.strong) : stroke("faint", LINE.thin),
        fill: null,
        layer: "BORDER",
      };
    });
    const floor = polyline([at(0, heightMm + 2), at(columnMm, heightMm + 2)], stroke("faint", LINE.thin));
    const title = pose.usual === "yes" ? `${name} (${words((w) => w.open.usual)})` : name;
    return stacked(
      { heightMm: heightMm + 3.5, marks: [figure(title, [...marks, floor])] },
      paragraph(title, columnMm, TEXT.normal),
    );
  };
  const blocks = drawn.map(column);
  const rows = Array.from({ length: Math.ceil(blocks.length / columns) }, (_, n): Block => {
    const own = blocks.slice(n * columns, (n + 1) * columns);
    return {
      heightMm: Math.max(...own.map((b) => b.heightMm)) + 3,
      marks: own.map((b, i) => group(b.marks, i * (columnMm + GUTTER_MM), 0)),
    };
  });
  return [
    sectionHead(
      words((w) => w.open.poses),
      "open:poses",
      widthMm,
      70,
    ),
    {
      ...note(
        words((w) => w.open.posesHint),
        widthMm,
      ),
      keepMm: 60,
    },
    ...rows,
    gap(1),
  ];
}
