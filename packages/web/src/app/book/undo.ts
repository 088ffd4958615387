import { useCallback, useEffect, useRef, useState } from "react";
import { noteText } from "../history/note-text.ts";
import { useTrouble } from "../trouble.ts";
import { useWords } from "../words.tsx";
import { useDesk } from "./desk.tsx";

/** Undo and redo of the person's own changes, by button and by keyboard; `said` tells what came of the last one. */
export function useUndo(): { readonly undo: () => void; readonly redo: () => void; readonly said: string } {
  const desk = useDesk();
  const words = useWords();
  const trouble = useTrouble();
  const [said, setSaid] = useState("");
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const run = useCallback(
    async (what: "undo" | "redo") => {
      const text = await desk[what]().then((note) => noteText(words.history, note), trouble);
      setSaid(text);
      clearTimeout(timer.current);
      timer.current = setTimeout(() => setSaid(""), 5_000);
    },
    [desk, words, trouble],
  );
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const target = event.target;
      const typing =
        target instanceof HTMLInputElement ||
        target instanceof HTMLTextAreaElement ||
        target instanceof HTMLSelectElement;
      if (typing) return;
      const key = event.key.toLowerCase();
      const what = key === "z" ? (event.shiftKey ? "redo" : "undo") : key === "y" ? "redo" : null;
      if (what === null) return;
      event.preventDefault();
      void run(what);
    };
    addEventListener("keydown", pressed);
    return () => removeEventListener("keydown", pressed);
  }, [run]);
  return { undo: () => void run("undo"), redo: () => void run("redo"), said };
}
