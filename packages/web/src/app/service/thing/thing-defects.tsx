import type { KeptDefect } from "@pinwright/contract";
import type { Thing } from "@pinwright/engine";
import { Link } from "wouter";
import { call } from "../../../api/call.ts";
import { unitAddress } from "../../bench/address.ts";
import { useWhen } from "../../bench/names.tsx";
import { useDefectWords } from "../../bench/unit/unit-defects.tsx";
import { useAsked } from "../../bench/use-asked.ts";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";

/** Defects that are listed; the count is of all. */
const MOST = 20;

/** Whether a defect is at a thing: named by where it is, or of a unit of its type. */
function isAt({ id, kind, pins, type }: Thing, { what, type: unitType, where }: KeptDefect): boolean {
  const pinIds = new Set(pins.map((pin) => pin.id));
  if (where.item === id || where.panel === id || where.point === id) return true;
  if (where.point !== undefined && (pinIds.has(where.point) || where.point.startsWith(`${id}:`))) return true;
  if (kind === "harness") return what === "harness" && unitType === id;
  const typeId = kind === "type" ? id : type?.id;
  return (what === "board" || what === "mechanism") && typeId === unitType;
}

/** What was wrong at it on the units that were built. */
export function ThingDefects({ thing }: { readonly thing: Thing }) {
  const own = useWords().serviceThing;
  const { bookId } = useDesk();
  const says = useDefectWords();
  const when = useWhen();
  const { answer } = useAsked(`defects ${bookId}`, (signal) =>
    call("defects", { parts: {}, query: { book: bookId }, signal }),
  );
  if (answer === undefined) return null;
  const found = answer.defects.filter((defect) => isAt(thing, defect));
  const open = found.filter(({ mended }) => mended === null).length;
  return (
    <section aria-labelledby="thing-defects">
      <h3 id="thing-defects">{own.defects}</h3>
      {found.length === 0 ? (
        <p className="dim">{own.noDefects}</p>
      ) : (
        <>
          <p>{own.defectsOf(found.length, open)}</p>
          <ul className="thing-list">
            {found.slice(0, MOST).map(({ unit, defect, kind, says: words, at, mended }) => (
              <li key={`${unit} ${defect}`}>
                <Link href={`${unitAddress(bookId, unit)}#defect-${defect}`}>{unit}</Link>{" "}
                {[says.what(kind), words, mended === null ? "" : says.cause(mended.cause)]
                  .filter(Boolean)
                  .join(" · ")}{" "}
                <small className="dim">{when(at)}</small>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
