import { Checkbox, NativeSelect, NumberInput, Switch } from "@mantine/core";
import { useState } from "react";
import type { Entries } from "../book/desk-client.ts";
import { usePick, useWords } from "../words.tsx";
import type { Plan, Question } from "./plan-rows.ts";

const KINDS = ["book-stations", "fewest-places", "least-takt"] as const;
type Kind = (typeof KINDS)[number];
/** Per cent by which everything takes longer on a bad day: common practice, no source. */
const LONGER_PCT = 30;
/** Places that are asked for at first when the book has no stations. */
const FEW_PLACES = 8;

/** What is asked of the balance, and what is different from a usual day. */
export function QuestionForm({
  question,
  ask,
  stations,
  plan,
  taktMin,
}: {
  readonly question: Question;
  readonly ask: (question: Question) => void;
  readonly stations: Entries<"stations">;
  /** The plan of the usual day, for its places. */
  readonly plan: Plan | null;
  readonly taktMin: number;
}) {
  const { question: words, minuteUnit: unit } = useWords().steps;
  const people = [...stations.values()].reduce((sum, { people: n }) => sum + n, 0);
  const [takt, setTakt] = useState(taktMin);
  const [places, setPlaces] = useState(people === 0 ? FEW_PLACES : people);
  const { kind } = question.ask;
  const askOf = (next: Kind, taktNow = takt, placesNow = places): Question["ask"] =>
    next === "book-stations"
      ? { kind: next }
      : next === "fewest-places"
        ? { kind: next, taktS: taktNow * 60 }
        : { kind: next, places: placesNow };
  const kinds = stations.size === 0 ? KINDS.slice(1) : KINDS;
  return (
    <form className="question" onSubmit={(event) => event.preventDefault()}>
      <NativeSelect
        label={words.ask}
        value={kind}
        data={kinds.map((value) => ({ value, label: words.kinds[value] }))}
        onChange={(event) => {
          const { value } = event.currentTarget;
          const next = KINDS.find((one) => one === value) ?? "book-stations";
          ask({ ...question, ask: askOf(next), absent: [] });
        }}
      />
      {kind === "fewest-places" && (
        <NumberInput
          label={words.takt}
          suffix={unit}
          min={1}
          max={10_000}
          value={takt}
          onChange={(value) => {
            const minutes = Number(value);
            if (!(minutes > 0)) return;
            setTakt(minutes);
            ask({ ...question, ask: askOf(kind, minutes) });
          }}
        />
      )}
      {kind === "least-takt" && (
        <NumberInput
          label={words.places}
          min={1}
          max={500}
          allowDecimal={false}
          value={places}
          onChange={(value) => {
            const count = Number(value);
            if (!(count >= 1)) return;
            setPlaces(count);
            ask({ ...question, ask: askOf(kind, takt, count), absent: [] });
          }}
        />
      )}
      <fieldset>
        <legend>{words.today}</legend>
        <Switch
          label={words.longer(LONGER_PCT)}
          checked={question.longerPct > 0}
          onChange={(event) => ask({ ...question, longerPct: event.currentTarget.checked ? LONGER_PCT : 0 })}
        />
        {kind === "book-stations" && (
          <Switch
            label={words.skills}
            checked={question.skills}
            onChange={(event) => ask({ ...question, skills: event.currentTarget.checked })}
          />
        )}
        {kind !== "fewest-places" && plan !== null && <Absent question={question} ask={ask} plan={plan} />}
      </fieldset>
    </form>
  );
}

/** Who is missing. */
function Absent({
  question,
  ask,
  plan,
}: {
  readonly question: Question;
  readonly ask: (question: Question) => void;
  readonly plan: Plan;
}) {
  const words = useWords().steps.question;
  const pick = usePick();
  const missing = new Set(question.absent);
  return (
    <details className="absent">
      <summary>
        {words.absent} {missing.size > 0 && <b>{missing.size}</b>}
      </summary>
      <div>
        {plan.loads.map(({ placeId, labels }) => (
          <Checkbox
            key={placeId}
            label={pick(labels.en, labels.zh)}
            checked={missing.has(placeId)}
            disabled={!missing.has(placeId) && missing.size >= plan.loads.length - 1}
            onChange={(event) =>
              ask({
                ...question,
                absent: event.currentTarget.checked
                  ? [...missing, placeId]
                  : question.absent.filter((one) => one !== placeId),
              })
            }
          />
        ))}
      </div>
    </details>
  );
}
