import type { ViewEntry } from "../../worker/protocol.ts";
import { useWords } from "../words.tsx";
import { StateMark } from "./state-mark.tsx";

/** The samples of a part as a line, from the first try to the final part. */
export function SampleHistory({ samples }: { readonly samples: ViewEntry<"outsideDetail">["samples"] }) {
  const words = useWords().outside;
  if (samples.length === 0) return null;
  return (
    <section aria-label={words.history.title}>
      <h3>{words.history.title}</h3>
      <ol className="sample-line">
        {samples.map(({ row }) => (
          <li key={row.id}>
            <b>{row.made || words.history.unnamed}</b>
            <span>
              {words.revisionShort} {row.revision}
            </span>
            <StateMark state={row.state} />
            <span className="dim">{row.decided || row.received || row.asked}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}
