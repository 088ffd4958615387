import { useEffect, useState } from "react";
import type { AskAnswer } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { TableRow } from "../tables/logic/arrange.ts";

type Trial = AskAnswer<"importTrial">;

/** What taking rows in would do, asked anew a moment after they changed; null until it is known. */
export function useTrial(table: string, rows: readonly TableRow[]): Trial | null {
  const desk = useDesk();
  const [answer, setAnswer] = useState<{ readonly of: readonly TableRow[]; readonly trial: Trial } | null>(
    null,
  );
  useEffect(() => {
    let wanted = true;
    const timer = setTimeout(() => {
      void desk.ask("importTrial", { table, rows: rows.map((row) => row.cells) }).then(
        (trial) => wanted && setAnswer({ of: rows, trial }),
        () => undefined,
      );
    }, 150);
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [desk, table, rows]);
  return answer?.of === rows ? answer.trial : null;
}
