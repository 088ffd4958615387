import type { DefectRecord } from "@pinwright/engine";
import { useState } from "react";
import { useSpeech } from "../../app/words.tsx";
import { useBench } from "../tasks/bench-context.tsx";
import { openDefects } from "../tasks/tasks.ts";
import { takeMinutes, useClock } from "../tasks/use-clock.ts";
import { DefectPhoto } from "./photo.tsx";

const CAUSES = ["work", "part", "drawing", "tool", "transport", "unknown"] as const;

interface OpenDefect extends DefectRecord {
  readonly unit: string;
}

/** Open defects of the units at the bench; each is mended with its cause. */
export function MendPage() {
  const { words } = useSpeech();
  const { floor } = words;
  const { unitIds, states, show } = useBench();
  const [chosen, setChosen] = useState<string | null>(null);
  const open = unitIds.flatMap((unit): readonly OpenDefect[] =>
    openDefects(states.get(unit)).map((defect) => ({ ...defect, unit })),
  );
  const defect = open.find((one) => one.defect === chosen) ?? null;
  if (defect !== null) return <Mend key={defect.defect} defect={defect} leave={() => setChosen(null)} />;
  return (
    <>
      <div className="floor-body">
        <h1>
          {floor.mend.title} <small className="dim">{floor.work.openDefects(open.length)}</small>
        </h1>
        {open.length === 0 && <p>{floor.mend.none}</p>}
        <div className="floor-tiles">
          {open.map((one) => (
            <button key={one.defect} type="button" onClick={() => setChosen(one.defect)}>
              <DefectName defect={one} />
            </button>
          ))}
        </div>
        <p className="dim">{floor.mend.retest}</p>
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-main" onClick={() => show("")}>
          {floor.back}
        </button>
      </footer>
    </>
  );
}

function DefectName({ defect: { what, where, says, unit } }: { readonly defect: OpenDefect }) {
  const own = useSpeech().words.floor.defect;
  const whats: Readonly<Record<string, string>> = own.whats;
  const at = where.item ?? where.point ?? where.panel;
  return (
    <>
      {whats[what] ?? what}
      <small>
        {[unit, ...(at === undefined ? [] : [own.at(at)]), says].filter((text) => text !== "").join(" · ")}
      </small>
    </>
  );
}

function Mend({ defect, leave }: { readonly defect: OpenDefect; readonly leave: () => void }) {
  const { floor } = useSpeech().words;
  const bench = useBench();
  const clock = `mend ${defect.defect}`;
  useClock(clock);
  const mended = async (cause: string): Promise<void> => {
    const kept = await bench.record([
      {
        kind: "mended",
        unit: defect.unit,
        defect: defect.defect,
        cause,
        says: "",
        minutes: takeMinutes(clock),
      },
    ]);
    if (kept) leave();
  };
  return (
    <div className="floor-body">
      <h1 className="floor-defect">
        <DefectName defect={defect} />
      </h1>
      {defect.picture !== "" && <DefectPhoto hash={defect.picture} />}
      <h2>
        {floor.mend.mended}: {floor.mend.cause}
      </h2>
      <div className="floor-tiles">
        {CAUSES.map((cause) => (
          <button key={cause} type="button" onClick={() => void mended(cause)}>
            {floor.mend.causes[cause]}
          </button>
        ))}
      </div>
      <button type="button" className="floor-plain" onClick={leave}>
        {floor.back}
      </button>
    </div>
  );
}
