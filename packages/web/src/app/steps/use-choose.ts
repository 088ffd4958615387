import { useCallback, useState } from "react";
import { useDesk } from "../book/desk.tsx";
import { useSession } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";

/** Writes what a person decides on a step; `failed` says why the last one was not written. */
export function useChoose(): {
  readonly choose: (choice: "station" | "time", stepId: string, value: string | null, note: string) => void;
  readonly failed: string;
} {
  const desk = useDesk();
  const { status } = useSession();
  const trouble = useTrouble();
  const [failed, setFailed] = useState("");
  const by = status.person?.name ?? "local";
  const choose = useCallback(
    (choice: "station" | "time", stepId: string, value: string | null, note: string) => {
      setFailed("");
      desk
        .edit(note, { kind: "choose", choice, values: [{ subject: stepId, value }], by })
        .catch((error: unknown) => setFailed(trouble(error)));
    },
    [desk, by, trouble],
  );
  return { choose, failed };
}
