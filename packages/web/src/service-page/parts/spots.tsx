import { useFaults } from "../host.ts";
import type { Spot } from "../names.ts";
import { boxOfOutline, PanelDrawing } from "./panel-drawing.tsx";

/** Cell of a connector's picture, px. */
const CELL = 26;

/** A plug with a cavity marked, seen from where the wires enter. */
function PlugPicture({ landing, pins }: { readonly landing: number; readonly pins: readonly number[] }) {
  const { file, words, names } = useFaults();
  const one = file.landings[landing];
  if (one === undefined || one.grid === null || pins.length === 0) return null;
  const [columns, rows] = one.grid;
  return (
    <figure className="ff-plug">
      <svg
        viewBox={`-3 -3 ${columns * CELL + 6} ${rows * CELL + 6}`}
        width={columns * CELL + 6}
        role="img"
        aria-label={pins.map((pin) => words.pictureOf(names.landing(landing), pin)).join("; ")}
      >
        <rect
          className="ff-housing"
          x={-2}
          y={-2}
          width={columns * CELL + 4}
          height={rows * CELL + 4}
          rx={3}
        />
        {one.cells.map(([column, row], n) => {
          const pin = n + 1;
          const [x, y] = [column * CELL, row * CELL];
          const isMarked = pins.includes(pin);
          return (
            <g key={pin} data-marked={isMarked} className="ff-cavity">
              <rect x={x + 2} y={y + 2} width={CELL - 4} height={CELL - 4} />
              {isMarked && <circle cx={x + CELL / 2} cy={y + CELL / 2} r={CELL / 2 - 1} />}
              <text x={x + CELL / 2} y={y + CELL / 2 + 4} textAnchor="middle">
                {one.keys.includes(pin) ? "×" : pin}
              </text>
            </g>
          );
        })}
      </svg>
      <figcaption>
        {names.landing(landing)}
        {one.label === "" ? "" : ` (${one.label})`}. {words.picture}
      </figcaption>
    </figure>
  );
}

/** Where spots are: every plug once, and a map of every panel once. */
export function SpotPictures({ spots }: { readonly spots: readonly Spot[] }) {
  const { file, names, words } = useFaults();
  const landings = [...new Set(spots.flatMap(({ landing, pin }) => (pin === null ? [] : [landing])))];
  const items = [...new Set(spots.flatMap(({ item }) => (item < 0 ? [] : [item])))];
  const panels = [...new Set(items.map((item) => file.items[item]?.panel ?? -1))].filter(
    (panel) => panel >= 0,
  );
  return (
    <div className="ff-pictures">
      {landings.map((landing) => (
        <PlugPicture
          key={landing}
          landing={landing}
          pins={spots.flatMap((spot) => (spot.landing === landing && spot.pin !== null ? [spot.pin] : []))}
        />
      ))}
      {panels.map((panel) => {
        const here = items.filter((item) => file.items[item]?.panel === panel);
        const box = boxOfOutline(file.panels[panel]?.outline ?? []);
        const r = 0.05 * Math.max(box.width, box.height);
        const text = here
          .map((item) => `${names.item(item)} (${words.place.side[file.items[item]?.side ?? "top"]})`)
          .join(", ");
        return (
          <figure key={panel} className="ff-where">
            <PanelDrawing
              panel={panel}
              label={`${words.mapOf(names.pick(file.panels[panel]?.labels))}: ${text}`}
            >
              {here.map((item) => {
                const [x, y] = middleOf(file.items[item]?.outline ?? [], file.items[item]?.at ?? [0, 0]);
                return <circle key={item} className="ff-mark" cx={x} cy={-y} r={r} />;
              })}
            </PanelDrawing>
            <figcaption>
              {names.pick(file.panels[panel]?.labels)}: {text}
            </figcaption>
          </figure>
        );
      })}
    </div>
  );
}

/** Middle of an outline's box; without one, the place itself. */
function middleOf(outline: readonly number[], at: readonly [number, number]): readonly [number, number] {
  if (outline.length < 4) return at;
  const { x, y, width, height } = boxOfOutline(outline);
  return [x + width / 2, -(y + height / 2)];
}
