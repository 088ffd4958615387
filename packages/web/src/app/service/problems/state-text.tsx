import type { KeptProblem } from "@pinwright/contract";
import { useWords } from "../../words.tsx";

/** Open, decided, or ended with the revision that has the change. */
export function StateText({ problem: { state, ended, revision } }: { readonly problem: KeptProblem }) {
  const own = useWords().serviceProblems;
  if (ended === null)
    return state === "open" ? <b className="amber-text">{own.states.open}</b> : own.states[state];
  return (
    <>
      {ended.changeNo === null ? own.end.noChange : own.end.changed(ended.changeNo)}
      {ended.changeNo !== null && (
        <small className="dim quality-under">
          {revision === null ? own.end.noRevision : own.end.revision(revision)}
        </small>
      )}
    </>
  );
}
