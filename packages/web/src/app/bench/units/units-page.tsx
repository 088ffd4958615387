import { Button } from "@mantine/core";
import { IconPlus } from "@tabler/icons-react";
import { useMemo, useState } from "react";
import { useSearchParams } from "wouter";
import { call } from "../../../api/call.ts";
import { useDesk } from "../../book/desk.tsx";
import { useMay } from "../../session/session.tsx";
import { useWords } from "../../words.tsx";
import { LabelSheets } from "../sheets/label-sheets.tsx";
import { useAsked } from "../use-asked.ts";
import { filtered, filterOf, paramsOf, type UnitFilter } from "./filter.ts";
import { GiveOut } from "./give-out.tsx";
import { UnitFilters } from "./unit-filters.tsx";
import { UnitList } from "./unit-list.tsx";

/** Every unit of the book, with what holds it. */
export function UnitsPage() {
  const { common, benchUnits: own } = useWords();
  const { bookId } = useDesk();
  const [params, setParams] = useSearchParams();
  const mayGive = useMay("lead");
  const [isGiving, setGiving] = useState(false);
  const { answer, failed, again } = useAsked(`units ${bookId}`, (signal) =>
    call("unitSummaries", { parts: {}, query: { book: bookId }, signal }),
  );
  const filter = useMemo(() => filterOf(params), [params]);
  const shown = useMemo(() => (answer === undefined ? [] : filtered(answer, filter)), [answer, filter]);
  const serials = useMemo(() => shown.map(({ unit }) => unit), [shown]);
  const setFilter = (to: UnitFilter): void => setParams(paramsOf(to), { replace: true });
  return (
    <div className="currents-body bench-list">
      <div className="bench-head">
        <h2>{own.list}</h2>
        {answer !== undefined && answer.length > 0 && (
          <span className="dim" role="status">
            {own.count(shown.length, answer.length)}
          </span>
        )}
        {mayGive && !isGiving && (
          <Button variant="default" leftSection={<IconPlus size={16} />} onClick={() => setGiving(true)}>
            {own.give.open}
          </Button>
        )}
      </div>
      {mayGive && isGiving && <GiveOut given={again} close={() => setGiving(false)} />}
      {failed !== "" && <p className="error-text">{failed}</p>}
      {answer === undefined ? (
        failed === "" && <p className="dim">{common.loading}</p>
      ) : answer.length === 0 ? (
        <>
          <p>{own.empty}</p>
          <p>{mayGive ? own.emptyHow : own.emptyAsk}</p>
        </>
      ) : (
        <>
          <UnitFilters units={answer} filter={filter} set={setFilter} />
          {shown.length === 0 ? (
            <p>
              {own.none}{" "}
              <button
                type="button"
                className="link-button"
                onClick={() => setFilter(filterOf(new URLSearchParams()))}
              >
                {own.showAll}
              </button>
            </p>
          ) : (
            <>
              <LabelSheets book={bookId} units={serials} />
              <UnitList units={shown} />
            </>
          )}
        </>
      )}
    </div>
  );
}
