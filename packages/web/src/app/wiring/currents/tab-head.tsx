import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import type { Tab } from "./use-currents.ts";

/** What a tab shows, above its table. */
export function TabHead({ tab }: { readonly tab: Tab }) {
  const words = useWords().electric;
  return (
    <>
      <h2>{words.tabs[tab]}</h2>
      <p className="dim">{words.about[tab]}</p>
    </>
  );
}

/** What belongs into a tab that has nothing to show, and the table where it is put in. */
export function TabEmpty({ tab, table }: { readonly tab: Tab; readonly table: string }) {
  const words = useWords().electric;
  const { bookId } = useDesk();
  return (
    <>
      <h2>{words.tabs[tab]}</h2>
      <p>{words.empty[tab]}</p>
      <p>
        <Link href={`/b/${bookId}/tables/${table}`}>{words.toTable(table)}</Link>
      </p>
    </>
  );
}
