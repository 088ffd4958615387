import type { Block, FactBody, KeptUnit } from "@pinwright/contract";
import { releaseBlocks, type UnitState } from "@pinwright/engine";
import { useRef, useState } from "react";
import { call } from "../../api/call.ts";
import { useDesk } from "../../app/book/desk.tsx";
import { useWords } from "../../app/words.tsx";
import { useDevice } from "../device.tsx";
import { madeUp } from "../outbox/outbox.ts";
import { knownUnits } from "../records/heard.ts";
import { useUnitList } from "../records/use-units.ts";
import { unitInCode } from "../shell/scan.ts";
import { useBench } from "../tasks/bench-context.tsx";
import { type Place, standingAt } from "../tasks/tasks.ts";
import { type FitWarning, fitWarnings, stops } from "./fit-check.ts";

/** Something that is asked before a unit goes in or comes out. */
export interface FitQuestion {
  /** What goes in; null: something only comes out. */
  readonly unit: KeptUnit | null;
  /** Null: it has to be said where. */
  readonly place: Place | null;
  /** Places to choose from, as long as it has to be said. */
  readonly places: readonly Place[];
  readonly warnings: readonly FitWarning[];
}

/** Putting units with numbers of their own into places of the machine at the bench. */
export interface Fit {
  readonly machine: string;
  readonly state: UnitState | undefined;
  readonly units: readonly KeptUnit[] | null;
  /** Why the last scan was fitted nowhere; blank: it was. */
  readonly says: string;
  /** Unit that was fitted last. */
  readonly last: string;
  readonly looking: boolean;
  readonly question: FitQuestion | null;
  readonly ask: (question: FitQuestion | null) => void;
  /** Fits after everything was looked at; what stands there comes out with a reason. */
  readonly answer: (
    place: Place,
    out: { readonly why: string; readonly isFaulty: boolean } | null,
  ) => Promise<void>;
  /** Fits a unit that was tapped or scanned, unless something has to be asked first. */
  readonly bring: (unit: KeptUnit, place: Place | null) => Promise<void>;
  readonly scanned: (text: string) => Promise<void>;
}

/** The server is waited for so long before what the device knows has to do. */
const PATIENCE_MS = 2_500;

/** @param wanted place that the next scan is for; null: the first free one of its kind */
export function useFit(places: readonly Place[], wanted: Place | null): Fit {
  const { floor, floorBench } = useWords();
  const bench = useBench();
  const [machine = ""] = bench.unitIds;
  const state = bench.states.get(machine);
  const { units, look } = useUnitList();
  const lookUp = useLookUp();
  const [says, setSays] = useState("");
  const [last, setLast] = useState("");
  const [looking, setLooking] = useState(false);
  const [question, setQuestion] = useState<FitQuestion | null>(null);
  const standing = useStanding(state);
  /** Labels that were scanned and not looked at yet: a hand scans three before the first is kept. */
  const queue = useRef<string[]>([]);
  const busy = useRef(false);
  const open = useRef<FitQuestion | null>(null);

  const isInside = (unit: string): boolean =>
    state?.inside.some((one) => one.unit === unit && one.until === null) === true;
  const put = (asked: FitQuestion | null): void => {
    open.current = asked;
    setQuestion(asked);
  };
  const record = async (bodies: readonly FactBody[], unit: string): Promise<void> => {
    setSays("");
    if (!(await bench.record(bodies))) return;
    for (const body of bodies)
      if (body.kind === "fitted" || body.kind === "removed")
        standing.note(body.place, body.kind === "fitted" ? body.unit : null);
    setLast(unit);
  };
  const bring = async (unit: KeptUnit, at: Place | null): Promise<void> => {
    const kin = places.filter(({ what, type }) => what === unit.what && type === unit.type);
    const free = kin.find((one) => standing.at(one.id) === null);
    const place = at ?? free ?? (kin.length === 1 ? (kin[0] ?? null) : null);
    setLooking(true);
    const found = await lookUp(unit);
    setLooking(false);
    const choices = kin.length > 0 ? kin : places;
    const warnings = fitWarnings({
      ...{ unit, state: found.state, place: place ?? choices[0] ?? null, machine },
      ...{ machineRevision: state?.begun?.revision ?? "", blocks: found.blocks, isServers: found.isServers },
    });
    if (place !== null && standing.at(place.id) === null && !stops(warnings))
      await record([{ kind: "fitted", unit: unit.unit, into: machine, place: place.id }], unit.unit);
    else put({ unit, place, places: choices, warnings });
  };
  const look1 = async (text: string): Promise<void> => {
    const id = unitInCode(text);
    const find = (list: readonly KeptUnit[] | null) => list?.find(({ unit }) => unit === id);
    const found = find(units) ?? find(await look());
    if (found === undefined) setSays(floor.pick.unknown(text.trim().slice(0, 60)));
    else if (found.what === "machine") setSays(floor.fit.notThisKind(found.unit));
    // The same label twice, by a trembling hand, fits it once.
    else if (isInside(found.unit) || places.some((place) => standing.at(place.id) === found.unit))
      setSays("");
    else await bring(found, wanted);
  };
  /** One label after the other; a question waits for its answer before the next. */
  const goOn = async (): Promise<void> => {
    if (busy.current) return;
    busy.current = true;
    try {
      while (open.current === null) {
        const text = queue.current.shift();
        if (text === undefined) break;
        await look1(text);
      }
    } finally {
      busy.current = false;
    }
  };
  const ask = (asked: FitQuestion | null): void => {
    put(asked);
    if (asked === null) void goOn();
  };
  const answer: Fit["answer"] = async (place, out) => {
    const asked = open.current;
    const unit = asked?.unit ?? null;
    const there = standing.at(place.id);
    const moved = asked?.warnings.find((warning) => warning.kind === "elsewhere");
    const bodies: FactBody[] =
      there === null || out === null ? [] : [...leaving(there, machine, place.id, out)];
    if (unit !== null) {
      if (moved?.kind === "elsewhere") {
        const why = floorBench.fitting.movedWhy(machine);
        bodies.push({ kind: "removed", unit: unit.unit, from: moved.into, place: moved.place, why });
      }
      bodies.push({ kind: "fitted", unit: unit.unit, into: machine, place: place.id });
    }
    await record(bodies, unit?.unit ?? "");
    ask(null);
  };
  const scanned = (text: string): Promise<void> => {
    queue.current.push(text);
    return goOn();
  };
  return { machine, state, units, says, last, looking, question, ask, answer, bring, scanned };
}

