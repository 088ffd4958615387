import { UNIT_KINDS } from "@pinwright/contract";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { DataTable } from "../../harnesses/data-table.tsx";
import { TableScroll } from "../../parts/table-scroll.tsx";
import { useWords } from "../../words.tsx";
import { benchAddress, unitAddress } from "../address.ts";
import { useNames } from "../names.tsx";
import type { RunBoard } from "./floor-board.ts";
import { useEmptyShelf } from "./use-empty-shelf.ts";
import { useFloorText } from "./use-floor-text.ts";

const [FIRST, FIRST_WAITS] = [20, 12];
/** Machines that are named at one stage; more are only counted. */
const MOST_NAMED = 30;

/** One run in the app: its units by stage, what is stuck, and what machines wait for. */
export function RunFloor({ board, nowMs }: { readonly board: RunBoard; readonly nowMs: number }) {
  const { benchFloor: own } = useWords();
  const text = useFloorText();
  const { run, machines, released, today } = board;
  return (
    <section aria-label={text.run(run)}>
      <h3>
        {text.run(run)} {machines > 0 && <small className="dim">{own.released(released, machines)}</small>}
      </h3>
      <p>
        {own.today}: <b>{today.units === 0 ? own.todayNone : own.todayYield(today.first, today.units)}</b>
      </p>
      <Stages board={board} />
      <StuckList board={board} nowMs={nowMs} />
      {machines > 0 && <Waits board={board} />}
    </section>
  );
}

function Stages({ board }: { readonly board: RunBoard }) {
  const { benchFloor: own } = useWords();
  const { bookId } = useDesk();
  const text = useFloorText();
  const kinds = UNIT_KINDS.filter((kind) => board.rows.some(({ counts }) => counts[kind] > 0));
  return (
    <TableScroll>
      <table className="plain">
        <caption className="visually-hidden">{text.run(board.run)}</caption>
        <thead>
          <tr>
            <th scope="col">{own.stage}</th>
            {kinds.map((kind) => (
              <th key={kind} scope="col" className="end">
                <Link
                  href={benchAddress(bookId, "units", {
                    kind,
                    ...(board.run === "" ? {} : { run: board.run }),
                  })}
                >
                  {own.kinds[kind]}
                </Link>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {board.rows.map(({ stage, machines, counts }) => (
            <tr key={stage}>
              <th scope="row">
                {text.stage(stage)}
                <span className="floor-machines">
                  {machines.slice(0, MOST_NAMED).map((unit) => (
                    <Link key={unit} className="quality-unit" href={unitAddress(bookId, unit)}>
                      {unit}
                    </Link>
                  ))}
                  {machines.length > MOST_NAMED && own.others(machines.length - MOST_NAMED)}
                </span>
              </th>
              {kinds.map((kind) => (
                <td key={kind} className="end">
                  {counts[kind] === 0 ? "" : counts[kind]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}

function StuckList({ board, nowMs }: { readonly board: RunBoard; readonly nowMs: number }) {
  const { benchFloor: own, benchQuality } = useWords();
  const { bookId } = useDesk();
  const names = useNames();
  const text = useFloorText();
  const { defects } = benchQuality;
  return (
    <>
      <h4>{own.stuck}</h4>
      {board.stuck.length === 0 ? (
        <p>{own.noStuck}</p>
      ) : (
        <DataTable
          caption={own.stuck}
          rows={board.stuck}
          rowKey={({ unit }) => unit}
          first={FIRST}
          columns={[
            {
              key: "unit",
              header: defects.unit,
              value: ({ unit }) => unit,
              cell: ({ unit, what, type }) => (
                <>
                  <Link className="quality-unit" href={unitAddress(bookId, unit)}>
                    {unit}
                  </Link>
                  <small className="dim quality-under">{names.type(what, type)}</small>
                </>
              ),
            },
            {
              key: "why",
              header: defects.what,
              value: text.why,
              cell: (stuck) => (
                <>
                  <span className={stuck.why === "defect" || stuck.why === "test" ? "amber-text" : undefined}>
                    {text.why(stuck)}
                  </span>
                  {stuck.others > 0 && <span className="dim"> {own.others(stuck.others)}</span>}
                </>
              ),
            },
            { key: "stage", header: own.stage, value: ({ stage, within }) => within || text.stage(stage) },
            {
              key: "since",
              header: defects.found,
              value: ({ at }) => at,
              cell: ({ at }) => text.ago(at, nowMs),
            },
          ]}
        />
      )}
    </>
  );
}

function Waits({ board }: { readonly board: RunBoard }) {
  const { benchFloor: own } = useWords();
  const names = useNames();
  const shelf = useEmptyShelf();
  const shown = board.waits?.toSorted((a, b) => Number(a.missing <= a.ready) - Number(b.missing <= b.ready));
  return (
    <>
      <h4>{own.waits}</h4>
      {shown === undefined && <p className="dim">{own.waitsUnknown}</p>}
      {shown?.length === 0 && <p>{own.noWaits}</p>}
      {shown !== undefined && shown.length > 0 && (
        <DataTable
          caption={own.waits}
          rows={shown}
          rowKey={({ what, type }) => `${what} ${type}`}
          first={FIRST_WAITS}
          columns={[
            {
              key: "type",
              header: own.sites.type,
              value: ({ what, type }) => names.type(what, type),
            },
            {
              key: "machines",
              header: own.waits,
              value: ({ machines }) => machines,
              cell: ({ machines }) => own.waitsFor(machines),
            },
            {
              key: "missing",
              header: own.sites.state,
              value: ({ missing, ready }) => missing - ready,
              text: ({ missing, inWork, ready }) => own.waitLine(missing, inWork, ready),
              cell: ({ missing, inWork, ready }) => own.waitLine(missing, inWork, ready),
            },
          ]}
        />
      )}
      {shelf.length > 0 && (
        <p>
          {own.shelf}: {shelf.slice(0, FIRST_WAITS).join(", ")}
          {shelf.length > FIRST_WAITS && ` ${own.others(shelf.length - FIRST_WAITS)}`}
        </p>
      )}
    </>
  );
}
