import type { ArrivedFact, Fact, KeptUnit } from "@pinwright/contract";
import { foldUnits, type UnitState } from "@pinwright/engine";
import { useCallback, useEffect, useMemo, useState } from "react";
import { call, Refused } from "../../api/call.ts";
import { useOwnFacts } from "../device.tsx";
import { knownFacts } from "./heard.ts";

/** The list of units is asked for again so often while it is looked at. */
const LOOK_AGAIN_MS = 20_000;

/** Every unit that was begun, as the server last told; null before that. */
export function useUnitList(): {
  readonly units: readonly KeptUnit[] | null;
  readonly look: () => Promise<readonly KeptUnit[] | null>;
} {
  const [units, setUnits] = useState<readonly KeptUnit[] | null>(null);
  const look = useCallback(async () => {
    try {
      const told = await call("units", { parts: {} });
      setUnits(told);
      return told;
    } catch {
      // Nobody answers and nothing was told before.
      return null;
    }
  }, []);
  useEffect(() => {
    void look();
    const timer = setInterval(() => void look(), LOOK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [look]);
  return { units, look };
}

/** What is known of some units, and of what is in them. */
export interface KnownUnits {
  readonly states: ReadonlyMap<string, UnitState>;
  /** Everything that is known at all. */
  readonly facts: readonly Fact[];
  /** `unheard`: the server has not told of all of them; only what was done on this device is known. */
  readonly told: "asking" | "heard" | "unheard";
}

/** What the server and this device know of units; asked for again whenever `again` is another. */
export function useUnits(ids: readonly string[], again: number): KnownUnits {
  const own = useOwnFacts();
  const key = ids.join(" ");
  const [heard, setHeard] = useState<ReadonlyMap<string, readonly ArrivedFact[]>>(new Map());
  const [told, setTold] = useState<KnownUnits["told"]>("asking");
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for `ids`; `again` asks once more
  useEffect(() => {
    let wanted = true;
    const asked = ids.map((unit) =>
      call("unitFacts", { parts: { unit } }).catch((error: unknown) =>
        error instanceof Refused && error.problem.code === "not-found" ? [] : null,
      ),
    );
    void Promise.all(asked).then((answers) => {
      if (!wanted) return;
      // What was heard before of a unit that nobody tells of now still holds.
      setHeard((before) => new Map(ids.map((id, i) => [id, answers[i] ?? before.get(id) ?? []])));
      setTold(answers.every((answer) => answer !== null) ? "heard" : "unheard");
    });
    return () => {
      wanted = false;
    };
  }, [key, again]);
  const facts = useMemo(() => knownFacts([...heard.values()], own), [heard, own]);
  const states = useMemo(() => foldUnits(facts), [facts]);
  return { states, facts, told };
}
