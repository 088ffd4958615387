import { NativeSelect } from "@mantine/core";
import type { KeptDefect } from "@pinwright/contract";
import { boxOf } from "@pinwright/kernel";
import { useMemo, useState } from "react";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { BoardDrawing } from "../../boards/board-drawing.tsx";
import { useOne, useView } from "../../book/desk.tsx";
import { cornersAt } from "../../layout/scene.ts";
import { ItemShape, pathOf } from "../../layout/shapes.tsx";
import { usePick, useWords } from "../../words.tsx";
import { useNames } from "../names.tsx";

type Side = "top" | "under";

/** A drawing that defects were tapped on. */
interface Drawing {
  readonly key: string;
  readonly kind: "board" | "panel";
  readonly id: string;
  readonly defects: readonly KeptDefect[];
}

function drawingsOf(defects: readonly KeptDefect[]): readonly Drawing[] {
  const found = new Map<string, { kind: "board" | "panel"; id: string; defects: KeptDefect[] }>();
  for (const defect of defects) {
    const { panel, item } = defect.where;
    const id = defect.what === "board" && item !== undefined ? defect.type : panel;
    if (id === undefined) continue;
    const kind = defect.what === "board" ? "board" : "panel";
    const known = found.get(`${kind} ${id}`) ?? { kind, id, defects: [] };
    known.defects.push(defect);
    found.set(`${kind} ${id}`, known);
  }
  return [...found]
    .map(([key, drawing]) => ({ key, ...drawing }))
    .sort((a, b) => b.defects.length - a.defects.length);
}

/** Where defects sit: on the drawing of a kind of board, or of a panel. */
export function PlaceMap({ defects }: { readonly defects: readonly KeptDefect[] }) {
  const { map: own } = useWords().benchQuality;
  const pick = usePick();
  const names = useNames();
  const panels = useView("layoutPanels", null);
  const drawings = useMemo(() => drawingsOf(defects), [defects]);
  const [asked, setAsked] = useState("");
  const drawing = drawings.find(({ key }) => key === asked) ?? drawings[0];
  const nameOf = ({ kind, id }: Drawing): string => {
    if (kind === "board") return names.type("board", id);
    const panel = panels?.get(id);
    return panel === undefined ? id : pick(panel.label, panel.labelZh) || id;
  };
  return (
    <section aria-labelledby="defect-map">
      <h3 id="defect-map">{own.title}</h3>
      {drawing === undefined ? (
        <p>{own.none}</p>
      ) : (
        <>
          <p className="dim">{own.about}</p>
          <div className="quality-fields">
            <NativeSelect
              label={own.on}
              value={drawing.key}
              data={drawings.map((one) => ({
                value: one.key,
                label: own.picture(nameOf(one), one.defects.length),
              }))}
              onChange={(event) => setAsked(event.currentTarget.value)}
            />
          </div>
          {drawing.kind === "board" ? (
            <OnBoard drawing={drawing} says={own.picture(nameOf(drawing), drawing.defects.length)} />
          ) : (
            <OnPanel drawing={drawing} name={nameOf(drawing)} />
          )}
        </>
      )}
    </section>
  );
}

