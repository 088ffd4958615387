import { boxOf, type PointMm } from "@pinwright/kernel";
import { useRef } from "react";
import { useView } from "../../app/book/desk.tsx";
import { cornersAt } from "../../app/layout/scene.ts";
import { ItemShape, pathOf } from "../../app/layout/shapes.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import type { ViewEntry } from "../../worker/protocol.ts";
import type { Spot } from "./where.tsx";

type Panel = ViewEntry<"layoutPanels">;
type Item = ViewEntry<"layoutItems">;

/** A panel side as the builder sees it; a tap is a place in its own millimetres, and the item that lies there. */
export function PanelTap({
  panel,
  side,
  spot,
  tap,
}: {
  readonly panel: Panel;
  readonly side: "top" | "under";
  readonly spot: Spot;
  readonly tap: (spot: Spot) => void;
}) {
  const { floor } = useWords();
  const pick = usePick();
  const items = useView("layoutItems", { panelId: panel.id });
  const drawing = useRef<SVGGElement>(null);
  const box = boxOf(panel.rings.flatMap((ring) => cornersAt(ring, 0, 0)));
  if (items === null || box === null) return <p className="dim">{floor.loading}</p>;
  const own = [...items.values()].filter((item) => item.side === side && item.kind !== "fastener");
  const mirrored = side === "under";
  const [width, height] = [box.maxXMm - box.minXMm, box.maxYMm - box.minYMm];
  const left = mirrored ? -box.maxXMm : box.minXMm;
  const tapped = (xPx: number, yPx: number): void => {
    const matrix = drawing.current?.getScreenCTM()?.inverse();
    if (matrix === undefined) return;
    const { x, y } = new DOMPoint(xPx, yPx).matrixTransform(matrix);
    const at = { xMm: Math.round(x), yMm: Math.round(y) };
    const item = itemAt(own, at);
    tap({ panel: panel.id, ...at, ...(item === null ? {} : { item: item.id }) });
  };
  const name = pick(panel.label, panel.labelZh) || panel.id;
  return (
    <div className="floor-panel">
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the list below does the same for keyboards */}
      <svg
        viewBox={`${left} ${-box.maxYMm} ${width} ${height}`}
        role="img"
        aria-label={`${name}, ${floor.defect[side]}`}
        onClick={(event) => tapped(event.clientX, event.clientY)}
      >
        <g ref={drawing} transform={`scale(${mirrored ? -1 : 1} -1)`}>
          <path className="panel" d={pathOf(panel.rings)} />
          {own.map((item) => (
            <ItemShape key={item.id} item={item} />
          ))}
          {spot.panel === panel.id && spot.xMm !== undefined && spot.yMm !== undefined && (
            <circle className="floor-spot" cx={spot.xMm} cy={spot.yMm} r={width / 40} />
          )}
        </g>
      </svg>
      <select
        aria-label={floor.defect.where}
        value={spot.panel === panel.id ? (spot.item ?? "") : ""}
        onChange={(event) => {
          const item = items.get(event.currentTarget.value);
          tap(item === undefined ? {} : { panel: panel.id, xMm: item.xMm, yMm: item.yMm, item: item.id });
        }}
      >
        <option value="">–</option>
        {own.map(({ id, label, labelZh }) => (
          <option key={id} value={id}>
            {pick(label, labelZh) || id}
          </option>
        ))}
      </select>
    </div>
  );
}

/** The smallest item whose outline holds a place; null where none lies. */
function itemAt(items: readonly Item[], at: PointMm): Item | null {
  const around = items.flatMap((item) => {
    const box = boxOf(cornersAt(item.ring, item.xMm, item.yMm));
    if (box === null) return [];
    const isIn = at.xMm >= box.minXMm && at.xMm <= box.maxXMm && at.yMm >= box.minYMm && at.yMm <= box.maxYMm;
    return isIn ? [{ item, area: (box.maxXMm - box.minXMm) * (box.maxYMm - box.minYMm) }] : [];
  });
  return around.sort((a, b) => a.area - b.area)[0]?.item ?? null;
}
