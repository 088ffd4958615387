import type { FaultSession, Seen } from "@pinwright/engine";
import { type MouseEvent, useMemo, useState } from "react";
import { useFaults } from "../host.ts";
import type { Group, NamedFunction } from "../names.ts";
import { FunctionRow } from "./function-row.tsx";
import { boxOfOutline, PanelDrawing } from "./panel-drawing.tsx";

/** A finger comes as near as this to what it means, as a share of the panel's longer side. */
const NEAR = 0.06;
/** Size of a sign, as a share of the panel's longer side. */
const SIGN = 0.011;

/** Signs by kind, so that nothing hangs on colour. */
function sign(group: Group, x: number, y: number, r: number): string {
  switch (group) {
    case "lamp":
      return `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
    case "switch":
      return `M${x - r} ${y - r}h${2 * r}v${2 * r}h${-2 * r}Z`;
    case "coil":
      return `M${x} ${y - 1.3 * r}L${x + 1.3 * r} ${y}L${x} ${y + 1.3 * r}L${x - 1.3 * r} ${y}Z`;
    default:
      return `M${x} ${y - 1.2 * r}L${x + 1.2 * r} ${y + r}H${x - 1.2 * r}Z`;
  }
}

const cross = (x: number, y: number, r: number): string =>
  `M${x - 1.6 * r} ${y - 1.6 * r}L${x + 1.6 * r} ${y + 1.6 * r}M${x - 1.6 * r} ${y + 1.6 * r}L${x + 1.6 * r} ${y - 1.6 * r}`;

/** Panels with what is on them; a tap chooses what is nearest. */
export function PanelMaps({
  session,
  say,
}: {
  readonly session: FaultSession;
  readonly say: (seen: Readonly<Record<string, Seen | null>>) => void;
}) {
  const { file, words, names } = useFaults();
  const panels = useMemo(() => {
    const counts = new Map<number, number>();
    for (const { item } of file.functions) {
      const panel = file.items[item]?.panel ?? -1;
      counts.set(panel, (counts.get(panel) ?? 0) + 1);
    }
    return [...counts].sort((p, q) => q[1] - p[1]).map(([panel]) => panel);
  }, [file]);
  const [panel, setPanel] = useState(panels[0] ?? -1);
  const [chosen, setChosen] = useState<string | null>(null);
  const here = names.functions.filter(({ f }) => file.items[file.functions[f]?.item ?? -1]?.panel === panel);
  const box = boxOfOutline(file.panels[panel]?.outline ?? []);
  const long = Math.max(box.width, box.height);
  const at = ({ f }: NamedFunction): readonly [number, number] => {
    const place = file.items[file.functions[f]?.item ?? -1]?.at ?? [0, 0];
    return [place[0], -place[1]];
  };
  const tap = (event: MouseEvent<SVGSVGElement>): void => {
    const matrix = event.currentTarget.getScreenCTM();
    if (matrix === null) return;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    const far = (one: NamedFunction): number => Math.hypot(at(one)[0] - x, at(one)[1] - y);
    const near = here.filter((one) => far(one) < NEAR * long).toSorted((p, q) => far(p) - far(q))[0];
    setChosen(near?.id ?? null);
  };
  const own = chosen === null ? undefined : names.functionOfId(chosen);
  return (
    <div className="ff-map">
      <p className="ff-dim">
        {words.mapHelp} {words.mapShapes}
      </p>
      {panels.length > 1 && (
        <select
          aria-label={words.map}
          value={panel}
          onChange={(event) => {
            setPanel(Number(event.target.value));
            setChosen(null);
          }}
        >
          {panels.map((one) => (
            <option key={one} value={one}>
              {names.pick(file.panels[one]?.labels)}
            </option>
          ))}
        </select>
      )}
      <PanelDrawing panel={panel} label={words.mapOf(names.pick(file.panels[panel]?.labels))} onClick={tap}>
        {here.map((one) => {
          const [x, y] = at(one);
          const seen = session.seen[one.id] ?? "none";
          return (
            <g key={one.id} className="ff-sign" data-seen={seen} data-chosen={one.id === chosen}>
              <path d={sign(one.group, x, y, SIGN * long)} />
              {seen !== "none" && seen !== "works" && (
                <path d={cross(x, y, SIGN * long)} className="ff-cross" />
              )}
            </g>
          );
        })}
      </PanelDrawing>
      {own !== undefined && (
        <ul className="ff-chosen">
          <FunctionRow
            one={{ ...own, name: names.functionName(own.f) }}
            seen={session.seen[own.id] ?? null}
            say={say}
          />
        </ul>
      )}
    </div>
  );
}
