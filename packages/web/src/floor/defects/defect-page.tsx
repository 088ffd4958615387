import { useState } from "react";
import { useSearchParams } from "wouter";
import { useWords } from "../../app/words.tsx";
import { useDevice } from "../device.tsx";
import { madeUp, sha256 } from "../outbox/outbox.ts";
import { atStation, useBench } from "../tasks/bench-context.tsx";
import { DEFECTS, type DefectWhat } from "./kinds.ts";
import { PhotoTaken, TakePhoto } from "./photo.tsx";
import { type Spot, Where } from "./where.tsx";

/** What is wrong, where, and a photo: tiles and taps, no words to type. */
export function DefectPage() {
  const { floor, serviceProblems } = useWords();
  const own = floor.defect;
  const problemWords = serviceProblems.floor;
  const bench = useBench();
  const [search] = useSearchParams();
  const kinds: readonly DefectWhat[] = DEFECTS[bench.what];
  const [unit, setUnit] = useState(
    search.get("unit") ?? (bench.unitIds.length === 1 ? bench.unitIds[0] : undefined),
  );
  const [what, setWhat] = useState(kinds.find((one) => one === search.get("what")) ?? null);
  const [spot, setSpot] = useState<Spot | null>(null);
  const [photo, setPhoto] = useState<Blob | null>(null);
  const { store } = useDevice();
  const record = async (): Promise<void> => {
    if (unit === undefined || what === null) return;
    const picture = photo === null ? null : await sha256(photo);
    if (photo !== null && picture !== null) await store.keepPicture(picture, photo);
    const kept = await bench.record([
      {
        kind: "defect",
        unit,
        defect: madeUp("d"),
        what,
        says: "",
        where: spot ?? {},
        ...atStation(bench),
        ...(picture === null ? {} : { picture }),
      },
    ]);
    if (kept) bench.show("/mend");
  };
  if (unit === undefined)
    return (
      <div className="floor-body">
        <h1>{floor.pick.title}</h1>
        <div className="floor-tiles">
          {bench.unitIds.map((id) => (
            <button key={id} type="button" onClick={() => setUnit(id)}>
              {id}
            </button>
          ))}
        </div>
        <Leave />
      </div>
    );
  if (what === null)
    return (
      <div className="floor-body">
        <h1>
          {own.title} <small className="dim">{unit}</small>
        </h1>
        <div className="floor-tiles">
          {kinds.map((kind) => (
            <button key={kind} type="button" onClick={() => setWhat(kind)}>
              {own.whats[kind]}
            </button>
          ))}
        </div>
        <button
          type="button"
          className="floor-plain"
          onClick={() => bench.show(`/problem${stepParam(search.get("step"))}`)}
        >
          {problemWords.wrong}
        </button>
        <Leave />
      </div>
    );
  return (
    <>
      <div className="floor-body">
        <h1>
          {own.whats[what]} <small className="dim">{own.where}</small>
        </h1>
        <p role="status" className="floor-spot-name">
          {spot === null ? own.noPlace : own.at(spot.item ?? spot.point ?? `${spot.xMm} / ${spot.yMm} mm`)}
        </p>
        <Where
          spot={spot ?? {}}
          tap={(next) => setSpot(Object.keys(next).length === 0 ? null : next)}
          panel={search.get("panel")}
          side={search.get("side") === "under" ? "under" : "top"}
        />
        {photo !== null && <PhotoTaken photo={photo} />}
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-plain" onClick={() => setWhat(null)}>
          {floor.back}
        </button>
        <TakePhoto taken={photo !== null} setPhoto={setPhoto} />
        <button type="button" className="floor-main" onClick={() => void record()}>
          {own.record}
        </button>
      </footer>
    </>
  );
}

const stepParam = (step: string | null): string => (step === null ? "" : `?step=${encodeURIComponent(step)}`);

function Leave() {
  const { floor } = useWords();
  const { show } = useBench();
  return (
    <button type="button" className="floor-plain" onClick={() => show("")}>
      {floor.back}
    </button>
  );
}
