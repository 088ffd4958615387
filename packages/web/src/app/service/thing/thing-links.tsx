import type { NamedThing } from "@pinwright/engine";
import { useState } from "react";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { usePick, useWords } from "../../words.tsx";
import { thingAddress } from "../address.ts";

/** The name of a thing, leading to its page; where the name is not its id, the id small behind it. */
export function NameLink({ named: { id, labels } }: { readonly named: NamedThing }) {
  const { bookId } = useDesk();
  const pick = usePick();
  const name = pick(labels.en, labels.zh) || id;
  return (
    <>
      <Link href={thingAddress(bookId, id)}>{name}</Link>
      {name !== id && <small className="dim"> {id}</small>}
    </>
  );
}

/** Names that are shown before more are asked for. */
const FIRST = 12;

/** Names of things, the first ones at once. */
export function Names({ things }: { readonly things: readonly NamedThing[] }) {
  const own = useWords().serviceThing;
  const { bookId } = useDesk();
  const pick = usePick();
  const [all, setAll] = useState(false);
  const shown = all ? things : things.slice(0, FIRST);
  return (
    <ul className="thing-names">
      {shown.map(({ id, labels }) => (
        <li key={id}>
          <Link href={thingAddress(bookId, id)} title={id}>
            {pick(labels.en, labels.zh) || id}
          </Link>
        </li>
      ))}
      {things.length > shown.length && (
        <li>
          <button type="button" className="link-button" onClick={() => setAll(true)}>
            {own.moreThings(things.length - shown.length)}
          </button>
        </li>
      )}
    </ul>
  );
}
