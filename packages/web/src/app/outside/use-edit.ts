import { useCallback, useState } from "react";
import type { Edit } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useTrouble } from "../trouble.ts";

/** Does edits; `failed` says why the last one was not done. */
export function useEdit(): {
  readonly edit: (note: string, edit: Edit) => Promise<boolean>;
  readonly failed: string;
} {
  const desk = useDesk();
  const trouble = useTrouble();
  const [failed, setFailed] = useState("");
  const edit = useCallback(
    async (note: string, wanted: Edit) => {
      setFailed("");
      try {
        await desk.edit(note, wanted);
        return true;
      } catch (error) {
        setFailed(trouble(error));
        return false;
      }
    },
    [desk, trouble],
  );
  return { edit, failed };
}
