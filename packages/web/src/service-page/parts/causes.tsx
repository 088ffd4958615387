import type { Cause, FaultAnswer } from "@pinwright/engine";
import { Fragment } from "react";
import { useFaults } from "../host.ts";
import { likelyWords, percentText } from "../likely.ts";
import { isLicensed, isMechanical } from "../suspects.ts";

/** Causes that are shown at once; beyond them the odds are small. */
const MOST_SHOWN = 5;
/** Suspects of a cause that are listed by name. */
const MOST_SUSPECTS = 5;
const MOST_NAMED = 6;

/** The likeliest causes, each with why it fits. */
export function Causes({ answer, dead }: { readonly answer: FaultAnswer; readonly dead: number }) {
  const { words } = useFaults();
  return (
    <section className="ff-section" id="ff-causes" aria-labelledby="ff-causes-title">
      <h2 id="ff-causes-title">{words.causes}</h2>
      {answer.state === "nothing" ? (
        <p>{words.nothingYet}</p>
      ) : (
        <>
          <p className="ff-dim">
            {words.causesHelp} {words.usualNote}
          </p>
          <ol className="ff-causes">
            {answer.causes.slice(0, MOST_SHOWN).map((cause) => (
              <CauseCard
                key={cause.parts.map(([first]) => first?.suspect).join("+")}
                cause={cause}
                dead={dead}
              />
            ))}
          </ol>
        </>
      )}
    </section>
  );
}

function CauseCard({ cause, dead }: { readonly cause: Cause; readonly dead: number }) {
  const { words, file } = useFaults();
  const all = cause.parts.flat().map(({ suspect }) => suspect);
  const first = cause.parts[0]?.[0]?.suspect ?? -1;
  return (
    <li className="ff-cause">
      <p className="ff-chance">
        {words.chance(likelyWords(words, cause.probability), percentText(cause.probability))}
      </p>
      {cause.parts.length > 1 && <p>{words.both}:</p>}
      {cause.parts.map((part, n) => (
        <SuspectList key={part[0]?.suspect ?? n} suspects={part.map(({ suspect }) => suspect)} />
      ))}
      {isMechanical(file, first) && <p className="ff-note">{words.mechanical}</p>}
      {isLicensed(file, first) ? (
        <p className="ff-caution">{words.licensed}</p>
      ) : (
        all.some((suspect) => isLicensed(file, suspect)) && <p className="ff-note">{words.licensedSome}</p>
      )}
      <Why cause={cause} dead={dead} first={first} />
    </li>
  );
}

/** What would do the same, the likeliest first. */
function SuspectList({ suspects }: { readonly suspects: readonly number[] }) {
  const { words, names } = useFaults();
  const [first, ...rest] = suspects;
  if (first === undefined) return null;
  const more = rest.length - (MOST_SUSPECTS - 1);
  return (
    <>
      <h3>
        <SuspectName suspect={first} />
      </h3>
      {rest.length > 0 && (
        <details>
          <summary>{words.moreSuspects(rest.length)}</summary>
          <p className="ff-dim">{words.oneOf}</p>
          <ul>
            {rest.slice(0, MOST_SUSPECTS - 1).map((suspect) => (
              <li key={suspect}>{names.suspect(suspect)}</li>
            ))}
            {more > 0 && <li>{words.andMore(more)}</li>}
          </ul>
        </details>
      )}
    </>
  );
}

/** A suspect; where all about it is told, its name leads there. */
export function SuspectName({ suspect }: { readonly suspect: number }) {
  const { names, thing, words, thingId } = useSuspect(suspect);
  const text = names.suspect(suspect);
  return (
    <>
      {text}
      {thing !== null && thingId !== "" && <> {thing(thingId, words.thing)}</>}
    </>
  );
}

function useSuspect(suspect: number) {
  const faults = useFaults();
  return { ...faults, thingId: faults.names.thingOf(suspect) };
}

function Why({
  cause,
  dead,
  first,
}: {
  readonly cause: Cause;
  readonly dead: number;
  readonly first: number;
}) {
  const { words, names } = useFaults();
  const fits = cause.explains.length;
  const wires = names.wiresOf(first);
  const isOnly = cause.alsoBreaks.length === 0 && cause.against.length === 0 && fits === dead;
  return (
    <details className="ff-why" open={cause.probability > 0.2}>
      <summary>{words.why}</summary>
      <p>
        {fits === dead ? words.whyAll(fits) : words.whySome(fits, dead)} {isOnly && words.whyOnly}{" "}
        {wires !== "" && words.whyCarries(wires)}
      </p>
      {cause.alsoBreaks.length > 0 && <FunctionNames text={words.alsoBreaks} all={cause.alsoBreaks} />}
      {cause.against.length > 0 && <FunctionNames text={words.against} all={cause.against} />}
    </details>
  );
}

export function FunctionNames({ text, all }: { readonly text: string; readonly all: readonly number[] }) {
  const { words, names } = useFaults();
  const more = all.length - MOST_NAMED;
  return (
    <p>
      {text}{" "}
      {all.slice(0, MOST_NAMED).map((f, n) => (
        <Fragment key={f}>
          {n > 0 && "; "}
          {names.functionName(f)}
        </Fragment>
      ))}
      {more > 0 && ` ${words.andMore(more)}`}
    </p>
  );
}
