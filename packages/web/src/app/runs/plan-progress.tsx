import { Button } from "@mantine/core";
import type { Answering } from "../book/use-answer.ts";
import { useWords } from "../words.tsx";
import type { Preparing } from "./use-prepared.ts";

/** That a plan is being made, how far it is, and a way to leave it. */
export function PlanProgress({
  preparing,
  answering,
}: {
  readonly preparing: Preparing;
  readonly answering: Answering<unknown>;
}) {
  const words = useWords();
  const own = words.runs;
  const isWorking = preparing.working || answering.working;
  const says = preparing.working && preparing.left > 0 ? own.preparing(preparing.left) : own.planning;
  const failed = preparing.failed || (isWorking ? "" : answering.failed);
  const isStopped = !isWorking && failed === "" && (preparing.left > 0 || answering.answer === undefined);
  return (
    <div className="plan-progress" role="status">
      {isWorking && (
        <>
          <progress aria-label={says} />
          <span>{says}</span>
          <Button
            variant="default"
            size="compact-sm"
            onClick={() => {
              preparing.stop();
              answering.stop();
            }}
          >
            {words.common.cancel}
          </Button>
        </>
      )}
      {(failed !== "" || isStopped) && (
        <>
          <span className={failed === "" ? "dim" : "error-text"}>{failed || own.stopped}</span>
          <Button variant="default" size="compact-sm" onClick={preparing.goOn}>
            {own.goOn}
          </Button>
        </>
      )}
    </div>
  );
}
