import type { ViewEntry } from "../../worker/protocol.ts";
import { usePick, useWords } from "../words.tsx";

type Line = ViewEntry<"stepParts">["bench"][number];

/** Work at a mechanism's own bench, in its order, with the limits of each gauge. */
export function BenchLines({ lines }: { readonly lines: readonly Line[] }) {
  const words = useWords().screws;
  const pick = usePick();
  return (
    <ol className="bench-lines" aria-label={words.benchWork}>
      {lines.map((line) => (
        <li key={line.order}>
          <b>{words.benchKinds[line.kind]}</b> {pick(line.label, line.labelZh)}
          <Gauge line={line} />
          {line.tool !== "" && <span className="dim"> · {line.tool}</span>}
          {line.caution !== "" && (
            <span className="caution">
              <b>{words.caution}</b> {pick(line.caution, line.cautionZh)}
            </span>
          )}
        </li>
      ))}
    </ol>
  );
}

/** What to set, and the limits that it may be within. */
function Gauge({ line: { nominal, min, max, unit } }: { readonly line: Line }) {
  const words = useWords().screws;
  if (nominal === null && min === null && max === null) return null;
  return <span className="gauge">{words.gauge(nominal, min, max, unit)}</span>;
}
