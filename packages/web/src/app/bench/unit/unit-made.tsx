import type { Source, UnitState } from "@pinwright/engine";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { partAddress } from "../../parts/address.ts";
import { useWords } from "../../words.tsx";
import { benchAddress } from "../address.ts";
import { useNames, usePeople, useWhen } from "../names.tsx";
import { useBlockName } from "./block-text.ts";

/** Lots, alternates and concessions; what was lifted, by whom and why; notes. */
export function UnitMade({ state }: { readonly state: UnitState }) {
  const { benchUnit: own } = useWords();
  const { bookId } = useDesk();
  const names = useNames();
  const blockName = useBlockName();
  const { lots, alternates, overrides, notes } = state;
  return (
    <>
      <section aria-labelledby="unit-made">
        <h3 id="unit-made">{own.made.title}</h3>
        {lots.length + alternates.length === 0 ? (
          <p className="dim">{own.made.none}</p>
        ) : (
          <ul className="unit-lines">
            {lots.map((lot) => (
              <li key={keyOf(lot.source)}>
                <Link href={benchAddress(bookId, "trace", { part: lot.part, lot: lot.lot })}>
                  {own.made.lot(names.part(lot.part), lot.lot)}
                </Link>
                {lot.quantity !== undefined && ` · ${own.made.quantity(lot.quantity)}`}
                <Said source={lot.source} />
              </li>
            ))}
            {alternates.map((alternate) => (
              <li key={keyOf(alternate.source)}>
                <b>{own.made.allowed[alternate.allowed]}</b>{" "}
                <Link href={partAddress(bookId, alternate.part)}>
                  {own.made.alternate(names.part(alternate.instead), names.part(alternate.part))}
                </Link>
                : {alternate.why}
                <Said source={alternate.source} />
              </li>
            ))}
          </ul>
        )}
      </section>
      {overrides.length > 0 && (
        <section aria-labelledby="unit-overrides">
          <h3 id="unit-overrides">{own.overrides.title}</h3>
          <ul className="unit-lines">
            {overrides.map((override) => (
              <li key={keyOf(override.source)}>
                <b>{blockName(override)}</b>: {override.why}
                <Said source={override.source} />
              </li>
            ))}
          </ul>
        </section>
      )}
      {notes.length > 0 && (
        <section aria-labelledby="unit-notes">
          <h3 id="unit-notes">{own.notes.title}</h3>
          <ul className="unit-lines">
            {notes.map((note) => (
              <li key={keyOf(note.source)}>
                {note.says}
                <Said source={note.source} />
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

const keyOf = ({ stream, seq }: Source): string => `${stream} ${seq}`;

/** Who said so, and when. */
function Said({ source }: { readonly source: Source }) {
  const { benchUnit: own } = useWords();
  const nameOf = usePeople();
  const when = useWhen();
  return <small className="dim">{own.byOn(nameOf(source.person), when(source.at))}</small>;
}
