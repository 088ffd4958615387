import type { Thing } from "@pinwright/engine";
import { boxOf } from "@pinwright/kernel";
import { useView } from "../../book/desk.tsx";
import { cornersAt } from "../../layout/scene.ts";
import { ItemShape, pathOf } from "../../layout/shapes.tsx";
import { useWords } from "../../words.tsx";

/** A small drawing of the panel side, with the thing ringed. */
export function ThingMap({ thing: { place, id }, name }: { readonly thing: Thing; readonly name: string }) {
  return place === null ? null : <Drawn place={place} id={id} name={name} />;
}

function Drawn({
  place,
  id,
  name,
}: {
  readonly place: NonNullable<Thing["place"]>;
  readonly id: string;
  readonly name: string;
}) {
  const own = useWords().serviceThing;
  const panel = useView("layoutPanels", null)?.get(place.panelId);
  const items = useView("layoutItems", { panelId: place.panelId });
  const box = panel === undefined ? null : boxOf(panel.rings.flatMap((ring) => cornersAt(ring, 0, 0)));
  if (panel === undefined || box === null || items === null) return null;
  // The underside is seen from below: mirrored, as on every drawing of it.
  const drawn = items.get(id);
  const middle = drawn === undefined ? null : boxOf(cornersAt(drawn.ring, drawn.xMm, drawn.yMm));
  const [xMm, yMm] =
    middle === null
      ? [place.xMm, place.yMm]
      : [(middle.minXMm + middle.maxXMm) / 2, (middle.minYMm + middle.maxYMm) / 2];
  const isMirrored = place.side === "under";
  const [width, height] = [box.maxXMm - box.minXMm, box.maxYMm - box.minYMm];
  const left = isMirrored ? -box.maxXMm : box.minXMm;
  const size = Math.max(width, height);
  return (
    <svg
      className="thing-map"
      viewBox={`${left - size / 50} ${-box.maxYMm - size / 50} ${width + size / 25} ${height + size / 25}`}
      role="img"
      aria-label={own.map(name)}
    >
      <g transform={`scale(${isMirrored ? -1 : 1} -1)`}>
        <path className="panel" d={pathOf(panel.rings)} />
        {[...items.values()]
          .filter((item) => item.side === place.side && (item.kind !== "fastener" || item.id === id))
          .map((item) => (
            <ItemShape key={item.id} item={item} />
          ))}
      </g>
      <circle className="thing-spot" cx={isMirrored ? -xMm : xMm} cy={-yMm} r={size / 28} />
    </svg>
  );
}
