import { Link } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useDesk } from "../../book/desk.tsx";
import { ASSEMBLY_SHEET_KINDS, MACHINE_SHEET_KINDS, SHEET_KINDS } from "../../sheets/sheet-kinds.ts";
import { SheetLinks } from "../../sheets/sheet-links.tsx";
import { usePick, useWords } from "../../words.tsx";
import { serviceAddress, thingAddress } from "../address.ts";
import { NameLink, Names } from "./thing-links.tsx";

type Thing = ViewEntry<"thing">["thing"];

/** Points of boards that drive or read it. */
export function Controls({ thing: { controls } }: { readonly thing: Thing }) {
  const own = useWords().serviceThing;
  const pick = usePick();
  const { bookId } = useDesk();
  if (controls.length === 0) return null;
  return (
    <section>
      <h3>{own.controls}</h3>
      <ul className="thing-list">
        {controls.map(({ board, address, pointId, kind, control }) => (
          <li key={`${pointId} ${control}`}>
            <Link href={thingAddress(bookId, pointId)}>
              {own.controlOf(
                pick(board.labels.en, board.labels.zh) || board.id,
                pointId.slice(board.id.length + 1),
                address,
              )}
            </Link>{" "}
            <small className="dim">{own.controlKinds[kind]}</small>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What fails together with it, and why. */
export function Shares({ thing: { shares } }: { readonly thing: Thing }) {
  const own = useWords().serviceThing;
  if (shares.length === 0) return null;
  return (
    <section aria-labelledby="thing-shares">
      <h3 id="thing-shares">{own.shares}</h3>
      <dl className="thing-shares">
        {shares.map(({ kind, of, things }) => (
          <div key={`${kind} ${of.id}`}>
            <dt>
              {own.shareKinds[kind]}
              <br />
              <NameLink named={of} />
            </dt>
            <dd>
              <Names things={things} />
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** Its parts, with what they are ordered by. */
export function Parts({ thing: { parts } }: { readonly thing: Thing }) {
  const own = useWords().serviceThing;
  if (parts.length === 0) return null;
  return (
    <section>
      <h3>{own.parts}</h3>
      <ul className="thing-list">
        {parts.map((part, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: one part can be in it for two reasons
          <li key={`${part.id} ${part.why} ${n}`}>
            {part.quantity !== "" && `${part.quantity} × `}
            <NameLink named={part} />{" "}
            <small className="dim">
              {part.orderNumber === "" ? own.noOrder : `${own.order} ${part.orderNumber}`}
            </small>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The screws that hold it, by their type. */
export function Screws({ thing: { screws } }: { readonly thing: Thing }) {
  const own = useWords().serviceThing;
  const pick = usePick();
  if (screws.length === 0) return null;
  return (
    <section>
      <h3>{own.screws}</h3>
      <ul className="thing-list">
        {screws.map(({ id, labels, ids }) => (
          <li key={id}>
            {own.screwsOf(ids.length, pick(labels.en, labels.zh) || id)}{" "}
            <Names things={ids.map((one) => ({ id: one, labels: { en: one, zh: one } }))} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Steps of assembly in which it is handled. */
export function Steps({ thing: { steps } }: { readonly thing: Thing }) {
  const own = useWords().serviceThing;
  if (steps.length === 0) return null;
  return (
    <section>
      <h3>{own.steps}</h3>
      <ul className="thing-list">
        {steps.map((step) => (
          <li key={step.id}>
            {step.number}. <NameLink named={step} /> <small className="dim">{own.stepWhys[step.why]}</small>
          </li>
        ))}
      </ul>
    </section>
  );
}

const PRINTED_KINDS = [...SHEET_KINDS, ...MACHINE_SHEET_KINDS, ...ASSEMBLY_SHEET_KINDS];

/** Kinds of sheet on which it stands, and the service book. */
export function Printed({ sheets }: { readonly sheets: readonly string[] }) {
  const own = useWords().serviceThing;
  const { bookId } = useDesk();
  // The last but one part of a name is the kind, of a pinboard with its variant.
  const named = new Set(sheets.map((name) => name.split(".").at(-2) ?? ""));
  const kinds = PRINTED_KINDS.filter((kind) =>
    [...named].some((name) => name === kind || name.startsWith(`${kind}-`)),
  );
  return (
    <section>
      <h3>{own.sheets}</h3>
      <SheetLinks title="" kinds={kinds} />
      <Link href={serviceAddress(bookId, "book")}>{own.book}</Link>
    </section>
  );
}
