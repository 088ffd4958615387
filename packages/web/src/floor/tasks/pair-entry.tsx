import { useState } from "react";
import { useWords } from "../../app/words.tsx";
import type { ViewEntry } from "../../worker/protocol.ts";
import { usePlaceNames, usePlaceText } from "../continuity/places.ts";
import type { OddPair } from "./measured.ts";

type OnTester = ViewEntry<"floorBench">;

/** Pairs that did not read as they should, tapped: which kind, housing and cavity, twice. */
export function PairEntry({
  bench: { bench },
  pairs,
  setPairs,
}: {
  readonly bench: OnTester;
  readonly pairs: readonly OddPair[];
  readonly setPairs: (pairs: readonly OddPair[]) => void;
}) {
  const { floor, floorMeasure } = useWords();
  const own = floor.continuity;
  const nameOf = usePlaceNames(bench);
  const textOf = usePlaceText(bench);
  const [kind, setKind] = useState<OddPair["kind"] | null>(null);
  const [first, setFirst] = useState<string | null>(null);
  const [housing, setHousing] = useState<string | null>(null);
  /** The first place of each housing stands for it. */
  const housings = [
    ...new Map([...bench.places].reverse().map((place) => [place.landingId, place])).values(),
  ];
  const open = (landingId: string): void => {
    const [only, ...others] = bench.places.filter((place) => place.landingId === landingId);
    // A terminal stands alone: it is the place itself.
    if (only !== undefined && others.length === 0) tap(only.id);
    else setHousing(landingId);
  };
  const tap = (id: string): void => {
    setHousing(null);
    if (first === null) setFirst(id);
    else if (kind !== null && id !== first) {
      setPairs([...pairs, { kind, a: first, b: id }]);
      setFirst(null);
      setKind(null);
    }
  };
  const list = pairs.length > 0 && (
    <section>
      <h2>{own.found}</h2>
      <ul className="floor-pairs">
        {pairs.map((pair) => (
          <li key={`${pair.kind} ${pair.a} ${pair.b}`}>
            <b>{own[pair.kind]}</b> {textOf(pair.a)} – {textOf(pair.b)}
            <button
              type="button"
              className="floor-plain"
              onClick={() => setPairs(pairs.filter((one) => one !== pair))}
            >
              {own.remove}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
  if (kind === null)
    return (
      <>
        {list}
        {pairs.length > 0 && <h2>{own.add}</h2>}
        <div className="floor-tiles">
          {(["open", "short"] as const).map((one) => (
            <button key={one} type="button" onClick={() => setKind(one)}>
              {own[one]}
              <small>{own[`${one}Hint`]}</small>
            </button>
          ))}
        </div>
      </>
    );
  return (
    <>
      <h2>
        {first === null ? own.first : own.second}{" "}
        <small className="dim">{first === null ? own[kind] : textOf(first)}</small>
      </h2>
      <div className="floor-tiles">
        {housing === null
          ? housings.reverse().map(({ id, landingId }) => (
              <button
                key={landingId}
                type="button"
                data-housing={landingId}
                disabled={landingId === first}
                onClick={() => open(landingId)}
              >
                {nameOf(id).housing}
                <small>{landingId}</small>
              </button>
            ))
          : bench.places
              .filter(({ landingId }) => landingId === housing)
              .map(({ id }) => (
                <button
                  key={id}
                  type="button"
                  data-place={id}
                  disabled={id === first}
                  onClick={() => tap(id)}
                >
                  {nameOf(id).cavity}
                  <small>
                    {nameOf(id).wires === ""
                      ? floorMeasure.probes.empty
                      : floorMeasure.probes.wire(nameOf(id).wires)}
                  </small>
                </button>
              ))}
      </div>
    </>
  );
}
