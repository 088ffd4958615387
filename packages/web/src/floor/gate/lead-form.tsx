import type { FactBody } from "@pinwright/contract";
import { type FormEvent, useState } from "react";
import { call, Refused, Unreachable } from "../../api/call.ts";
import { useMay, useSession } from "../../app/session/session.tsx";
import { useWords } from "../../app/words.tsx";
import { useDevice } from "../device.tsx";
import { madeUp } from "../outbox/outbox.ts";

/**
 * Something that takes a lead: who works here shows it, and the lead signs on the same tablet, with why. It is a stream of
 * its own, sent at once; the same try sent twice counts once.
 */
export function LeadForm({
  title,
  reasons,
  bodiesOf,
  done,
  leave,
}: {
  readonly title: string;
  /** Reasons that are tapped instead of typed. */
  readonly reasons: readonly string[];
  readonly bodiesOf: (why: string) => readonly FactBody[];
  readonly done: () => void;
  readonly leave: () => void;
}) {
  const { floor, floorBench } = useWords();
  const own = floorBench.lead;
  const { status } = useSession();
  const isLead = useMay("lead");
  const { write } = useDevice();
  const [reason, setReason] = useState("");
  const [text, setText] = useState("");
  const [name, setName] = useState("");
  const [secret, setSecret] = useState("");
  const [wrong, setWrong] = useState("");
  const [busy, setBusy] = useState(false);
  const [said] = useState(() => ({ stream: madeUp("p"), at: new Date().toISOString() }));
  const why = [reason, text.trim()].filter((part) => part !== "").join(": ");
  const record = async (): Promise<void> => {
    const bodies = [...bodiesOf(why)];
    if (isLead) await write(bodies);
    else
      await call("recordInPerson", {
        parts: {},
        body: { name, secret, ...said, bodies },
        token: status.token,
      });
  };
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setBusy(true);
    record()
      .then(done, (error: unknown) => {
        setSecret("");
        setWrong(troubleOf(error, own));
      })
      .finally(() => setBusy(false));
  };
  return (
    <form className="floor-body floor-lead" onSubmit={submit}>
      <h1>{title}</h1>
      <p>{isLead ? own.self : own.how}</p>
      <fieldset className="floor-tiles">
        <legend>{own.why}</legend>
        {reasons.map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={one === reason}
            onClick={() => setReason(one === reason ? "" : one)}
          >
            {one}
          </button>
        ))}
      </fieldset>
      <label className="floor-field">
        {own.whyText}
        <input value={text} maxLength={500} onChange={(event) => setText(event.currentTarget.value)} />
      </label>
      {!isLead && (
        <div className="floor-two">
          <label className="floor-field">
            {own.name}
            <input
              value={name}
              required
              autoComplete="off"
              onChange={(event) => setName(event.currentTarget.value)}
            />
          </label>
          <label className="floor-field">
            {own.secret}
            <input
              type="password"
              value={secret}
              required
              // The tablet keeps no password of a lead.
              autoComplete="off"
              onChange={(event) => setSecret(event.currentTarget.value)}
            />
          </label>
        </div>
      )}
      <p role="alert" className="error-text">
        {wrong}
      </p>
      <div className="floor-buttons">
        <button type="button" className="floor-plain" onClick={leave}>
          {floor.back}
        </button>
        <button type="submit" className="floor-main" disabled={why === "" || busy}>
          {own.record}
        </button>
      </div>
    </form>
  );
}

type LeadWords = ReturnType<typeof useWords>["floorBench"]["lead"];

function troubleOf(error: unknown, own: LeadWords): string {
  if (error instanceof Unreachable) return own.away;
  const message = error instanceof Error ? error.message : String(error);
  switch (error instanceof Refused ? error.problem.code : null) {
    case "wrong-secret":
      return own.wrong;
    case "too-many-tries":
      return own.wait;
    case "not-allowed":
      return own.notLead;
    default:
      return `${own.failed} ${message}`;
  }
}
