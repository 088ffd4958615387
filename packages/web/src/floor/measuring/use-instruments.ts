import type { InstrumentInfo } from "@pinwright/contract";
import { useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { useHere } from "../shell/at-place.tsx";

/** Instruments that are used here: those of this station, and those of none. Nothing while the server does not answer. */
export function useInstruments(): readonly InstrumentInfo[] {
  const { station } = useHere();
  const [all, setAll] = useState<readonly InstrumentInfo[]>([]);
  useEffect(() => {
    const ending = new AbortController();
    call("instruments", { parts: {}, signal: ending.signal }).then(setAll, () => undefined);
    return () => ending.abort();
  }, []);
  return all.filter((one) => station === "" || one.station === "" || one.station === station);
}