/** What stands at places: as it is told, and what was recorded just now and is not told yet. */
function useStanding(state: UnitState | undefined): {
  readonly at: (placeId: string) => string | null;
  readonly note: (placeId: string, unit: string | null) => void;
} {
  const newest = useRef(state);
  newest.current = state;
  const noted = useRef(new Map<string, string | null>());
  for (const [place, unit] of noted.current)
    if (standingAt(state, place) === unit) noted.current.delete(place);
  return {
    at: (place) =>
      noted.current.get(place) ?? (noted.current.has(place) ? null : standingAt(newest.current, place)),
    note: (place, unit) => noted.current.set(place, unit),
  };
}

/** What comes out; when it is faulty that is a defect of it, so that it does not go in elsewhere as if it were good. */
function leaving(
  unit: string,
  from: string,
  place: string,
  { why, isFaulty }: { readonly why: string; readonly isFaulty: boolean },
): readonly FactBody[] {
  const removed: FactBody = { kind: "removed", unit, from, place, why };
  if (!isFaulty) return [removed];
  const says = `${why} (${from}, ${place})`;
  return [
    removed,
    {
      kind: "defect",
      unit,
      defect: madeUp("d"),
      what: "other",
      says,
      where: {},
    },
  ];
}

interface LookedUp {
  readonly state: UnitState | undefined;
  readonly blocks: readonly Block[];
  readonly isServers: boolean;
}

/** Looks up what is known of a unit: at the server; when it does not answer in time, from what this device keeps. */
function useLookUp(): (unit: KeptUnit) => Promise<LookedUp> {
  const desk = useDesk();
  const { own } = useDevice();
  return async ({ unit, what, type }) => {
    const within = async <T>(asked: Promise<T>): Promise<T | null> =>
      Promise.race([
        asked.catch(() => null),
        new Promise<null>((done) => setTimeout(() => done(null), PATIENCE_MS)),
      ]);
    const [facts, gate] = await Promise.all([
      within(call("unitFacts", { parts: { unit } })),
      within(call("unitGate", { parts: { unit } })),
    ]);
    const states = knownUnits([facts ?? []], own.facts);
    const state = states.get(unit);
    if (gate !== null) return { state, blocks: gate.blocks, isServers: true };
    const steps = [...(state?.steps.keys() ?? [])];
    const needed = await desk.ask("floorNeeds", { what, type, steps });
    return { state, blocks: releaseBlocks(states, [unit], () => needed, []), isServers: false };
  };
}
