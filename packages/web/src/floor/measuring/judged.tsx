import { IconCheck, IconX } from "@tabler/icons-react";
import type { ReactNode } from "react";
import { useWords } from "../../app/words.tsx";
import { TaskFoot } from "../tasks/task-foot.tsx";

/** Something that is looked at: good or not good, one tap. */
export function Judged({
  told,
  aside,
  take,
}: {
  readonly told: ReactNode;
  readonly aside?: ReactNode;
  readonly take: (good: boolean) => void;
}) {
  const own = useWords().floor.test;
  return (
    <>
      <div className="floor-body">{told}</div>
      <TaskFoot>
        {aside}
        <button type="button" className="floor-bad-plain" onClick={() => take(false)}>
          <IconX size={30} aria-hidden /> {own.bad}
        </button>
        <button type="button" className="floor-main" onClick={() => take(true)}>
          <IconCheck size={30} aria-hidden /> {own.good}
        </button>
      </TaskFoot>
    </>
  );
}
