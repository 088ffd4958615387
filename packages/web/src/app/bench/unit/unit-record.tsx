import { Button, Checkbox } from "@mantine/core";
import type { Fact } from "@pinwright/contract";
import { useMemo, useState } from "react";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { useMay, useSession } from "../../session/session.tsx";
import { useWords } from "../../words.tsx";
import { unitAddress } from "../address.ts";
import { usePeople, useWhen } from "../names.tsx";
import { CorrectForm } from "./correct-form.tsx";
import { mayCorrect } from "./correction.ts";
import { factKey, useFactText } from "./fact-text.ts";
import type { KnownUnit, UnitFact } from "./use-unit.ts";

/** Records that are shown before all are asked for; the newest. */
const FIRST = 60;

/** Every record of a unit in the order of time, with corrections as what they are. */
export function UnitRecord({ unit, known }: { readonly unit: string; readonly known: KnownUnit }) {
  const { benchUnit: own } = useWords();
  const mayCorrectHere = useMay("lead");
  const [withInside, setWithInside] = useState(false);
  const [isAll, setAll] = useState(false);
  const { byKey, corrections } = useMemo(() => index(known.facts), [known.facts]);
  const facts = known.facts.filter(({ fact }) => withInside || isOf(fact, unit, byKey));
  const hasInside = (known.state?.inside.length ?? 0) > 0;
  const shown = isAll ? facts : facts.slice(-FIRST);
  return (
    <section aria-labelledby="unit-record" className="unit-record">
      <h3 id="unit-record">{own.record.title}</h3>
      <p className="dim">{own.record.about}</p>
      {hasInside && (
        <Checkbox
          label={own.record.within}
          checked={withInside}
          onChange={(event) => setWithInside(event.currentTarget.checked)}
        />
      )}
      {shown.length < facts.length && (
        <button type="button" className="link-button" onClick={() => setAll(true)}>
          {own.record.all(facts.length)}
        </button>
      )}
      <ol>
        {shown.map((one) => (
          <li key={factKey(one.fact)}>
            <Line
              one={one}
              unit={unit}
              byKey={byKey}
              correction={corrections.get(factKey(one.fact))}
              mayCorrectHere={mayCorrectHere}
            />
          </li>
        ))}
      </ol>
    </section>
  );
}

type ByKey = ReadonlyMap<string, Fact>;

function index(facts: readonly UnitFact[]): {
  readonly byKey: ByKey;
  /** The first correction of each record. */
  readonly corrections: ReadonlyMap<string, Fact>;
} {
  const corrections = new Map<string, Fact>();
  for (const { fact } of facts)
    if (fact.body.kind === "correction") {
      const key = factKey(fact.body);
      if (!corrections.has(key)) corrections.set(key, fact);
    }
  return { byKey: new Map(facts.map(({ fact }) => [factKey(fact), fact])), corrections };
}

/** Whether a record speaks of a unit itself; a correction speaks of what its record speaks of. */
function isOf(fact: Fact, unit: string, byKey: ByKey): boolean {
  const { body } = fact;
  if (body.kind === "correction") {
    const corrected = byKey.get(factKey(body));
    return corrected === undefined || corrected === fact || isOf(corrected, unit, byKey);
  }
  if (body.kind === "fitted" && body.into === unit) return true;
  if (body.kind === "removed" && body.from === unit) return true;
  return "unit" in body && body.unit === unit;
}

function Line({
  one: { fact, isHere },
  unit,
  byKey,
  correction,
  mayCorrectHere,
}: {
  readonly one: UnitFact;
  readonly unit: string;
  readonly byKey: ByKey;
  readonly correction: Fact | undefined;
  readonly mayCorrectHere: boolean;
}) {
  const { benchUnit: own } = useWords();
  const { bookId } = useDesk();
  const textOf = useFactText();
  const nameOf = usePeople();
  const when = useWhen();
  const { status } = useSession();
  const [isOpen, setOpen] = useState(false);
  const { body } = fact;
  const { kind, says } = textOf(body);
  const about = body.kind === "correction" ? byKey.get(factKey(body)) : undefined;
  const aboutText = about === undefined ? null : textOf(about.body);
  const other = "unit" in body && body.unit !== unit ? body.unit : null;
  const text = `${kind} ${says}`.trim();
  return (
    <>
      <time className="dim" dateTime={fact.at}>
        {when(fact.at)}
      </time>
      <span className="dim unit-who">{nameOf(fact.person)}</span>
      <div className="unit-says">
        <span className={correction === undefined ? "" : "struck"}>
          <b>{kind}</b>{" "}
          {body.kind === "correction"
            ? own.says.correction(
                aboutText === null
                  ? own.says.unknownRecord
                  : `“${aboutText.kind} ${aboutText.says}”`.replace(" ”", "”"),
                says,
              )
            : says}
        </span>
        {other !== null && body.kind !== "fitted" && body.kind !== "removed" && (
          <>
            {" "}
            <Link href={unitAddress(bookId, other)}>{other}</Link>
          </>
        )}
        {isHere && <small className="amber-text">{own.record.here}</small>}
        {correction?.body.kind === "correction" && (
          <small className="amber-text">
            {own.record.corrected(nameOf(correction.person), when(correction.at), correction.body.why)}
          </small>
        )}
        {isOpen && <CorrectForm fact={fact} title={text} close={() => setOpen(false)} />}
      </div>
      {mayCorrectHere &&
      correction === undefined &&
      mayCorrect(fact, status.person?.id ?? "local") &&
      !isOpen ? (
        <Button
          size="compact-sm"
          variant="subtle"
          onClick={() => setOpen(true)}
          aria-label={`${own.record.correct} ${text}`}
        >
          {own.record.correct}
        </Button>
      ) : (
        <span />
      )}
    </>
  );
}
