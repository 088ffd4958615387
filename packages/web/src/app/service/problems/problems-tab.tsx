import { useLocation, useSearchParams } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { Recording } from "../recording.tsx";
import { NewProblem } from "./new-problem.tsx";
import { ProblemList } from "./problem-list.tsx";
import { ProblemPage } from "./problem-page.tsx";
import { useProblems } from "./use-problems.ts";
import "../../bench/bench.css";
import "../../bench/defects/defects.css";
import "./problems.css";

/** Problems of the design: all of them, one with its course, or a new one. */
export default function ProblemsTab() {
  return (
    <Recording>
      <div className="currents-body bench problems">
        <Body />
      </div>
    </Recording>
  );
}

function Body() {
  const { common } = useWords();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const [params] = useSearchParams();
  const { answer, failed, again } = useProblems();
  const [, , asked] = location.slice(`/b/${bookId}/service`.length).split("/");
  if (params.get("new") !== null) return <NewProblem key={params.toString()} params={params} />;
  if (answer === undefined)
    return failed === "" ? (
      <p className="dim">{common.loading}</p>
    ) : (
      <p className="error-text" role="alert">
        {failed}{" "}
        <button type="button" className="link-button" onClick={again}>
          {common.retry}
        </button>
      </p>
    );
  return asked === undefined || asked === "" ? (
    <ProblemList problems={answer} />
  ) : (
    <ProblemPage id={decodeURIComponent(asked)} problems={answer} />
  );
}
