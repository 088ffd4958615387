import { Link } from "wouter";
import { FactsProvider } from "../bench/live.tsx";
import { useDesk } from "../book/desk.tsx";
import { newProblemAddress } from "../service/address.ts";
import { openAbout } from "../service/problems/chosen-problems.ts";
import { ProblemLines } from "../service/problems/open-problems.tsx";
import { useProblems } from "../service/problems/use-problems.ts";
import { useWords } from "../words.tsx";
import type { Run } from "./run-tab.ts";

/** What is open against what a run is about to build: everything of its book that is not ended, its own first. */
export function RunProblems({ run }: { readonly run: Run }) {
  return run.isOfBook && run.state !== "done" ? (
    <FactsProvider>
      <Open runId={run.id} />
    </FactsProvider>
  ) : null;
}

function Open({ runId }: { readonly runId: string }) {
  const { serviceProblems } = useWords();
  const own = serviceProblems.open;
  const { bookId } = useDesk();
  const { answer, failed } = useProblems();
  const open = openAbout(answer ?? [], null);
  const ownFirst = [...open.filter(({ run }) => run === runId), ...open.filter(({ run }) => run !== runId)];
  return (
    <section aria-labelledby="run-problems">
      <h3 id="run-problems">{own.run}</h3>
      {failed !== "" ? (
        <p className="error-text">{own.failed}</p>
      ) : (
        answer !== undefined &&
        (ownFirst.length === 0 ? <p className="dim">{own.runNone}</p> : <ProblemLines problems={ownFirst} />)
      )}
      <p>
        <Link href={newProblemAddress(bookId, { from: "build", run: runId })}>
          {serviceProblems.make.button}
        </Link>
      </p>
    </section>
  );
}
