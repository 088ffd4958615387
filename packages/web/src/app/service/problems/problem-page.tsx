import type { KeptProblem } from "@pinwright/contract";
import { IconArrowLeft } from "@tabler/icons-react";
import { type ReactNode, useState } from "react";
import { Link } from "wouter";
import { useOwnFacts } from "../../../floor/device.tsx";
import { unitAddress } from "../../bench/address.ts";
import { usePeople, useWhen } from "../../bench/names.tsx";
import { SayWhy } from "../../bench/trace/call-back.tsx";
import { useDesk } from "../../book/desk.tsx";
import { useMay, useSession } from "../../session/session.tsx";
import { useWords } from "../../words.tsx";
import { serviceAddress, thingAddress } from "../address.ts";
import { AddNote } from "./add-note.tsx";
import { EndProblem } from "./end-problem.tsx";
import { ProblemPicture } from "./picture-field.tsx";
import { StateText } from "./state-text.tsx";
import { useThingNames } from "./use-problems.ts";

/** One problem: what it is about, its course with pictures, and how it ended. */
export function ProblemPage({
  id,
  problems,
}: {
  readonly id: string;
  readonly problems: readonly KeptProblem[];
}) {
  const { serviceProblems: own, common } = useWords();
  const { bookId } = useDesk();
  const isOnItsWay = useOwnFacts().some(
    ({ fact, sentAt }) => fact.body.kind === "problem" && fact.body.problem === id && sentAt === null,
  );
  const problem = problems.find((one) => one.problem === id);
  return (
    <>
      <Link className="currents-back" href={serviceAddress(bookId, "problems")}>
        <IconArrowLeft size={16} aria-hidden /> {own.all}
      </Link>
      {problem !== undefined ? (
        <Known problem={problem} />
      ) : isOnItsWay ? (
        <p className="dim">{common.loading}</p>
      ) : (
        <p>{own.noSuch(id)}</p>
      )}
    </>
  );
}

function Known({ problem }: { readonly problem: KeptProblem }) {
  const own = useWords().serviceProblems;
  const { bookId } = useDesk();
  const personOf = usePeople();
  const when = useWhen();
  const nameOf = useThingNames(problem.about.map(({ id }) => id));
  return (
    <>
      <h2>{problem.says}</h2>
      <p>
        <StateText problem={problem} />
      </p>
      <p className="dim">
        {[
          own.from[problem.from],
          own.raised(personOf(problem.person), when(problem.at)),
          problem.run === null ? "" : own.run(problem.run),
          own.seenBy(problem.seen),
        ]
          .filter(Boolean)
          .join(" · ")}
        {problem.unit !== null && (
          <>
            {" · "}
            <Link href={unitAddress(bookId, problem.unit)}>{own.unit(problem.unit)}</Link>
          </>
        )}
      </p>
      {problem.seenSince > 0 && <p className="amber-text">{own.seenSince(problem.seenSince)}</p>}
      <ul className="problem-abouts">
        {problem.about.map(({ kind, id }) => (
          <li key={`${kind} ${id}`}>
            {kind === "machine" ? (
              own.kinds.machine
            ) : (
              <>
                {own.kinds[kind]}: <Link href={thingAddress(bookId, id)}>{nameOf(id)}</Link>{" "}
                <small className="dim">{id}</small>
              </>
            )}
          </li>
        ))}
      </ul>
      {problem.picture !== null && <ProblemPicture hash={problem.picture} says={problem.says} />}
      <Course problem={problem} />
      <div className="problem-forms">
        <AddNote key={problem.notes.length} problem={problem} />
        <Ending problem={problem} />
      </div>
    </>
  );
}

function Course({ problem: { notes } }: { readonly problem: KeptProblem }) {
  const own = useWords().serviceProblems;
  const { bookId } = useDesk();
  const personOf = usePeople();
  const when = useWhen();
  return (
    <section aria-labelledby="problem-course">
      <h3 id="problem-course">{own.course}</h3>
      {notes.length === 0 && <p className="dim">{own.courseNone}</p>}
      <ol className="problem-course">
        {notes.map((note) => (
          <li key={`${note.stream} ${note.seq}`} data-did={note.did}>
            <b>{own.did[note.did]}</b>
            <div>
              <p>{note.says === "" ? <span className="dim">{own.seenEmpty}</span> : note.says}</p>
              {note.picture !== null && <ProblemPicture hash={note.picture} says={note.says} />}
              <small className="dim">
                {personOf(note.person)}, {when(note.at)}
                {note.unit !== null && (
                  <>
                    {" · "}
                    <Link href={unitAddress(bookId, note.unit)}>{own.unit(note.unit)}</Link>
                  </>
                )}
              </small>
              <TakeBack source={note}>{own.takeBack}</TakeBack>
            </div>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** Only who wrote a record takes it back. */
function TakeBack({
  source,
  children,
}: {
  readonly source: { readonly stream: string; readonly seq: number; readonly person: string };
  readonly children: ReactNode;
}) {
  const own = useWords().serviceProblems;
  const { status } = useSession();
  const [open, setOpen] = useState(false);
  const { stream, seq } = source;
  if (source.person !== (status.person?.id ?? "local")) return null;
  if (!open)
    return (
      <button type="button" className="link-button problem-back" onClick={() => setOpen(true)}>
        {children}
      </button>
    );
  return (
    <SayWhy
      title={own.takeBack}
      label={own.takeBackWhy}
      submit={own.takeBack}
      bodyOf={(why) => ({ kind: "correction", stream, seq, why })}
      close={() => setOpen(false)}
    />
  );
}

function Ending({ problem }: { readonly problem: KeptProblem }) {
  const own = useWords().serviceProblems.end;
  const { takeBack } = useWords().serviceProblems;
  const { bookId } = useDesk();
  const personOf = usePeople();
  const when = useWhen();
  const mayEnd = useMay("lead");
  const { ended, revision } = problem;
  if (ended === null)
    return mayEnd ? (
      <EndProblem problem={problem} />
    ) : (
      <section aria-labelledby="problem-end">
        <h3 id="problem-end">{own.title}</h3>
        <p>{own.open}</p>
      </section>
    );
  return (
    <section aria-labelledby="problem-end">
      <h3 id="problem-end">{own.title}</h3>
      <p>
        <b>{ended.changeNo === null ? own.noChange : own.changed(ended.changeNo)}</b>
        {ended.changeNo !== null && (
          <>
            {". "}
            {revision === null ? own.noRevision : own.revision(revision)}{" "}
            <Link href={`/b/${bookId}/history`}>{own.seeChange}</Link>
          </>
        )}
      </p>
      <p>{ended.why}</p>
      <small className="dim">
        {personOf(ended.person)}, {when(ended.at)}
      </small>
      <TakeBack source={ended}>{takeBack}</TakeBack>
    </section>
  );
}
