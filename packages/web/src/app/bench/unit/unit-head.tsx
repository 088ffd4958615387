import type { UnitState } from "@pinwright/engine";
import type { ReactNode } from "react";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { revisionsAddress } from "../../revisions/address.ts";
import { runAddress } from "../../runs/address.ts";
import { useWords } from "../../words.tsx";
import { unitAddress } from "../address.ts";
import { useNames, usePeople, useWhen } from "../names.tsx";

const CHANGE = /^@(\d+)$/u;

/** The revision that a unit was built to, in words. */
export function useRevision(): (revision: string) => string {
  const { benchUnit: own } = useWords();
  return (revision) => {
    const no = CHANGE.exec(revision)?.[1];
    return no === undefined ? own.release(revision) : own.change(no);
  };
}

/** What a unit is and where it stands. */
export function UnitHead({
  state,
  begun,
}: {
  readonly state: UnitState;
  readonly begun: NonNullable<UnitState["begun"]>;
}) {
  const { benchUnit: own } = useWords();
  const { bookId } = useDesk();
  const names = useNames();
  const nameOf = usePeople();
  const when = useWhen();
  const revision = useRevision();
  const { released, onTheWay, stage, site } = state;
  const within = state.within.findLast(({ until }) => until === null);
  const run = begun.run ?? "";
  return (
    <dl className="facts">
      <Line name={own.facts.revision}>
        <Link
          href={
            CHANGE.test(begun.revision)
              ? `/b/${begun.book}/history`
              : revisionsAddress(begun.book, "releases")
          }
        >
          {revision(begun.revision)}
        </Link>
      </Line>
      <Line name={own.facts.run}>
        {run === "" ? own.none : <Link href={runAddress(bookId, run)}>{names.run(run)}</Link>}
      </Line>
      <Line name={own.facts.options}>
        {begun.options.length === 0 ? own.usualOptions : begun.options.map(names.option).join(", ")}
      </Line>
      <Line name={own.facts.stage}>{stage === "" ? own.notSaid : names.stage(stage)}</Line>
      <Line name={own.facts.site}>
        {onTheWay !== null
          ? own.onTheWay(names.site(onTheWay.to), onTheWay.transport)
          : site === ""
            ? own.notSaid
            : names.site(site)}
      </Line>
      {within !== undefined && (
        <Line name={own.facts.within}>
          <Link href={unitAddress(bookId, within.unit)}>{within.unit}</Link>{" "}
          {own.at(names.place(within.place))}
        </Line>
      )}
      <Line name={own.facts.begun}>{own.byOn(nameOf(begun.source.person), when(begun.source.at))}</Line>
      <Line name={own.facts.minutes}>{own.minutes(state.minutes)}</Line>
      {released !== null && (
        <Line name={own.facts.released}>{own.byOn(nameOf(released.person), when(released.at))}</Line>
      )}
    </dl>
  );
}

function Line({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
