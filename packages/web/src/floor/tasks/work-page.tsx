import type { FactBody } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { useDesk, useLooked, useSync, useView } from "../../app/book/desk.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { useDevice } from "../device.tsx";
import { keepLast } from "../pick/last-units.ts";
import { useUnits } from "../records/use-units.ts";
import { releaseOf, revisionsOf } from "../revision.ts";
import { useKept } from "../service/use-service.ts";
import { useHere } from "../shell/at-place.tsx";
import { FloorHead } from "../shell/head.tsx";
import { AtBench, type Begun } from "./at-bench.tsx";

/** A unit, or several of one type, at this station. */
export function WorkPage({ unitIds, view }: { readonly unitIds: readonly string[]; readonly view: string }) {
  const { floor, floorRevision } = useWords();
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
  const revisions = revisionsOf(states);
  const release = begun === null || begun.book !== here.book ? null : releaseOf(begun.revision);
  const looked = useLooked();
  // The machine is looked at as this unit is built: with its own options, as its own revision keeps it.
  const lookAtIt = useCallback(
    () => desk.look(optionsOfUnit === "" ? null : optionsOfUnit.split(" "), release),
    [desk, optionsOfUnit, release],
  );
  useEffect(() => {
    lookAtIt();
    return () => desk.look(null);
  }, [desk, lookAtIt]);
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
            : revisions.length > 1
              ? floorRevision.mixed(revisions.join(", "))
              : looked.release !== release
                ? floorRevision.fetching(release ?? "")
                : looked.is === "away"
                  ? floorRevision.away(release ?? "")
                  : null;
  const notice = looked.is === "none" && release !== null ? floorRevision.none(release) : "";
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
          {looked.is === "away" && looked.release === release && (
            <p className="floor-body">
              <button type="button" className="floor-main" onClick={lookAtIt}>
                {floorRevision.again}
              </button>
            </p>
          )}
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
          release={looked.is === "shown" ? looked.release : null}
          notice={[notice, told === "unheard" ? floor.work.unheard : ""].filter((t) => t !== "").join(" ")}
          trouble={failed === "" ? "" : `${floor.work.failedSave} ${failed}`}
        />
      )}
    </main>
  );
}
