import { type ClipboardEvent, useRef } from "react";
import { useWords } from "../../words.tsx";
import { blockOf, clearEdit, editOf } from "../logic/grid-edit.ts";
import { pasteBlock } from "../logic/paste.ts";
import { rangeOf } from "../logic/selection.ts";
import { parseTsv, writeTsv } from "../logic/tsv.ts";
import type { GridProps } from "./types.ts";

/** Copy, cut and paste of ranges, by the browser's own events and by buttons. */
export function useClipboard(props: GridProps, editing: boolean) {
  const words = useWords().tables.grid;
  const now = useRef({ props, editing });
  now.current = { props, editing };

  const text = (): string => {
    const { columns, rows, selection } = now.current.props;
    const range = rangeOf(selection);
    // The blank row at the end is copied only when nothing else is selected.
    const bottom = Math.max(range.top, Math.min(range.bottom, rows.length - 1));
    return writeTsv(blockOf({ columns, rows }, { ...range, bottom }));
  };

  const paste = (pasted: string): void => {
    const { columns, rows, selection, onEdit, onSelect, say, readOnly } = now.current.props;
    const block = parseTsv(pasted);
    if (block.length === 0 || readOnly) return;
    const { puts, range, lostColumns } = pasteBlock(block, rangeOf(selection), columns.length);
    onEdit(editOf({ columns, rows }, puts, "paste"));
    const corner = { row: range.top, col: range.left };
    onSelect({ anchor: corner, active: corner, head: { row: range.bottom, col: range.right } });
    if (lostColumns > 0) say(words.lostColumns(lostColumns));
  };

  const clear = (what: "clear" | "cut"): void => {
    const { columns, rows, selection, onEdit, readOnly } = now.current.props;
    if (!readOnly) onEdit(clearEdit({ columns, rows }, rangeOf(selection), what));
  };

  const onCopy = (event: ClipboardEvent): void => {
    if (now.current.editing) return;
    event.preventDefault();
    event.clipboardData.setData("text/plain", text());
    if (event.type === "cut") clear("cut");
  };

  const onPaste = (event: ClipboardEvent): void => {
    if (now.current.editing) return;
    event.preventDefault();
    paste(event.clipboardData.getData("text/plain"));
  };

  /** A browser may refuse its clipboard to buttons, not to keys. */
  const refused = (): void => now.current.props.say(words.clipboardRefused);
  const copyByButton = (what: "copy" | "cut"): void => {
    void navigator.clipboard.writeText(text()).then(() => what === "cut" && clear("cut"), refused);
  };
  const pasteByButton = (): void => {
    void navigator.clipboard.readText().then(paste, refused);
  };
  return { onCopy, onPaste, clear, copyByButton, pasteByButton };
}
