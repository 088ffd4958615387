import { useView } from "../../app/book/desk.tsx";
import { useWords } from "../../app/words.tsx";
import { useBench } from "../tasks/bench-context.tsx";
import { useHousingName } from "./places.ts";

/** Housings as they look from the wire-entry side, with the cavities marked that somebody has to look at. */
export function HousingMarks({ pointIds }: { readonly pointIds: ReadonlySet<string> }) {
  const { ways } = useWords().floorMeasure;
  const nameOf = useHousingName();
  const { type } = useBench();
  const housings = useView("housings", { of: "harness", id: type });
  const marked = [...(housings?.values() ?? [])].filter(
    ({ isHousing, cavities }) => isHousing && cavities.some(({ pointId }) => pointIds.has(pointId)),
  );
  return marked.map((housing) => (
    <figure key={housing.landingId} className="floor-marks">
      <figcaption>{ways.housing(nameOf(housing))}</figcaption>
      <div style={{ gridTemplateColumns: `repeat(${housing.columns}, minmax(36px, 56px))` }}>
        {housing.cavities.map(({ pointId, name, column, row, wires }) => (
          <span
            key={pointId}
            data-marked={pointIds.has(pointId) ? "" : undefined}
            data-empty={wires.length === 0 ? "" : undefined}
            style={{ gridColumn: column + 1, gridRow: row + 1 }}
          >
            {name}
          </span>
        ))}
      </div>
    </figure>
  ));
}
