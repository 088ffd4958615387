import { useState } from "react";
import { Link } from "wouter";
import { useView } from "../../app/book/desk.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { useBench } from "./bench-context.tsx";

/** Hands the units at the bench over to the next stage. */
export function HandPage({ left }: { readonly left: number }) {
  const { floor } = useWords();
  const own = floor.hand;
  const pick = usePick();
  const { unitIds, states, record, show } = useBench();
  const stages = useView("floorStages", null);
  const [handed, setHanded] = useState<string | null>(null);
  const now = states.get(unitIds[0] ?? "")?.stage ?? "";
  const nameOf = (id: string): string => {
    const stage = stages?.get(id);
    return stage === undefined ? id : pick(stage.label, stage.labelZh) || id;
  };
  const hand = async (stage: string): Promise<void> => {
    if (await record(unitIds.map((unit) => ({ kind: "handed", unit, stage })))) setHanded(stage);
  };
  if (handed !== null)
    return (
      <>
        <div className="floor-body floor-end">
          <h1>{own.handed(nameOf(handed))}</h1>
          <p>{unitIds.join(", ")}</p>
        </div>
        <footer className="floor-foot">
          <Link className="floor-main" href="/floor">
            {own.nextUnit}
          </Link>
        </footer>
      </>
    );
  return (
    <>
      <div className="floor-body">
        <h1>
          {own.title} {now !== "" && <small className="dim">{own.now(nameOf(now))}</small>}
        </h1>
        {left > 0 && <p className="amber-text">{own.open(left)}</p>}
        {stages?.size === 0 && <p>{own.noStages}</p>}
        <div className="floor-tiles">
          {[...(stages?.keys() ?? [])].map((id) => (
            <button key={id} type="button" aria-pressed={id === now} onClick={() => void hand(id)}>
              {nameOf(id)}
            </button>
          ))}
        </div>
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-plain" onClick={() => show("")}>
          {floor.back}
        </button>
      </footer>
    </>
  );
}
