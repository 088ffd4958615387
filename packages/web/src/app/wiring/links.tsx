import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { usePick, useWords } from "../words.tsx";

/** Leads to a net, wire, landing, point or item in Wiring. */
export function WiringLink({ id, text }: { readonly id: string; readonly text?: string }) {
  const { bookId } = useDesk();
  return <Link href={addressOf(bookId, { kind: "connector", id })}>{text ?? id}</Link>;
}

/** Leads to a harness: its number and name. */
export function HarnessLink({
  harness,
}: {
  readonly harness: {
    readonly id: string;
    readonly number: number;
    readonly label: { readonly en: string; readonly zh: string };
  };
}) {
  const { bookId } = useDesk();
  const pick = usePick();
  return (
    <Link href={addressOf(bookId, { kind: "harness", id: harness.id })}>
      H{harness.number} {pick(harness.label.en, harness.label.zh)}
    </Link>
  );
}

type Place = ViewEntry<"wire">["a"];

/** An end of a wire: leads to the point; under it what that is. */
export function EndText({ end }: { readonly end: Place }) {
  const words = useWords().wiring;
  const pick = usePick();
  if (end.landingId === null) return <span>{words.splice(end.cavity)}</span>;
  const name = [pick(end.label.en, end.label.zh), end.use].filter(Boolean).join(" · ");
  return (
    <span>
      <WiringLink id={end.id} />
      {name !== "" && <small>{name}</small>}
    </span>
  );
}

/** An end of a wire for someone with the housing in hand: landing and, big, its cavity or terminal. */
export function EndAtHousing({ end }: { readonly end: Place }) {
  const words = useWords().wiring;
  const pick = usePick();
  if (end.landingId === null) return <span>{words.splice(end.cavity)}</span>;
  const name = [pick(end.label.en, end.label.zh), end.use].filter(Boolean).join(" · ");
  return (
    <span>
      <WiringLink id={end.id} text={end.landingId} /> <b className="cavity-no">{end.cavity}</b>
      {name !== "" && <small>{name}</small>}
    </span>
  );
}
