import type { KeptProblem } from "@pinwright/contract";
import { IconAlertCircle } from "@tabler/icons-react";
import { useState } from "react";
import { decisionOf } from "../../app/service/problems/chosen-problems.ts";
import { useWords } from "../../app/words.tsx";
import { DefectPhoto } from "../defects/photo.tsx";
import { useOwnFacts } from "../device.tsx";
import { useBench } from "../tasks/bench-context.tsx";
import type { Task } from "../tasks/tasks.ts";
import { useOpenProblems } from "./use-open.ts";
import "./problems.css";

/** Problems that are open against what is on the screen, each with one tap to say that it is here too. */
export function ProblemBand({ task }: { readonly task: Task | undefined }) {
  const own = useWords().serviceProblems.open;
  const problems = useOpenProblems(task);
  const [all, setAll] = useState(false);
  const shown = all ? problems : problems.slice(0, 1);
  if (problems.length === 0) return null;
  return (
    <section className="floor-problems" aria-label={own.title}>
      {shown.map((problem) => (
        <Band key={problem.problem} problem={problem} />
      ))}
      {problems.length > shown.length && (
        <button type="button" className="floor-plain" onClick={() => setAll(true)}>
          {own.more(problems.length - shown.length)}
        </button>
      )}
    </section>
  );
}

function Band({ problem }: { readonly problem: KeptProblem }) {
  const { open: own, picture } = useWords().serviceProblems;
  const { unitIds, record } = useBench();
  const facts = useOwnFacts();
  const [shown, setShown] = useState(false);
  const [unit = ""] = unitIds;
  const isSeen = (seenOn: string | null | undefined): boolean => seenOn != null && unitIds.includes(seenOn);
  const isNoted =
    isSeen(problem.unit) ||
    problem.notes.some((note) => isSeen(note.unit)) ||
    facts.some(
      ({ fact: { body } }) =>
        body.kind === "problem-note" && body.problem === problem.problem && isSeen(body.seenOn),
    );
  const decision = decisionOf(problem);
  const seen = (): void => {
    void record([{ kind: "problem-note", problem: problem.problem, did: "seen", says: "", seenOn: unit }]);
  };
  return (
    <div className="floor-problem">
      <IconAlertCircle size={26} aria-hidden />
      <p>
        <b>{own.band}</b> {problem.says}
        {decision !== "" && <small>{own.decided(decision)}</small>}
      </p>
      {problem.picture !== null && (
        <button
          type="button"
          className="floor-problem-picture"
          aria-expanded={shown}
          aria-label={picture(problem.says)}
          onClick={() => setShown(!shown)}
        >
          <DefectPhoto hash={problem.picture} />
        </button>
      )}
      {isNoted ? (
        <span role="status" className="dim">
          {own.seenDone}
        </span>
      ) : (
        <button type="button" className="floor-plain" onClick={seen}>
          {own.seenToo}
        </button>
      )}
    </div>
  );
}
