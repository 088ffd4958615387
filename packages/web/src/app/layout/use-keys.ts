import type { KeyboardEvent } from "react";
import type { Stage } from "./actions.ts";
import { zoomed } from "./geometry/camera.ts";
import type { Tool } from "./gesture-host.ts";
import { keyAction } from "./keys.ts";
import { FAR_NUDGE_MM, NUDGE_MM, panByArrow } from "./nudges.ts";
import type { Side } from "./scene.ts";
import type { Workbench } from "./use-workbench.ts";

/** What keys on the drawing can set going. */
export interface KeyHost {
  readonly bench: Workbench;
  readonly stage: Stage | null;
  readonly selected: readonly string[];
  readonly side: Side;
  readonly mayEdit: boolean;
  readonly tool: Tool;
  readonly setTool: (tool: Tool) => void;
  readonly select: (ids: readonly string[]) => void;
  readonly fit: () => void;
  readonly fitChosen: () => void;
  readonly turnOver: () => void;
  readonly copy: () => void;
  readonly paste: () => void;
  readonly remove: () => void;
  readonly rotate: (byDeg: number) => void;
  readonly help: () => void;
  readonly choose: (id: string, add: boolean) => void;
}

const EDITING: ReadonlySet<Tool> = new Set(["waypoint", "lane", "crossing"]);

/** Kinds of things in the order in which `,` and `.` go through them. */
const FIRST: Readonly<Record<string, number>> = { boards: 0, mechanisms: 1, devices: 2, inlines: 3 };

function neighbour({ stage, selected }: KeyHost, by: 1 | -1): string | null {
  const all = [...(stage?.scene.targets.values() ?? [])].sort(
    (a, b) => (FIRST[a.layer] ?? 9) - (FIRST[b.layer] ?? 9) || (a.id < b.id ? -1 : 1),
  );
  const last = selected.at(-1);
  const at = all.findIndex((target) => target.id === last);
  const next = at < 0 ? (by > 0 ? 0 : all.length - 1) : (at + by + all.length) % all.length;
  return all[next]?.id ?? null;
}

/** The handler of keys that are pressed on the drawing. */
export function useKeys(host: KeyHost): (event: KeyboardEvent) => void {
  return (event) => {
    const action = keyAction(event);
    if (action === null) return;
    const { rig, gestures, nudges } = host.bench;
    const { currentTarget } = event;
    switch (action.do) {
      case "tool":
        if (!host.mayEdit && EDITING.has(action.tool)) return;
        host.setTool(action.tool);
        break;
      case "arrow": {
        const step = action.far ? FAR_NUDGE_MM : NUDGE_MM;
        const moved =
          host.mayEdit &&
          nudges.by(
            currentTarget,
            action.right * step,
            action.up * step,
            host.side === "under",
            event.timeStamp,
          );
        if (!moved) panByArrow(rig, action.right, action.up, action.far);
        break;
      }
      case "rotate":
        if (host.mayEdit) host.rotate(action.byDeg);
        break;
      case "next": {
        const id = neighbour(host, action.by);
        if (id !== null) host.choose(id, false);
        break;
      }
      case "zoom":
        rig.set(zoomed(rig.now, action.factor, { x: rig.size.width / 2, y: rig.size.height / 2 }));
        break;
      case "fit":
        host.fit();
        break;
      case "fit-chosen":
        host.fitChosen();
        break;
      case "turn-over":
        host.turnOver();
        break;
      case "delete":
        if (host.mayEdit) host.remove();
        break;
      case "copy":
        host.copy();
        break;
      case "paste":
        if (host.mayEdit) host.paste();
        break;
      case "all":
        host.select(
          [...(host.stage?.scene.targets.values() ?? [])]
            .filter((target) => target.row !== null && target.layer in FIRST)
            .map((target) => target.id),
        );
        break;
      case "escape":
        if (nudges.giveUp() || gestures.cancel()) break;
        if (host.tool !== "select") host.setTool("select");
        else host.select([]);
        break;
      case "help":
        host.help();
        break;
    }
    event.preventDefault();
  };
}
