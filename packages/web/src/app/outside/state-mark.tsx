import { useWords } from "../words.tsx";

/** Signs of how far a sample is: told by form and word, never by colour alone. */
const SIGNS = { none: "○", asked: "◔", received: "◑", approved: "✓", "sent-back": "↩" } as const;

/** How far a sample is. */
export function StateMark({ state }: { readonly state: keyof typeof SIGNS }) {
  const { states } = useWords().outside;
  return (
    <span className="sample-state" data-state={state}>
      <span aria-hidden="true">{SIGNS[state]}</span> {states[state]}
    </span>
  );
}

const VERDICT_SIGNS = { pass: "✓", fail: "✗", open: "○" } as const;

/** What a reading says. */
export function VerdictMark({ verdict }: { readonly verdict: keyof typeof VERDICT_SIGNS }) {
  const { verdicts } = useWords().outside.samples;
  return (
    <span className="verdict" data-verdict={verdict}>
      <span aria-hidden="true">{VERDICT_SIGNS[verdict]}</span> {verdicts[verdict]}
    </span>
  );
}
