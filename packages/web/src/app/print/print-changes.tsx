import { useWords } from "../words.tsx";
import type { FoundPrint } from "./use-print.ts";

/** What changed on the sheet since it was printed: what was written of every release after it. */
export function PrintChanges({ found: { state, releases } }: { readonly found: FoundPrint }) {
  const own = useWords().printPage;
  const last = releases.find(({ name }) => name === state?.releases[0]);
  const since = releases.filter(({ no, note }) => no > (last?.no ?? 0) && note !== "");
  return (
    <section>
      <h2>{own.since}</h2>
      {since.map(({ name, note }) => (
        <div key={name}>
          <h3>{own.notesOf(name)}</h3>
          <p className="print-note">{note}</p>
        </div>
      ))}
    </section>
  );
}