/** A kind of board with the parts dark that had defects, and how many each. */
function OnBoard({ drawing, says }: { readonly drawing: Drawing; readonly says: string }) {
  const { map: own, pareto } = useWords().benchQuality;
  const face = useOne("boardPlacements", { typeId: drawing.id });
  const [picked, setPicked] = useState<string | null>(null);
  const counts = new Map<string, number>();
  for (const { where } of drawing.defects)
    if (where.item !== undefined) counts.set(where.item, (counts.get(where.item) ?? 0) + 1);
  const rows = [...counts].sort(([, a], [, b]) => b - a);
  return (
    <div className="quality-beside">
      {face !== undefined && face.parts.length > 0 && (
        <BoardDrawing
          face={face}
          says={says}
          stateOf={(reference) => (counts.has(reference) ? "now" : "later")}
          picked={picked}
          pick={setPicked}
        />
      )}
      <table className="plain">
        <caption>{own.table}</caption>
        <thead>
          <tr>
            <th scope="col">{own.part}</th>
            <th scope="col" className="end">
              {pareto.count}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([reference, count]) => (
            <tr key={reference}>
              <th scope="row">
                <button
                  type="button"
                  className="link-button"
                  aria-pressed={reference === picked}
                  onClick={() => setPicked(reference === picked ? null : reference)}
                >
                  {reference}
                </button>
              </th>
              <td className="end">{count}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** A place on a panel side with the defects there. */
interface Spot {
  readonly key: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly count: number;
  readonly open: number;
}

type Item = ViewEntry<"layoutItems">;

/** Defects of a side: at their item, else where it was tapped. A tap beside everything is shown on the side seen first. */
function spotsOf(
  defects: readonly KeptDefect[],
  items: ReadonlyMap<string, Item>,
  side: Side,
): readonly Spot[] {
  const found = new Map<string, Spot>();
  for (const { where, mended } of defects) {
    const item = items.get(where.item ?? "");
    const isHere = item === undefined ? side === "top" : item.side === side;
    const { xMm, yMm } = item ?? where;
    if (!isHere || xMm === undefined || yMm === undefined) continue;
    const key = item?.id ?? `${xMm} ${yMm}`;
    const known = found.get(key) ?? { key, xMm, yMm, count: 0, open: 0 };
    found.set(key, {
      ...known,
      count: known.count + 1,
      open: known.open + (mended === null ? 1 : 0),
    });
  }
  return [...found.values()];
}

function OnPanel({ drawing, name }: { readonly drawing: Drawing; readonly name: string }) {
  const { map: own } = useWords().benchQuality;
  const panel = useView("layoutPanels", null)?.get(drawing.id);
  const items = useView("layoutItems", { panelId: drawing.id });
  if (panel === undefined || items === null) return null;
  return (
    <div className="defect-panels">
      {(["top", "under"] as const).map((side) => {
        const spots = spotsOf(drawing.defects, items, side);
        const count = spots.reduce((sum, spot) => sum + spot.count, 0);
        if (count === 0) return null;
        return (
          <figure key={side}>
            <PanelSpots
              panel={panel}
              items={[...items.values()].filter((item) => item.side === side && item.kind !== "fastener")}
              isMirrored={side === "under"}
              spots={spots}
              says={`${own.picture(name, count)}, ${own.sides[side]}`}
            />
            <figcaption>{own.sides[side]}</figcaption>
          </figure>
        );
      })}
    </div>
  );
}

function PanelSpots({
  panel,
  items,
  isMirrored,
  spots,
  says,
}: {
  readonly panel: ViewEntry<"layoutPanels">;
  readonly items: readonly Item[];
  readonly isMirrored: boolean;
  readonly spots: readonly Spot[];
  readonly says: string;
}) {
  const box = boxOf(panel.rings.flatMap((ring) => cornersAt(ring, 0, 0)));
  if (box === null) return null;
  const [width, height] = [box.maxXMm - box.minXMm, box.maxYMm - box.minYMm];
  const left = isMirrored ? -box.maxXMm : box.minXMm;
  const x = (mm: number): number => (isMirrored ? -mm : mm);
  const size = Math.max(width, height);
  return (
    <svg
      className="defect-panel"
      viewBox={`${left} ${-box.maxYMm} ${width} ${height}`}
      role="img"
      aria-label={says}
    >
      <g transform={`scale(${isMirrored ? -1 : 1} -1)`}>
        <path className="panel" d={pathOf(panel.rings)} />
        {items.map((item) => (
          <ItemShape key={item.id} item={item} />
        ))}
      </g>
      {spots.map(({ key, xMm, yMm, count, open }) => (
        <g key={key}>
          <title>{`${key}: ${count}`}</title>
          <circle
            className={open > 0 ? "defect-spot open" : "defect-spot"}
            cx={x(xMm)}
            cy={-yMm}
            r={(size / 80) * Math.sqrt(count)}
          />
          {count > 1 && (
            <text
              className="defect-count"
              x={x(xMm) + (size / 70) * Math.sqrt(count)}
              y={-yMm}
              fontSize={size / 30}
              dominantBaseline="central"
            >
              {count}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}
