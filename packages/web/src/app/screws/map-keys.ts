import type { KeyboardEvent } from "react";
import type { CameraRig } from "../layout/camera-rig.ts";
import { panByArrow } from "../layout/nudges.ts";
import type { Play } from "./use-play.ts";

const ARROWS: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
const ZOOM = 1.25;

/** What keys on the map can set going. */
export interface MapKeyHost {
  readonly rig: CameraRig;
  readonly zoom: (factor: number) => void;
  readonly fit: () => void;
  readonly fitStep: () => void;
  readonly turnOver: () => void;
  readonly play: Play;
  readonly index: number;
  readonly clear: () => void;
}

/** The handler of keys that are pressed on the map: the same as on the layout, and the steps by comma and point. */
export function useMapKeys(host: MapKeyHost): (event: KeyboardEvent) => void {
  return (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const arrow = ARROWS[event.key];
    if (arrow !== undefined) panByArrow(host.rig, arrow[0], arrow[1], event.shiftKey);
    else if (!pressed(host, event.key.toLowerCase())) return;
    event.preventDefault();
  };
}

/** Does what a letter or sign stands for; false when it stands for nothing. */
function pressed({ zoom, fit, fitStep, turnOver, play, index, clear }: MapKeyHost, key: string): boolean {
  switch (key) {
    case "+":
    case "=":
      zoom(ZOOM);
      return true;
    case "-":
      zoom(1 / ZOOM);
      return true;
    case "0":
      fit();
      return true;
    case "f":
      fitStep();
      return true;
    case "t":
      turnOver();
      return true;
    case ".":
      play.to(index + 1);
      return true;
    case ",":
      play.to(index - 1);
      return true;
    case " ":
      play.toggle();
      return true;
    case "escape":
      clear();
      return true;
    default:
      return false;
  }
}
