import { type FaultAnswer, type FaultSession, NO_SESSION, type Seen } from "@pinwright/engine";
import type { Language } from "@pinwright/words";
import { FAULT_WORDS } from "@pinwright/words/service";
import { useEffect, useMemo, useRef, useState } from "react";
import { machineCautions } from "./cautions.ts";
import { type FaultHost, FaultsContext, useFaults } from "./host.ts";
import { keepSession, keptSession } from "./kept-session.ts";
import { percentText } from "./likely.ts";
import { Names } from "./names.ts";
import { Causes } from "./parts/causes.tsx";
import { Found, Mended } from "./parts/found.tsx";
import { History } from "./parts/history.tsx";
import { NextLook } from "./parts/next-look.tsx";
import { WhatWorks } from "./parts/what-works.tsx";
import "./service-page.css";

/** From what does not work to what is to be mended: the same in the app and on the page that is shipped with a machine. */
export function FaultFinding({ host, language }: { readonly host: FaultHost; readonly language: Language }) {
  const faults = useMemo(() => {
    const words = FAULT_WORDS[language];
    const names = new Names(host.file, words, language);
    return { ...host, names, words: words.faults, cautions: words.cautions, language };
  }, [host, language]);
  return (
    <FaultsContext value={faults}>
      <Session />
    </FaultsContext>
  );
}

/** A session with what is known by it: an older answer stays until the next one is here. */
function useSession(host: FaultHost) {
  const [session, setSession] = useState<FaultSession>(() => keptSession(host.file));
  const [known, setKnown] = useState<{ readonly answer: FaultAnswer; readonly of: FaultSession } | null>(
    null,
  );
  const asked = useRef(0);
  useEffect(() => {
    keepSession(host.file, session);
    asked.current += 1;
    const own = asked.current;
    void host.answer(session).then((found) => {
      if (asked.current === own) setKnown({ answer: found, of: session });
    });
  }, [host, session]);
  return { session, setSession, answer: known?.answer ?? null, isSettled: known?.of === session };
}

function Session() {
  const faults = useFaults();
  const { file, words, names } = faults;
  const { session, setSession, answer, isSettled } = useSession(faults);
  const say = (seen: Readonly<Record<string, Seen | null>>): void =>
    setSession((before) => {
      const all = Object.entries({ ...before.seen, ...seen });
      const kept = all.flatMap(([id, what]) => (what === null ? [] : [[id, what] as const]));
      return { ...before, seen: Object.fromEntries(kept) };
    });
  const clear = (): void => setSession(NO_SESSION);
  const dead = names.functions.filter(({ id }) => !["works", undefined].includes(session.seen[id])).length;
  return (
    <div className="ff" lang={faults.language === "zh" ? "zh-Hans" : "en"}>
      <p className="ff-machine">{words.machine(names.pick(file.machine.labels), file.revision)}</p>
      <details className="ff-caution ff-all-cautions">
        <summary>
          <strong>{words.cautions}</strong>: {words.cautionFirst}
        </summary>
        {machineCautions(faults).map((text) => (
          <p key={text}>{text}</p>
        ))}
      </details>
      <nav className="ff-parts" aria-label={words.title}>
        <a href="#ff-say">{words.parts.say}</a>
        <a href="#ff-next">{words.parts.next}</a>
        <a href="#ff-causes">{words.parts.causes}</a>
        <a href="#ff-history">{words.parts.history}</a>
      </nav>
      <div className="ff-columns">
        <div className="ff-left">
          <WhatWorks session={session} say={say} />
        </div>
        <div className="ff-right" data-settled={isSettled}>
          {answer !== null && (
            <Answer
              answer={answer}
              dead={dead}
              session={session}
              setSession={setSession}
              say={say}
              clear={clear}
            />
          )}
          <History
            session={session}
            answer={answer}
            say={say}
            undo={(n) => setSession((before) => ({ ...before, done: before.done.filter((_, i) => i !== n) }))}
            clear={clear}
          />
        </div>
      </div>
    </div>
  );
}

/** A wrong tick is asked for again where the likeliest cause is as likely as this. */
const TRUST = 0.4;
/** Where the likeliest cause would spoil so many more, too little is said. */
const LITTLE = 5;

function Answer({
  answer,
  dead,
  session,
  setSession,
  say,
  clear,
}: {
  readonly answer: FaultAnswer;
  readonly dead: number;
  readonly session: FaultSession;
  readonly say: (seen: Readonly<Record<string, Seen | null>>) => void;
  readonly setSession: (change: (before: FaultSession) => FaultSession) => void;
  readonly clear: () => void;
}) {
  const { words, names } = useFaults();
  const first = answer.causes[0];
  const wrong = first !== undefined && first.probability > TRUST ? first.against : [];
  const done = (one: FaultSession["done"][number]): void =>
    setSession((before) => ({ ...before, done: [...before.done, one] }));
  const rest = names.functions.filter(({ id }) => session.seen[id] === undefined);
  const isLittle = (first?.alsoBreaks.length ?? 0) > LITTLE;
  return (
    <>
      <p className="ff-sum" role="status">
        {first !== undefined &&
          words.sum(names.suspect(first.parts[0]?.[0]?.suspect ?? -1), percentText(first.probability))}
      </p>
      {isLittle && (
        <p className="ff-note">
          {words.saidLittle}{" "}
          <button
            type="button"
            onClick={() => say(Object.fromEntries(rest.map(({ id }) => [id, "works" as const])))}
          >
            {words.restWorks}
          </button>
        </p>
      )}
      {answer.state === "mended" && <Mended rest={wrong} goOn={clear} />}
      {answer.state === "found" && (
        <Found answer={answer} mended={(suspect, helped) => done({ what: "mended", suspect, helped })} />
      )}
      {wrong.length > 0 && answer.state !== "mended" && (
        <p className="ff-note" role="status">
          {words.lookAgain(
            wrong
              .slice(0, 3)
              .map((f) => names.functionName(f))
              .join("; "),
          )}
        </p>
      )}
      {answer.state === "looking" && (
        <NextLook answer={answer} answered={(look, said) => done({ what: "looked", look, answer: said })} />
      )}
      {answer.state !== "mended" && <Causes answer={answer} dead={dead} />}
    </>
  );
}
