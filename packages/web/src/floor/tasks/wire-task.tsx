import { useState } from "react";
import { useWords } from "../../app/words.tsx";
import type { Task } from "./tasks.ts";
import { WireByWire } from "./wire-by-wire.tsx";
import { WireTogether } from "./wire-together.tsx";

const KEY = "pinwright.floor.wire-by-wire";

/** The wires of a harness: cut or laid many at a time, or one by one for whoever wants it so. */
export function WireTask({ task }: { readonly task: Extract<Task, { kind: "own" }> }) {
  const own = useWords().floorBench.groups;
  const [single, setSingle] = useState(() => localStorage.getItem(KEY) === "1");
  const turn = (): void => {
    localStorage.setItem(KEY, single ? "0" : "1");
    setSingle(!single);
  };
  const change = (
    <button type="button" className="floor-plain floor-turn" onClick={turn}>
      {single ? (task.step === "cut" ? own.together : own.byRun) : own.one}
    </button>
  );
  return single ? <WireByWire task={task} change={change} /> : <WireTogether task={task} change={change} />;
}
