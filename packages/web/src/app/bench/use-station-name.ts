import { useMemo } from "react";
import { useView } from "../book/desk.tsx";
import { usePick } from "../words.tsx";

/** What a station of the book is called; the id itself where the book has it no longer. */
export function useStationName(): (id: string) => string {
  const pick = usePick();
  const stations = useView("stations", null);
  return useMemo(
    () => (id) => {
      const station = stations?.get(id);
      return station === undefined ? id : pick(station.label, station.labelZh) || id;
    },
    [pick, stations],
  );
}
