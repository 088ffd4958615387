import { type RefObject, useCallback, useRef, useState } from "react";
import { editOf, spreadEdit } from "../logic/grid-edit.ts";
import { firstOffer, hasOffers, soughtOf, withOffer, wordsWith } from "../logic/offers.ts";
import { rangeOf } from "../logic/selection.ts";
import type { GridProps, Offer } from "./types.ts";

/** `type`: begun by typing, arrows end it; `edit`: begun by F2 or a double click, arrows move in the text. */
export type EditMode = "type" | "edit";

interface Offers {
  readonly list: readonly Offer[];
  /** The one that Enter takes, or -1. */
  readonly at: number;
}

const NONE: Offers = { list: [], at: -1 };

type EditorOptions = Pick<GridProps, "columns" | "rows" | "selection" | "onEdit" | "offers" | "readOnly"> & {
  readonly field: RefObject<HTMLTextAreaElement | null>;
};

/** Editing the active cell in the text field that lies over it. */
export function useEditor(options: EditorOptions) {
  const [mode, setMode] = useState<EditMode | null>(null);
  const [offers, setOffers] = useState(NONE);
  const now = useRef({ ...options, mode, shown: offers });
  now.current = { ...options, mode, shown: offers };
  const asked = useRef(0);

  const place = useCallback(() => {
    const { columns, rows, selection } = now.current;
    const { row, col } = selection.active;
    return { row, col, column: columns[col], cells: rows[row] ?? null };
  }, []);

  /** Looks for values that fit. Words of a choice are here at once; others are asked for. */
  const look = useCallback(
    async (text: string, typed: boolean): Promise<void> => {
      const { column, cells } = place();
      const turn = ++asked.current;
      if (column === undefined || !hasOffers(column.kind)) return;
      const word = soughtOf(column.kind, text);
      const sought = typed ? word : "";
      const show = (list: readonly Offer[]): void => {
        const values = list.map((offer) => offer.value);
        const at = typed ? firstOffer(word, values) : values.indexOf(word);
        now.current.shown = { list, at };
        setOffers({ list, at });
      };
      if (column.choices !== null) {
        show(wordsWith(column.choices, sought).map((value) => ({ value, label: "" })));
        return;
      }
      // Until the answer is here, what was offered before counts only where it still fits.
      if (typed) show(now.current.shown.list.filter((offer) => offer.value.includes(word)));
      const list = await now.current.offers(column.name, cells, sought).catch(() => []);
      if (turn === asked.current && now.current.mode !== null) show(list);
    },
    [place],
  );

  const end = useCallback(() => {
    asked.current++;
    const field = now.current.field.current;
    if (field !== null) field.value = "";
    now.current.mode = null;
    setMode(null);
    setOffers(NONE);
  }, []);

  /** Begins with the text that is there. */
  const begin = useCallback(() => {
    const field = now.current.field.current;
    if (field === null || now.current.readOnly || now.current.mode !== null) return;
    const { column, cells } = place();
    if (column === undefined) return;
    field.value = cells?.cells[column.name] ?? "";
    field.focus();
    field.setSelectionRange(field.value.length, field.value.length);
    now.current.mode = "edit";
    setMode("edit");
    void look(field.value, false);
  }, [look, place]);

  /** Something was typed, or composing began: the field has it already. */
  const typed = useCallback(() => {
    const field = now.current.field.current;
    if (field === null) return;
    if (now.current.mode === null) {
      now.current.mode = "type";
      setMode("type");
    }
    void look(field.value, true);
  }, [look]);

  /** Takes over what is in the field; with `spread` into every selected cell. */
  const commit = useCallback(
    (spread = false) => {
      const { field, mode: before, shown, onEdit, selection } = now.current;
      if (before === null || field.current === null) return;
      const { row, col, column } = place();
      const offer = shown.list[shown.at];
      const text =
        offer === undefined || column === undefined
          ? field.current.value
          : withOffer(column.kind, field.current.value, offer.value);
      const screen = { columns: now.current.columns, rows: now.current.rows };
      const edit = spread
        ? spreadEdit(screen, rangeOf(selection), text)
        : editOf(screen, [{ row, col, text }], "type");
      end();
      if (edit.cells.length > 0 || edit.added.length > 0) onEdit(edit);
    },
    [end, place],
  );

  const choose = useCallback(
    (by: 1 | -1) =>
      setOffers(({ list, at }) => ({
        list,
        at: list.length === 0 ? -1 : (at + by + list.length + (at < 0 && by < 0 ? 1 : 0)) % list.length,
      })),
    [],
  );
  const closeOffers = useCallback(() => setOffers(NONE), []);
  const toEdit = useCallback(() => setMode((before) => (before === null ? null : "edit")), []);
  const take = useCallback(
    (at: number) => {
      now.current.shown = { list: now.current.shown.list, at };
      commit();
    },
    [commit],
  );

  return { mode, offers, begin, typed, commit, cancel: end, choose, closeOffers, toEdit, take };
}

export type Editor = ReturnType<typeof useEditor>;
