import { IconAlertTriangle, IconArrowLeft } from "@tabler/icons-react";
import type { ReactNode } from "react";
import { useWords } from "../../app/words.tsx";
import { useBench } from "./bench-context.tsx";

/** Below every task: back, something is wrong, and what ends the task. */
export function TaskFoot({
  children,
  defect = "",
}: {
  readonly children: ReactNode;
  readonly defect?: string;
}) {
  const { work, back: backWord } = useWords().floor;
  const { back, show } = useBench();
  return (
    <footer className="floor-foot">
      <button
        type="button"
        className="floor-square"
        aria-label={backWord}
        disabled={back === null}
        onClick={() => back?.()}
      >
        <IconArrowLeft size={30} />
      </button>
      <button type="button" className="floor-wrong" onClick={() => show(`/defect${defect}`)}>
        <IconAlertTriangle size={26} aria-hidden /> {work.wrong}
      </button>
      {children}
    </footer>
  );
}
