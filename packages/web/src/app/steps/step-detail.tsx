import { Button, NumberInput } from "@mantine/core";
import { type FormEvent, useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useMay } from "../session/session.tsx";
import { usePick, useWords } from "../words.tsx";
import { stepAddress } from "./address.ts";
import { useChoose } from "./use-choose.ts";

type Step = ViewEntry<"stepLines">;

/** Numbers of the steps that come before, each leading there. */
export function After({ step }: { readonly step: Step }) {
  const { bookId } = useDesk();
  const pick = usePick();
  return step.after.map((one, i) => (
    <span key={one.id}>
      {i > 0 && ", "}
      <Link href={stepAddress(bookId, one.id)} title={pick(one.label, one.labelZh)}>
        {one.number}
      </Link>
    </span>
  ));
}

/** A step's time motion by motion, why it comes after others, and its time as somebody sets it. */
export function StepDetail({ step }: { readonly step: Step }) {
  const words = useWords();
  const own = words.steps;
  const pick = usePick();
  const { bookId } = useDesk();
  const sum = step.motions.reduce((total, { seconds }) => total + seconds, 0);
  return (
    <div className="step-detail">
      <div>
        <h4>{own.timeBy}</h4>
        {step.motions.length === 0 ? (
          <p className="dim">{own.noMotions}</p>
        ) : (
          <table className="plain">
            <tbody>
              {step.motions.map((motion) => (
                <tr key={`${motion.kind} ${motion.set}`}>
                  <th scope="row">{own.motionNames[motion.kind]}</th>
                  <td className="end">{own.motionCount(motion.kind, motion.count)}</td>
                  <td className="end">{own.secondsText(motion.seconds)}</td>
                </tr>
              ))}
              {step.seconds - sum > 0.05 && step.secondsFrom === "motions" && (
                <tr>
                  <th scope="row">{own.rest}</th>
                  <td />
                  <td className="end">{own.secondsText(step.seconds - sum)}</td>
                </tr>
              )}
              <tr>
                <th scope="row">
                  <b>{own.total}</b>
                </th>
                <td />
                <td className="end">
                  <b>{own.minutes(step.seconds)}</b>
                </td>
              </tr>
            </tbody>
          </table>
        )}
        <TimeForm key={`${step.seconds}`} step={step} />
      </div>
      <div>
        <h4>{own.comesAfter}</h4>
        {step.after.length === 0 ? (
          <p className="dim">{own.afterNothing}</p>
        ) : (
          <ul className="reasons">
            {step.after.map((one) => (
              <li key={one.id}>
                <Link href={stepAddress(bookId, one.id)}>
                  {one.number}. {pick(one.label, one.labelZh) || one.id}
                </Link>
                {one.reasons.map(({ why, at }) => (
                  <span key={`${why} ${at}`} className="reason">
                    {own.why[why]}
                    {at !== "" && <span className="dim"> ({at})</span>}
                  </span>
                ))}
              </li>
            ))}
          </ul>
        )}
      </div>
    </div>
  );
}

/** Sets a step's minutes, or leaves them to its motions again. */
function TimeForm({ step }: { readonly step: Step }) {
  const words = useWords();
  const own = words.steps;
  const pick = usePick();
  const mayEdit = useMay("designer");
  const { choose, failed } = useChoose();
  const [minutes, setMinutes] = useState(Number((step.seconds / 60).toFixed(2)));
  if (!mayEdit) return null;
  const name = pick(step.label, step.labelZh) || step.id;
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    choose("time", step.id, String(minutes), own.notes.time(step.number, name, minutes));
  };
  return (
    <form className="time-form" onSubmit={submit}>
      <NumberInput
        label={own.setTime}
        suffix={own.minuteUnit}
        min={0}
        max={10_000}
        decimalScale={2}
        value={minutes}
        onChange={(value) => setMinutes(Number(value))}
      />
      <Button type="submit" variant="default" disabled={!(minutes >= 0)}>
        {own.setTimeDo}
      </Button>
      {step.chosen.time && (
        <Button
          variant="default"
          onClick={() => choose("time", step.id, null, own.notes.timeFree(step.number, name))}
        >
          {own.timeFree}
        </Button>
      )}
      {failed !== "" && <p className="error-text">{failed}</p>}
    </form>
  );
}
