import type { FactBody } from "@pinwright/contract";
import { useEffect, useState } from "react";
import { useDesk, useSync, useView } from "../../app/book/desk.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { useDevice } from "../device.tsx";
import { keepLast } from "../pick/last-units.ts";
import { useUnits } from "../records/use-units.ts";
import { useKept } from "../service/use-service.ts";
import { useHere } from "../shell/at-place.tsx";
import { FloorHead } from "../shell/head.tsx";
import { AtBench, type Begun } from "./at-bench.tsx";

/** A unit, or several of one type, at this station. */
export function WorkPage({ unitIds, view }: { readonly unitIds: readonly string[]; readonly view: string }) {
  const { floor } = useWords();
  const here = useHere();
  const desk = useDesk();
  const sync = useSync();
  const pick = usePick();
  const [again, setAgain] = useState(0);
  const { states, facts, told } = useUnits(unitIds, again);
  useKept(unitIds.map((unit) => `/api/units/${unit}`));
  const { write } = useDevice();
  const [failed, setFailed] = useState("");
  const types = useView("floorTypes", null);
  useEffect(() => desk.onServer(({ type }) => type === "facts" && setAgain((n) => n + 1)), [desk]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the page is made anew for other units
  useEffect(() => keepLast(unitIds), []);
  const begun: Begun | null = states.get(unitIds[0] ?? "")?.begun ?? null;
  const isHere = begun === null || begun.book === here.book;
  const { openBook } = here;
  const optionsOfUnit = begun === null ? "" : begun.options.join(" ");
  // The machine is looked at as this unit is built: with its own options.
  useEffect(() => {
    desk.look(optionsOfUnit === "" ? null : optionsOfUnit.split(" "));
    return () => desk.look(null);
  }, [desk, optionsOfUnit]);
  useEffect(() => {
    if (begun !== null && !isHere) openBook(begun.book);
  }, [begun, isHere, openBook]);
  const record = async (bodies: readonly FactBody[]): Promise<boolean> => {
    try {
      await write(bodies);
      setFailed("");
      return true;
    } catch (error) {
      setFailed(error instanceof Error ? error.message : String(error));
      return false;
    }
  };
  const type = types?.get(begun?.what === "machine" ? "machine" : `${begun?.what} ${begun?.type}`);
  const name = type === undefined ? (begun?.type ?? "") : pick(type.label, type.labelZh) || type.id;
  const message =
    told === "asking" && begun === null
      ? floor.loading
      : begun === null
        ? floor.work.unknownUnit(unitIds.join(", "))
        : !isHere
          ? floor.work.otherBook
          : sync.state === "failed"
            ? sync.message
            : null;
  return (
    <main className="floor-page">
      {message !== null || begun === null ? (
        <>
          <FloorHead back="/floor" backLabel={floor.close}>
            <b>{unitIds.join(", ")}</b>
          </FloorHead>
          <p className="floor-body" role="status">
            {message}
          </p>
        </>
      ) : (
        <AtBench
          unitIds={unitIds}
          begun={begun}
          name={name}
          states={states}
          facts={facts}
          view={view}
          record={record}
          notice={told === "unheard" ? floor.work.unheard : ""}
          trouble={failed === "" ? "" : `${floor.work.failedSave} ${failed}`}
        />
      )}
    </main>
  );
}
