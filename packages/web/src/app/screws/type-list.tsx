import type { ViewEntry } from "../../worker/protocol.ts";
import type { Entries } from "../book/desk-client.ts";
import { usePick, useWords } from "../words.tsx";
import { ScrewSign } from "./sign.tsx";

/** Types with their signs and how many there are; one that is picked is shown up everywhere. */
export function TypeList({
  list,
  types,
  typeId,
  choose,
}: {
  readonly list: readonly { readonly typeId: string; readonly count: number }[];
  readonly types: Entries<"screwTypes">;
  readonly typeId: string | null;
  readonly choose: (typeId: string | null) => void;
}) {
  const words = useWords().screws;
  return (
    <ul className="type-list" aria-label={words.types}>
      {list.map(({ typeId: id, count }) => (
        <li key={id}>
          <button
            type="button"
            aria-pressed={id === typeId}
            title={id}
            onClick={() => choose(id === typeId ? null : id)}
          >
            <ScrewSign type={types.get(id)} />
            <span className="type-count">{words.times(count)}</span>
            <TypeName id={id} type={types.get(id)} />
          </button>
        </li>
      ))}
    </ul>
  );
}

/** What a type is called, and its size. */
export function TypeName({
  id,
  type,
}: {
  readonly id: string;
  readonly type: ViewEntry<"screwTypes"> | undefined;
}) {
  const words = useWords().screws;
  const pick = usePick();
  if (type === undefined) return <span className="type-name">{id}</span>;
  return (
    <span className="type-name">
      <b>{pick(type.label, type.labelZh) || id}</b>
      <span className="dim">{words.typeSize(type.thread, type.diameterMm, type.lengthMm, type.drive)}</span>
    </span>
  );
}
