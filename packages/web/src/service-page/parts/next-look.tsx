import {
  type FaultAnswer,
  type LookAnswer,
  lookKey,
  type Proposal,
  type SessionLook,
} from "@pinwright/engine";
import { useState } from "react";
import { lookCautions } from "../cautions.ts";
import { useFaults } from "../host.ts";
import { percentText } from "../likely.ts";
import { answerWords, lookAsks, lookReadings, lookSpots } from "../looks.ts";
import { SpotPictures } from "./spots.tsx";

type Answered = (look: SessionLook, answer: LookAnswer) => void;

/** The next look: what to do, where, what to read, and the answers; others may be done instead. */
export function NextLook({
  answer,
  answered,
}: {
  readonly answer: FaultAnswer;
  readonly answered: Answered;
}) {
  const { words } = useFaults();
  const [chosen, setChosen] = useState<string | null>(null);
  const { looks } = answer;
  const next = looks.find(({ look }) => lookKey(look) === chosen) ?? looks[0];
  if (next === undefined) return null;
  const others = looks.filter((one) => one !== next);
  return (
    <section className="ff-section ff-next" id="ff-next" aria-labelledby="ff-next-title">
      <h2 id="ff-next-title">{words.next}</h2>
      <LookCard
        proposal={next}
        answered={(look, said) => {
          setChosen(null);
          answered(look, said);
        }}
      />
      {others.length > 0 && (
        <details className="ff-others">
          <summary>{words.otherLooks}</summary>
          <ul>
            {others.map((one) => (
              <OtherLook key={lookKey(one.look)} proposal={one} choose={() => setChosen(lookKey(one.look))} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function OtherLook({ proposal, choose }: { readonly proposal: Proposal; readonly choose: () => void }) {
  const faults = useFaults();
  const { words } = faults;
  const where = lookSpots(faults, proposal.look)
    .map(({ text }) => text)
    .join(" – ");
  return (
    <li>
      <span>
        {words.looks[proposal.look.kind]}: {where}
      </span>{" "}
      <button type="button" onClick={choose}>
        {words.choose}
      </button>
    </li>
  );
}

function LookCard({ proposal, answered }: { readonly proposal: Proposal; readonly answered: Answered }) {
  const faults = useFaults();
  const { words } = faults;
  const { look, minutes, danger } = proposal;
  const spots = lookSpots(faults, look);
  const isProbed = look.kind === "ohms" || look.kind === "part" || look.kind === "volts";
  return (
    <div className="ff-card">
      <h3>{words.looks[look.kind]}</h3>
      <p className="ff-cost" data-danger={danger}>
        {words.minutes(String(minutes))} · {words.dangers[danger]}
      </p>
      <Cautions danger={danger} />
      <p>{lookAsks(faults, look)}</p>
      {isProbed && (
        <dl className="ff-probes">
          {spots.map(({ text }, n) => (
            <div key={n === 0 ? "black" : "red"} data-probe={n === 0 ? "black" : "red"}>
              <dt>{n === 0 ? words.probes.black : words.probes.red}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      )}
      <Readings proposal={proposal} />
      <Answers proposal={proposal} answered={answered} />
      <SpotPictures spots={spots} />
    </div>
  );
}

function Cautions({ danger }: { readonly danger: 0 | 1 | 2 }) {
  const faults = useFaults();
  const list = lookCautions(faults, danger);
  if (list.length === 0) return null;
  return (
    <div className="ff-caution">
      <strong>{faults.words.cautions}</strong>
      {list.map((text) => (
        <p key={text}>{text}</p>
      ))}
    </div>
  );
}

function Readings({ proposal: { look, good } }: { readonly proposal: Proposal }) {
  const faults = useFaults();
  const readings = lookReadings(faults, look, good);
  if (readings === null) return null;
  return (
    <dl className="ff-reads">
      <div>
        <dt>{faults.words.reads.good}</dt>
        <dd>{readings.good}</dd>
      </div>
      <div>
        <dt>{faults.words.reads.bad}</dt>
        <dd>{readings.bad}</dd>
      </div>
    </dl>
  );
}

function Answers({ proposal, answered }: { readonly proposal: Proposal; readonly answered: Answered }) {
  const { words, names } = useFaults();
  const { look, good, ifYes, ifNo } = proposal;
  const [first, second] = answerWords(words, look);
  // What is measured counts as good or bad; a short that beeps is bad.
  const isTurned = look.kind === "ohms" && good === "no";
  const told = [
    { text: first, says: isTurned ? "no" : "yes" },
    { text: second, says: isTurned ? "yes" : "no" },
  ] as const;
  return (
    <>
      <div className="ff-answers">
        {told.map(({ text, says }) => (
          <button key={says} type="button" className="ff-main" onClick={() => answered(look, says)}>
            {text}
          </button>
        ))}
        <button type="button" onClick={() => answered(look, "unsure")}>
          {words.answers.unsure}
        </button>
      </div>
      <ul className="ff-dim ff-then">
        {told.map(({ text, says }) => {
          const then = says === "yes" ? ifYes : ifNo;
          return (
            then !== null && (
              <li key={says}>
                {words.wouldBe(text, names.suspect(then.suspect), percentText(then.probability))}
              </li>
            )
          );
        })}
      </ul>
    </>
  );
}
