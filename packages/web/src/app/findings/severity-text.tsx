import { IconAlertTriangle, IconInfoCircle, IconXboxX } from "@tabler/icons-react";
import type { FindingEntry } from "../../worker/views/findings.ts";
import { useWords } from "../words.tsx";

const ICONS = { error: IconXboxX, warning: IconAlertTriangle, note: IconInfoCircle };
const COLOURS = { error: "error-text", warning: "amber-text", note: "dim" };

/** How serious a finding is: a sign of its own shape, and the word. */
export function SeverityText({ severity }: { readonly severity: FindingEntry["finding"]["severity"] }) {
  const { common } = useWords();
  const Icon = ICONS[severity];
  return (
    <span className={COLOURS[severity]} style={{ display: "inline-flex", alignItems: "center", gap: 4 }}>
      <Icon size={16} aria-hidden /> {common.severity[severity]}
    </span>
  );
}
