import type { Tool } from "./gesture-host.ts";

/** What a key means on the drawing; null: nothing. */
export type KeyAction =
  | { readonly do: "tool"; readonly tool: Tool }
  | { readonly do: "arrow"; readonly right: number; readonly up: number; readonly far: boolean }
  | { readonly do: "rotate"; readonly byDeg: number }
  | { readonly do: "next"; readonly by: 1 | -1 }
  | { readonly do: "zoom"; readonly factor: number }
  | {
      readonly do:
        | "fit"
        | "fit-chosen"
        | "turn-over"
        | "delete"
        | "copy"
        | "paste"
        | "all"
        | "escape"
        | "help";
    };

const TOOLS: Readonly<Record<string, Tool>> = {
  v: "select",
  b: "lasso",
  m: "measure",
  w: "waypoint",
  l: "lane",
  x: "crossing",
};
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
const ZOOM = 1.25;

type Pressed = Pick<KeyboardEvent, "key" | "shiftKey" | "ctrlKey" | "metaKey" | "altKey">;

/** The meaning of a pressed key. Arrows are those of the screen. */
export function keyAction({ key, shiftKey, ctrlKey, metaKey, altKey }: Pressed): KeyAction | null {
  if (altKey) return null;
  const letter = key.toLowerCase();
  if (ctrlKey || metaKey) {
    if (shiftKey) return null;
    if (letter === "c") return { do: "copy" };
    if (letter === "v") return { do: "paste" };
    if (letter === "a") return { do: "all" };
    return null;
  }
  const arrow = ARROWS[key];
  if (arrow !== undefined) return { do: "arrow", right: arrow[0], up: arrow[1], far: shiftKey };
  const tool = TOOLS[letter];
  if (tool !== undefined) return { do: "tool", tool };
  switch (letter) {
    case "r":
      return { do: "rotate", byDeg: shiftKey ? 15 : 90 };
    case ".":
      return { do: "next", by: 1 };
    case ",":
      return { do: "next", by: -1 };
    case "+":
    case "=":
      return { do: "zoom", factor: ZOOM };
    case "-":
      return { do: "zoom", factor: 1 / ZOOM };
    case "0":
      return { do: "fit" };
    case "f":
      return { do: "fit-chosen" };
    case "t":
      return { do: "turn-over" };
    case "delete":
    case "backspace":
      return { do: "delete" };
    case "escape":
      return { do: "escape" };
    case "?":
      return { do: "help" };
    default:
      return null;
  }
}
