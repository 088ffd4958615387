import type { ViewEntry } from "../../worker/protocol.ts";
import { useWords } from "../words.tsx";

const WARNINGS: ReadonlySet<string> = new Set(["error", "warning"]);

/** What a part is called out for, in a few words each. */
export function Flags({ flagged }: { readonly flagged: ViewEntry<"partFlags"> | undefined }) {
  const words = useWords().parts.flagNames;
  if (flagged === undefined) return null;
  return (
    <span className="part-flags">
      {flagged.flags.map(({ rule, finding }) => (
        <span key={rule} className={WARNINGS.has(finding.severity) ? "part-flag warned" : "part-flag"}>
          {words[rule]}
        </span>
      ))}
    </span>
  );
}
