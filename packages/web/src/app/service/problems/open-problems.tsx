import type { KeptProblem } from "@pinwright/contract";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { problemAddress } from "../address.ts";
import { decisionOf } from "./chosen-problems.ts";
import { StateText } from "./state-text.tsx";
import { useThingNames } from "./use-problems.ts";
import "./problems.css";

/** Problems in a few lines, each leading to its page. */
export function ProblemLines({ problems }: { readonly problems: readonly KeptProblem[] }) {
  const own = useWords().serviceProblems;
  const { bookId } = useDesk();
  const nameOf = useThingNames(problems.flatMap(({ about }) => about.map(({ id }) => id)));
  return (
    <ul className="problem-lines">
      {problems.map((problem) => {
        const decision = decisionOf(problem);
        return (
          <li key={problem.problem}>
            <Link href={problemAddress(bookId, problem.problem)}>{problem.says}</Link>{" "}
            <StateText problem={problem} />
            <small className="dim">
              {" · "}
              {problem.about
                .map(({ kind, id }) => (kind === "machine" ? own.kinds.machine : nameOf(id)))
                .join(", ")}
            </small>
            {problem.ended === null && decision !== "" && (
              <small className="problem-decision">{own.open.decided(decision)}</small>
            )}
          </li>
        );
      })}
    </ul>
  );
}
