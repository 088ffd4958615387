import { UNIT_KINDS } from "@pinwright/contract";
import { useMemo } from "react";
import { useWords } from "../../words.tsx";
import { useNames } from "../names.tsx";
import { useDefectWords } from "../unit/unit-defects.tsx";
import { useStationName } from "../use-station-name.ts";
import type { ParetoBy } from "./keys.ts";

/** What a bar of a Pareto is called. */
export function useKeyName(): (by: ParetoBy, key: string) => string {
  const { benchQuality } = useWords();
  const names = useNames();
  const says = useDefectWords();
  const stationOf = useStationName();
  return useMemo(() => {
    const kindAndType = (key: string): string => {
      const [kind = "", type = ""] = key.split(" ");
      const what = UNIT_KINDS.find((one) => one === kind);
      return what === undefined ? key : names.type(what, type);
    };
    return (by, key) => {
      if (key === "") return benchQuality.defects.noKey;
      switch (by) {
        case "what":
          return says.what(key);
        case "cause":
          return says.cause(key);
        case "board":
        case "harness":
          return names.type(by, key);
        case "type":
          return kindAndType(key);
        case "part": {
          const [type = "", part] = key.split(" ");
          return part === undefined ? names.place(key) : `${part}, ${names.type("board", type)}`;
        }
        case "station":
          return stationOf(key);
      }
    };
  }, [benchQuality, names, says, stationOf]);
}
