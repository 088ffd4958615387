import { ActionIcon } from "@mantine/core";
import {
  IconLayoutAlignBottom,
  IconLayoutAlignCenter,
  IconLayoutAlignLeft,
  IconLayoutAlignMiddle,
  IconLayoutAlignRight,
  IconLayoutAlignTop,
  IconLayoutDistributeHorizontal,
  IconLayoutDistributeVertical,
} from "@tabler/icons-react";
import { useWords } from "../words.tsx";
import { align, distribute, type Stage } from "./actions.ts";

const ALIGNMENTS = [
  ["left", IconLayoutAlignLeft],
  ["centre", IconLayoutAlignCenter],
  ["right", IconLayoutAlignRight],
  ["top", IconLayoutAlignTop],
  ["middle", IconLayoutAlignMiddle],
  ["bottom", IconLayoutAlignBottom],
] as const;
const SPREADS = [
  ["across", IconLayoutDistributeVertical],
  ["up", IconLayoutDistributeHorizontal],
] as const;

/** Lines up what is selected. */
export function ArrangeBar({
  stage,
  selected,
  failed,
}: {
  readonly stage: Stage;
  readonly selected: readonly string[];
  readonly failed: (error: unknown) => void;
}) {
  const words = useWords();
  const own = words.layout.arrange;
  return (
    <div className="group">
      <h4>{own.title}</h4>
      <div className="arrange">
        {ALIGNMENTS.map(([how, Icon]) => (
          <ActionIcon
            key={how}
            variant="default"
            className="tool-button"
            aria-label={own[how]}
            title={own[how]}
            onClick={() => void align(stage, selected, how).catch(failed)}
          >
            <Icon size={18} />
          </ActionIcon>
        ))}
        {SPREADS.map(([how, Icon]) => (
          <ActionIcon
            key={how}
            variant="default"
            className="tool-button"
            aria-label={own[how]}
            title={own[how]}
            onClick={() => void distribute(stage, selected, how).catch(failed)}
          >
            <Icon size={18} />
          </ActionIcon>
        ))}
      </div>
    </div>
  );
}
