import type { Entries } from "../book/desk-client.ts";
import { usePick, useWords } from "../words.tsx";
import type { Tool } from "./gesture-host.ts";
import type { CrossingEnd } from "./use-crossing.ts";

/** What to do next with the tool that is chosen. */
export function ToolHint({
  tool,
  from,
  panels,
}: {
  readonly tool: Tool;
  /** Where the crossing that is being drawn begins. */
  readonly from: CrossingEnd | null;
  readonly panels: Entries<"layoutPanels">;
}) {
  const words = useWords();
  const pick = usePick();
  const own = words.layout;
  const panel = panels.get(from?.panelId ?? "");
  const hint =
    tool === "crossing" && from !== null && panel !== undefined
      ? own.crossing.next(from.id, pick(panel.label, panel.labelZh) || panel.id, words.common.side[from.side])
      : own.toolHints[tool];
  return hint === "" ? null : <p className="tool-hint">{hint}</p>;
}
