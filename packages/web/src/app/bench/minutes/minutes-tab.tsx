import { Button, Checkbox } from "@mantine/core";
import { useMemo, useState } from "react";
import { Link } from "wouter";
import { call } from "../../../api/call.ts";
import { useDesk, useView } from "../../book/desk.tsx";
import { useMay } from "../../session/session.tsx";
import { stepAddress } from "../../steps/address.ts";
import { useChoose } from "../../steps/use-choose.ts";
import { useWords } from "../../words.tsx";
import { useNames } from "../names.tsx";
import { useAsked } from "../use-asked.ts";
import { type ComparedStep, compared, isOff } from "./compared.ts";

/** Fewer times than this prove little; a choice, no source. */
const FEW = 3;

/** Minutes that the floor measured beside those of the plan; a designer may take them over, step by step. */
export default function MinutesTab() {
  const { benchRecords, common } = useWords();
  const own = benchRecords.minutes;
  const { bookId } = useDesk();
  const lines = useView("stepLines", null);
  const [isAll, setAll] = useState(false);
  // Every step that was ever done is read for it, so it is not asked again by itself.
  const { answer, failed, again } = useAsked(
    `minutes ${bookId}`,
    (signal) => call("stepMinutes", { parts: {}, query: { book: bookId }, signal }),
    "once",
  );
  const { choose, failed: notTaken } = useChoose();
  const steps = useMemo(() => {
    if (answer === undefined || lines === null) return undefined;
    return compared(answer, (step) => {
      const line = lines.get(step);
      return line === undefined ? null : { minutes: line.seconds / 60, times: line.times };
    });
  }, [answer, lines]);
  const shown = steps?.filter((step) => isAll || isOff(step));
  return (
    <div className="currents-body">
      <div className="bench-head">
        <h2>{own.title}</h2>
        {answer !== undefined && (
          <Button variant="default" onClick={again}>
            {own.again}
          </Button>
        )}
      </div>
      <p className="dim">{own.about}</p>
      {failed !== "" && <p className="error-text">{failed}</p>}
      {notTaken !== "" && <p className="error-text">{notTaken}</p>}
      {steps === undefined || shown === undefined ? (
        failed === "" && <p className="dim">{common.loading}</p>
      ) : steps.length === 0 ? (
        <p>{own.none}</p>
      ) : (
        <>
          <Checkbox
            label={own.all}
            checked={isAll}
            onChange={(event) => setAll(event.currentTarget.checked)}
          />
          {shown.length === 0 ? <p>{own.asPlanned}</p> : <Steps steps={shown} choose={choose} />}
        </>
      )}
    </div>
  );
}

function Steps({
  steps,
  choose,
}: {
  readonly steps: readonly ComparedStep[];
  readonly choose: ReturnType<typeof useChoose>["choose"];
}) {
  const { benchRecords } = useWords();
  const own = benchRecords.minutes;
  return (
    <div className="plain-scroll">
      <table className="plain">
        <thead>
          <tr>
            <th scope="col">{own.step}</th>
            <th scope="col">{own.of}</th>
            <th scope="col" className="end">
              {own.planned}
            </th>
            <th scope="col" className="end">
              {own.measured}
            </th>
            <th scope="col" className="end">
              {own.difference}
            </th>
            <th scope="col" className="end">
              {own.count}
            </th>
            <th scope="col" className="end">
              {own.range}
            </th>
            <td />
          </tr>
        </thead>
        <tbody>
          {steps.map((step) => (
            <Row key={`${step.what} ${step.type} ${step.step}`} step={step} choose={choose} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Row({
  step,
  choose,
}: {
  readonly step: ComparedStep;
  readonly choose: ReturnType<typeof useChoose>["choose"];
}) {
  const { benchRecords } = useWords();
  const own = benchRecords.minutes;
  const { bookId } = useDesk();
  const names = useNames();
  const mayTake = useMay("designer");
  const lines = useView("stepLines", null);
  const line = lines?.get(step.step);
  const isOfBook = step.plannedMinutes !== null;
  const name = names.step(step.step);
  const minutes = Number(step.medianMinutes.toPrecision(3));
  return (
    <tr>
      <th scope="row">
        {isOfBook ? <Link href={stepAddress(bookId, step.step)}>{name}</Link> : name}
        {line?.chosen.time === true && isOfBook && <small className="dim">{own.taken}</small>}
      </th>
      <td>{names.type(step.what, step.type)}</td>
      <td className="end" title={step.plannedMinutes === null ? undefined : String(step.plannedMinutes)}>
        {step.plannedMinutes === null ? (
          <span className="dim">{own.notPlanned}</span>
        ) : (
          own.minutes(step.plannedMinutes)
        )}
      </td>
      <td className="end" title={String(step.medianMinutes)}>
        {own.minutes(step.medianMinutes)}
      </td>
      <td className="end">{step.share !== null && own.percent(step.share)}</td>
      <td className="end">
        {step.count < FEW ? <span className="amber-text">{own.few(step.count)}</span> : step.count}
      </td>
      <td className="end">{own.fromTo(step.leastMinutes, step.mostMinutes)}</td>
      <td>
        {mayTake && isOfBook && isOff(step) && (
          <Button
            size="compact-sm"
            variant="default"
            aria-label={own.takeTitle(name, minutes)}
            onClick={() =>
              choose("time", step.step, String(minutes * step.times), own.note(name, minutes, step.count))
            }
          >
            {own.take}
          </Button>
        )}
      </td>
    </tr>
  );
}
