import { boxOf } from "@pinwright/kernel";
import { useView } from "../../app/book/desk.tsx";
import { cornersAt } from "../../app/layout/scene.ts";
import { ItemShape, pathOf } from "../../app/layout/shapes.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import type { ViewEntry } from "../../worker/protocol.ts";

type Stretch = ViewEntry<"floorTestWalk">;

/** The panel from above, as whoever tests it stands before it, with the stretch numbered on it. */
export function WalkMap({
  stretch,
  badIds,
}: {
  readonly stretch: Stretch;
  readonly badIds: ReadonlySet<string>;
}) {
  const { floorMeasure } = useWords();
  const pick = usePick();
  const panel = useView("layoutPanels", null)?.get(stretch.panelId);
  const items = useView("layoutItems", { panelId: stretch.panelId });
  const box = panel === undefined ? null : boxOf(panel.rings.flatMap((ring) => cornersAt(ring, 0, 0)));
  if (panel === undefined || items === null || box === null) return null;
  const [width, height] = [box.maxXMm - box.minXMm, box.maxYMm - box.minYMm];
  const radius = Math.max(width, height) / 34;
  const line = stretch.items.map(({ xMm, yMm }) => `${xMm} ${-yMm}`).join("L");
  return (
    <div className="floor-panel floor-walk-map">
      <svg
        viewBox={`${box.minXMm - radius} ${-box.maxYMm - radius} ${width + 2 * radius} ${height + 2 * radius}`}
        role="img"
        aria-label={floorMeasure.walk.drawing(pick(panel.label, panel.labelZh) || panel.id)}
      >
        <g transform="scale(1 -1)">
          <path className="panel" d={pathOf(panel.rings)} />
          {[...items.values()]
            .filter(({ kind }) => kind !== "fastener")
            .map((item) => (
              <ItemShape key={item.id} item={item} />
            ))}
        </g>
        <path className="floor-walk-line" d={`M${line}`} strokeWidth={radius / 5} />
        {stretch.items.map(({ id, xMm, yMm }, i) => (
          <g key={id} className="floor-walk-mark" data-bad={badIds.has(id) ? "" : undefined}>
            <circle cx={xMm} cy={-yMm} r={radius} strokeWidth={radius / 6} />
            <text x={xMm} y={-yMm} fontSize={radius * 1.4} textAnchor="middle" dominantBaseline="central">
              {i + 1}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}
