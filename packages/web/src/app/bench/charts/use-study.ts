import type { AnswerOf } from "@pinwright/contract";
import { useEffect, useState } from "react";
import type { AskAnswer } from "../../../worker/protocol.ts";
import { useDesk } from "../../book/desk.tsx";
import { useTrouble } from "../../trouble.ts";

/** A study as far as it has come. */
export interface Studying {
  /** Null: there are too few readings; undefined: none was made yet. */
  readonly study: AskAnswer<"controlStudy"> | undefined;
  readonly failed: string;
}

/** Has the worker study the readings of a test, and again when there are others. @param readings undefined: not here yet */
export function useStudy(
  testId: string,
  readings: AnswerOf<"readings"> | undefined,
  instruments: AnswerOf<"instruments"> | undefined,
  sampleSize: number,
): Studying {
  const desk = useDesk();
  const trouble = useTrouble();
  const [state, setState] = useState<Studying & { readonly of: string }>({
    ...{ study: undefined, failed: "", of: "" },
  });
  const of = `${testId} ${sampleSize}`;
  useEffect(() => {
    if (readings === undefined || instruments === undefined) return;
    let wanted = true;
    const calibratedUntil = instruments.flatMap(({ id, calibratedUntil: until }): [string, string][] =>
      until === "" ? [] : [[id, until]],
    );
    desk.ask("controlStudy", { testId, readings, calibratedUntil, sampleSize }).then(
      (study) => wanted && setState({ study, failed: "", of }),
      (error: unknown) => wanted && setState({ study: undefined, failed: trouble(error), of }),
    );
    return () => {
      wanted = false;
    };
  }, [desk, trouble, testId, readings, instruments, sampleSize, of]);
  return state.of === of ? state : { study: undefined, failed: "" };
}
