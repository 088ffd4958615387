import { type KeyboardEvent, useRef } from "react";
import {
  type Area,
  advance,
  at,
  isWholeRows,
  navigate,
  rangeOf,
  type Selection,
} from "../logic/selection.ts";
import type { GridColumn, GridCommands } from "./types.ts";
import type { Editor } from "./use-editor.ts";

interface KeyOptions {
  readonly area: Area;
  readonly columns: readonly GridColumn[];
  readonly selection: Selection;
  readonly readOnly: boolean;
  readonly editor: Editor;
  /** Selects and brings the moving corner into sight. */
  readonly go: (selection: Selection) => void;
  readonly fill: (way: "down" | "right") => void;
  readonly clear: () => void;
  readonly commands: GridCommands;
}

const isText = (column: GridColumn | undefined): boolean =>
  column?.kind === "text" || column?.kind === "label";

/** The keyboard of a spreadsheet. While a composition is open all keys belong to it. */
export function useKeys(options: KeyOptions) {
  /** Column where a run of Tabs began: Enter goes to it in the next row. */
  const home = useRef<number | null>(null);

  const onward = (across: boolean, back: boolean): void => {
    const { selection, area, go } = options;
    if (across) home.current ??= selection.active.col;
    const next = advance(selection, across, back, area);
    const column = home.current;
    const single = rangeOf(selection).top === rangeOf(selection).bottom;
    if (!across && !back && column !== null && single) {
      home.current = null;
      go(at(next.active.row, column));
    } else go(next);
  };

  /** Keys while a cell is edited; false when the key does nothing special. */
  const edits = (event: KeyboardEvent<HTMLTextAreaElement>): boolean => {
    const { editor, columns, selection, area, go } = options;
    const { key, shiftKey: shift, altKey: alt } = event;
    const ctrl = event.ctrlKey || event.metaKey;
    const listed = editor.offers.list.length > 0;
    switch (key) {
      case "Escape":
        if (listed) editor.closeOffers();
        else editor.cancel();
        return true;
      case "Enter":
        if (alt && isText(columns[selection.active.col])) {
          const field = event.currentTarget;
          field.setRangeText("\n", field.selectionStart, field.selectionEnd, "end");
          return true;
        }
        editor.commit(ctrl);
        if (!ctrl) onward(false, shift);
        return true;
      case "Tab":
        editor.commit();
        onward(true, shift);
        return true;
      case "F2":
        editor.toEdit();
        return true;
      case "ArrowUp":
      case "ArrowDown":
        if (!listed) break;
        editor.choose(key === "ArrowDown" ? 1 : -1);
        return true;
    }
    const moves = key.startsWith("Arrow") || key === "PageUp" || key === "PageDown";
    if (editor.mode !== "type" || !moves) return false;
    editor.commit();
    const moved = navigate(selection, key, { ctrl, shift }, area);
    home.current = null;
    if (moved !== null) go(moved);
    return true;
  };

  /** Keys with Ctrl, beside those of movement and the clipboard. */
  const commands = (key: string, shift: boolean): boolean => {
    const { commands: run, readOnly, fill, selection, area } = options;
    switch (key) {
      case "z":
        if (shift) run.redo();
        else run.undo();
        return true;
      case "y":
        run.redo();
        return true;
      case "d":
      case "r":
        if (!readOnly) fill(key === "d" ? "down" : "right");
        return true;
      case "-":
      case "+":
      case "=":
        // Without whole rows these are the browser's own keys for its zoom.
        if (!isWholeRows(selection, area) || readOnly) return false;
        if (key === "-") run.deleteRows();
        else run.insertRows();
        return true;
      default:
        return false;
    }
  };

  const onKeyDown = (event: KeyboardEvent<HTMLTextAreaElement>): void => {
    if (event.nativeEvent.isComposing || event.keyCode === 229) return;
    const { editor, selection, area, go, readOnly, clear, commands: run } = options;
    const { key, shiftKey: shift, altKey: alt } = event;
    const ctrl = event.ctrlKey || event.metaKey;
    const handled = ((): boolean => {
      if (editor.mode !== null) return edits(event);
      if (alt && shift && (key === "ArrowUp" || key === "ArrowDown")) {
        if (!readOnly) run.moveRows(key === "ArrowUp" ? -1 : 1);
        return true;
      }
      if (alt && key === "ArrowDown") {
        editor.begin();
        return true;
      }
      // Alt with Ctrl types a character on many keyboards.
      if (alt) return false;
      if (ctrl && commands(key.toLowerCase(), shift)) return true;
      switch (key) {
        case "Enter":
          if (home.current !== null && !shift) onward(false, false);
          else editor.begin();
          return true;
        case "F2":
          editor.begin();
          return true;
        case "Tab":
          onward(true, shift);
          return true;
        case "Escape":
          run.leave();
          return true;
        case "Delete":
        case "Backspace":
          if (!readOnly) clear();
          return true;
      }
      const moved = navigate(selection, ctrl ? key.replace("A", "a") : key, { ctrl, shift }, area);
      if (moved === null) return false;
      home.current = null;
      go(moved);
      return true;
    })();
    if (handled) {
      event.preventDefault();
      event.stopPropagation();
    }
  };
  return onKeyDown;
}
