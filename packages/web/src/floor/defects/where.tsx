import { useState } from "react";
import { BoardDrawing } from "../../app/boards/board-drawing.tsx";
import { useOne, useView } from "../../app/book/desk.tsx";
import { HousingView } from "../../app/wiring/housing-view.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { useBench } from "../tasks/bench-context.tsx";
import { PanelTap } from "./panel-tap.tsx";

/** Where something is, as a fact has it. */
export interface Spot {
  readonly panel?: string;
  readonly item?: string;
  readonly point?: string;
  readonly xMm?: number;
  readonly yMm?: number;
}

interface Tapping {
  readonly spot: Spot;
  readonly tap: (spot: Spot) => void;
}

/** The drawing of what is at the bench, to be tapped. */
export function Where(props: Tapping & { readonly panel: string | null; readonly side: "top" | "under" }) {
  const { defect } = useWords().floor;
  const { what } = useBench();
  switch (what) {
    case "board":
      return <OnBoard {...props} />;
    case "harness":
      return <OnHarness {...props} />;
    case "machine":
      return <OnPanel {...props} />;
    case "mechanism":
      return <p>{defect.whereNone}</p>;
  }
}

function OnBoard({ spot, tap }: Tapping) {
  const { floor } = useWords();
  const { type, name } = useBench();
  const face = useOne("boardPlacements", { typeId: type });
  if (face === undefined) return <p className="dim">{floor.loading}</p>;
  if (face.parts.length === 0) return <p>{floor.defect.whereNone}</p>;
  return (
    <>
      <BoardDrawing
        face={face}
        says={name}
        stateOf={() => "before"}
        picked={spot.item ?? null}
        pick={(item) => tap(item === null ? {} : { item })}
      />
      <div className="floor-refs">
        {face.parts.map(({ reference }) => (
          <button
            key={reference}
            type="button"
            aria-pressed={reference === spot.item}
            onClick={() => tap({ item: reference })}
          >
            {reference}
          </button>
        ))}
      </div>
    </>
  );
}

function OnHarness({ spot, tap }: Tapping) {
  const { type } = useBench();
  const housings = useView("housings", { of: "harness", id: type });
  const [open, setOpen] = useState<string | null>(null);
  const housing = housings?.get(open ?? "");
  return (
    <>
      <div className="floor-refs">
        {[...(housings?.keys() ?? [])].map((id) => (
          <button key={id} type="button" aria-pressed={id === open} onClick={() => setOpen(id)}>
            {id}
          </button>
        ))}
      </div>
      {housing !== undefined && (
        <HousingView
          housing={housing}
          lit={{ pointId: spot.point ?? null, wireId: null }}
          onPoint={({ pointId }) => tap({ point: pointId })}
          onHover={() => undefined}
        />
      )}
    </>
  );
}

function OnPanel({
  spot,
  tap,
  panel: first,
  side: firstSide,
}: Tapping & { readonly panel: string | null; readonly side: "top" | "under" }) {
  const { defect } = useWords().floor;
  const pick = usePick();
  const panels = useView("layoutPanels", null);
  const [panelId, setPanelId] = useState(first);
  const [side, setSide] = useState(firstSide);
  const panel = panels?.get(panelId ?? "");
  return (
    <>
      {panel === undefined ? (
        <div className="floor-refs">
          {[...(panels?.values() ?? [])].map(({ id, label, labelZh }) => (
            <button key={id} type="button" onClick={() => setPanelId(id)}>
              {pick(label, labelZh) || id}
            </button>
          ))}
        </div>
      ) : (
        <>
          <div className="floor-refs">
            <button type="button" onClick={() => setPanelId(null)}>
              {pick(panel.label, panel.labelZh) || panel.id} …
            </button>
            {(["top", "under"] as const).map((one) => (
              <button key={one} type="button" aria-pressed={one === side} onClick={() => setSide(one)}>
                {defect[one]}
              </button>
            ))}
          </div>
          <PanelTap panel={panel} side={side} spot={spot} tap={tap} />
        </>
      )}
    </>
  );
}
