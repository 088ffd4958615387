import { useEffect, useMemo, useRef, useState } from "react";
import { useWords } from "../../words.tsx";
import { useNames } from "../names.tsx";
import { type RunBoard, shortNumber } from "./floor-board.ts";
import { type ScreenPage, screenPages } from "./pages.ts";
import { useClockText } from "./use-clock-text.ts";
import { useEmptyShelf } from "./use-empty-shelf.ts";
import type { FloorLooked } from "./use-floor.ts";
import { useFloorText } from "./use-floor-text.ts";

const TURN_MS = 15_000;

/** The floor on a screen that is read from across the room: no scrolling, it turns its own pages. */
export function FloorScreen({ looked, leave }: { readonly looked: FloorLooked; readonly leave: () => void }) {
  const { benchFloor: own, common } = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  const pages = useMemo(() => screenPages(looked.boards), [looked.boards]);
  const [turn, setTurn] = useState(0);
  const [isHeld, setHeld] = useState(false);
  useEffect(() => {
    const shown = dialog.current;
    if (shown !== null && !shown.open) shown.showModal();
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a page that somebody turned stays as long as any other
  useEffect(() => {
    if (isHeld) return;
    const timer = setTimeout(() => setTurn((before) => before + 1), TURN_MS);
    return () => clearTimeout(timer);
  }, [turn, isHeld]);
  const at = pages.length === 0 ? 0 : ((turn % pages.length) + pages.length) % pages.length;
  const page = pages[at];
  return (
    <dialog
      ref={dialog}
      className="floor-screen"
      aria-label={own.title}
      onCancel={(event) => {
        event.preventDefault();
        leave();
      }}
      onKeyDown={(event) => {
        if (event.key === "ArrowRight") setTurn((before) => before + 1);
        if (event.key === "ArrowLeft") setTurn((before) => before - 1);
      }}
    >
      {page === undefined ? (
        <div className="floor-screen-empty">
          <p>{looked.floor === undefined ? looked.failed || common.loading : own.empty}</p>
        </div>
      ) : (
        <Page page={page} looked={looked} />
      )}
      <footer>
        <Current looked={looked} />
        {pages.length > 1 && (
          <>
            <button type="button" onClick={() => setHeld(!isHeld)}>
              {isHeld ? own.turn : own.hold}
            </button>
            <button type="button" onClick={() => setTurn((before) => before + 1)}>
              {own.more} {own.page(at + 1, pages.length)}
            </button>
          </>
        )}
        <button type="button" onClick={leave}>
          {own.leave}
        </button>
      </footer>
    </dialog>
  );
}

/** Says how old it is; what is not current says so in black, not in a colour. */
function Current({ looked: { isCurrent, heardMs, floor } }: { readonly looked: FloorLooked }) {
  const { benchFloor: own } = useWords();
  const clock = useClockText();
  if (floor === undefined) return <span className="floor-screen-grow" />;
  return (
    <span className={isCurrent ? "floor-screen-grow" : "floor-screen-grow floor-stale"} role="status">
      {isCurrent ? own.asOf(clock(heardMs)) : own.notCurrent(clock(heardMs))}
    </span>
  );
}

function Page({ page, looked }: { readonly page: ScreenPage; readonly looked: FloorLooked }) {
  const { benchFloor: own, benchQuality } = useWords();
  const names = useNames();
  const text = useFloorText();
  const clock = useClockText();
  const { board, stuck, waits } = page;
  const shelf = useEmptyShelf();
  const { today } = board;
  return (
    <>
      <header>
        <h1>{text.run(board.run)}</h1>
        {board.machines > 0 && <span>{own.released(board.released, board.machines)}</span>}
        <span className="floor-screen-grow" />
        <span>
          {own.today}{" "}
          <b>
            {today.units === 0
              ? own.todayNone
              : `${own.todayYield(today.first, today.units)} · ${benchQuality.percent(today.first / today.units)}`}
          </b>
        </span>
        <b className="floor-screen-clock">{clock(looked.nowMs)}</b>
      </header>
      <Stages board={board} />
      <section aria-label={own.stuck} className="floor-screen-stuck">
        <h2>
          {own.stuck} {board.stuck.length > 0 && board.stuck.length}
        </h2>
        {board.stuck.length === 0 && <p>{own.noStuck}</p>}
        <ul>
          {stuck.map((one) => (
            <li key={one.unit}>
              <b>
                {SIGNS[one.why]} {one.unit}
              </b>{" "}
              {text.why(one)}
              {one.others > 0 && ` ${own.others(one.others)}`}
              <small>
                {names.type(one.what, one.type)} · {text.ago(one.at, looked.nowMs)}
              </small>
            </li>
          ))}
        </ul>
      </section>
      {board.machines > 0 && (
        <section aria-label={own.waits} className="floor-screen-waits">
          <h2>{own.waits}</h2>
          {waits === null && <p>{own.waitsUnknown}</p>}
          {waits?.length === 0 && <p>{own.noWaits}</p>}
          <ul>
            {waits?.map(({ what, type, machines, missing, ready, inWork }) => (
              <li key={`${what} ${type}`}>
                <b>{names.type(what, type)}</b> {own.waitsFor(machines)} ·{" "}
                {own.waitLine(missing, inWork, ready)}
              </li>
            ))}
          </ul>
          {shelf.length > 0 && (
            <p className="floor-screen-shelf">
              {own.shelf}: {shelf.join(", ")}
            </p>
          )}
        </section>
      )}
    </>
  );
}

/** Told by shape, for whoever sees no colour. */
const SIGNS = { defect: "✕", test: "▲", way: "→", quiet: "…" } as const;

function Stages({ board }: { readonly board: RunBoard }) {
  const { benchFloor: own } = useWords();
  const text = useFloorText();
  const kinds = (["machine", "board", "harness", "mechanism"] as const).filter((kind) =>
    board.rows.some(({ counts }) => counts[kind] > 0),
  );
  return (
    <section className="floor-screen-stages" aria-label={own.stage}>
      <table>
        <thead>
          <tr>
            <th scope="col">{own.stage}</th>
            {kinds.map((kind) => (
              <th key={kind} scope="col" className="end">
                {own.kinds[kind]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {board.rows.map(({ stage, machines, counts }) => (
            <tr key={stage}>
              <th scope="row">
                {text.stage(stage)}
                {machines.length > 0 && (
                  <small className="floor-screen-numbers">
                    {own.kinds.machine}: {machines.map(shortNumber).join(" ")}
                  </small>
                )}
              </th>
              {kinds.map((kind) => (
                <td key={kind} className="end">
                  {counts[kind] === 0 ? "·" : <b>{counts[kind]}</b>}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
