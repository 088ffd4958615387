import type { KeptProblem } from "@pinwright/contract";
import { useEffect, useMemo, useState } from "react";
import { call } from "../../api/call.ts";
import { useDesk, useView } from "../../app/book/desk.tsx";
import { openAbout } from "../../app/service/problems/chosen-problems.ts";
import { useKept } from "../service/use-service.ts";
import { useBench } from "../tasks/bench-context.tsx";
import type { Task } from "../tasks/tasks.ts";

/** Open problems of the book, as the server last told; what it told stays while nobody answers. */
function useBookProblems(): readonly KeptProblem[] {
  const desk = useDesk();
  const { bookId } = desk;
  const [told, setTold] = useState<readonly KeptProblem[]>([]);
  useKept([`/api/problems?book=${encodeURIComponent(bookId)}`]);
  useEffect(() => {
    let wanted = true;
    const ask = (): void => {
      call("problems", { parts: {}, query: { book: bookId } }).then(
        (problems) => wanted && setTold(problems),
        () => undefined,
      );
    };
    ask();
    const stop = desk.onServer(({ type }) => type === "facts" && ask());
    return () => {
      wanted = false;
      stop();
    };
  }, [desk, bookId]);
  return told;
}

/** Step of the book that a task is; null: it is none. */
const stepOf = (task: Task | undefined): string | null => (task?.kind === "step" ? task.step : null);

/**
 * Open problems that concern what is on the screen: the step of a machine or mechanism, else the board, harness or mechanism
 * as a whole.
 */
export function useOpenProblems(task: Task | undefined): readonly KeptProblem[] {
  const { what, type } = useBench();
  const told = useBookProblems();
  const scope = useView("problemScope", { what, type });
  const step = stepOf(task);
  return useMemo(() => {
    if (scope === null || task === undefined) return [];
    const own = scope.get(step ?? "unit")?.ids ?? [];
    // A board or mechanism is one thing on the bench: what concerns it concerns each of its steps.
    const whole = what === "machine" ? [] : (scope.get("unit")?.ids ?? []);
    const all = openAbout(told, new Set([...own, ...whole]));
    // Of a machine's steps only those that it is about: what is about all of it is on the list of its run.
    return what === "machine"
      ? all.filter(({ about }) => about.some(({ kind }) => kind !== "machine") || step === null)
      : all;
  }, [told, scope, task, step, what]);
}
