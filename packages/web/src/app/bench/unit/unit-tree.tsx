import type { Fitting, UnitState } from "@pinwright/engine";
import { useState } from "react";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { benchAddress, unitAddress } from "../address.ts";
import { useNames, usePeople, useWhen } from "../names.tsx";
import type { KnownUnit } from "./use-unit.ts";

/** Units of a level that are shown before all are asked for. */
const FIRST = 12;
/** Nothing is nested deeper, whatever the records say. */
const DEEPEST = 6;

/** What is in a unit now, at every depth; what was in it, and where it was itself. */
export function UnitTree({ known, state }: { readonly known: KnownUnit; readonly state: UnitState }) {
  const { benchUnit: own } = useWords();
  const gone = state.inside.filter(({ until }) => until !== null);
  const was = state.within.filter(({ until }) => until !== null);
  return (
    <section aria-labelledby="unit-tree">
      <h3 id="unit-tree">{own.tree.title}</h3>
      {state.inside.some(({ until }) => until === null) ? (
        <Level known={known} state={state} depth={0} />
      ) : (
        <p className="dim">{own.tree.none}</p>
      )}
      {gone.length > 0 && (
        <>
          <h4>{own.tree.history}</h4>
          <ul className="unit-tree">
            {gone.map((fitting) => (
              <li key={`${fitting.unit} ${fitting.from.stream} ${fitting.from.seq}`}>
                <Line known={known} fitting={fitting} swappedFor={swappedFor(state, fitting)} />
              </li>
            ))}
          </ul>
        </>
      )}
      {was.length > 0 && (
        <>
          <h4>{own.tree.was}</h4>
          <ul className="unit-tree">
            {was.map((fitting) => (
              <li key={`${fitting.unit} ${fitting.from.stream} ${fitting.from.seq}`}>
                <Line known={known} fitting={fitting} swappedFor={null} />
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** What came to the place of a unit in the same moment that it left. */
const swappedFor = ({ inside }: UnitState, { place, until, unit }: Fitting): string | null =>
  inside.find(
    (one) =>
      one.place === place &&
      one.unit !== unit &&
      one.from.stream === until?.stream &&
      // Taken out and fitted at once, or the one fitted in the other's place.
      (one.from.seq === until.seq || one.from.seq === until.seq + 1),
  )?.unit ?? null;

function Level({
  known,
  state,
  depth,
}: {
  readonly known: KnownUnit;
  readonly state: UnitState;
  readonly depth: number;
}) {
  const { benchUnit: own } = useWords();
  const [isAll, setAll] = useState(false);
  const inside = state.inside.filter(({ until }) => until === null);
  if (inside.length === 0 || depth >= DEEPEST) return null;
  const shown = isAll || inside.length <= FIRST + 1 ? inside : inside.slice(0, FIRST);
  return (
    <ul className="unit-tree">
      {shown.map((fitting) => {
        const child = known.states.get(fitting.unit);
        return (
          <li key={fitting.place}>
            <Line known={known} fitting={fitting} swappedFor={null} />
            <Lots state={child} />
            {child !== undefined && <Level known={known} state={child} depth={depth + 1} />}
          </li>
        );
      })}
      {shown.length < inside.length && (
        <li>
          <button type="button" className="link-button" onClick={() => setAll(true)}>
            {own.tree.all(inside.length)}
          </button>
        </li>
      )}
    </ul>
  );
}

/** Lots that went into what is inside, each leading to wherever else they went. */
function Lots({ state }: { readonly state: UnitState | undefined }) {
  const { benchUnit: own } = useWords();
  const { bookId } = useDesk();
  const names = useNames();
  return state === undefined || state.lots.length === 0 ? null : (
    <small className="unit-lots">
      {state.lots.map(({ part, lot, source }) => (
        <Link key={`${source.stream} ${source.seq}`} href={benchAddress(bookId, "trace", { part, lot })}>
          {own.made.lot(names.part(part), lot)}
        </Link>
      ))}
    </small>
  );
}

/** A unit at a place, who put it there and took it out. */
function Line({
  known,
  fitting,
  swappedFor: other,
}: {
  readonly known: KnownUnit;
  readonly fitting: Fitting;
  readonly swappedFor: string | null;
}) {
  const { benchUnit: own } = useWords();
  const { bookId } = useDesk();
  const names = useNames();
  const nameOf = usePeople();
  const when = useWhen();
  const { unit, place, from, until } = fitting;
  const begun = known.states.get(unit)?.begun;
  return (
    <>
      <span>
        <b>{names.place(place)}</b> <Link href={unitAddress(bookId, unit)}>{unit}</Link>{" "}
        {begun != null && names.type(begun.what, begun.type)}
      </span>
      <small className="dim">
        {own.tree.fitted(nameOf(from.person), when(from.at))}
        {until !== null && (
          <>
            {"; "}
            {other === null
              ? own.tree.removed(nameOf(until.person), when(until.at))
              : own.tree.swapped(other, nameOf(until.person), when(until.at))}
          </>
        )}
      </small>
    </>
  );
}
