import { useEffect, useRef } from "react";
import { WedgeReader } from "./scan.ts";

/** Calls back with whatever a scanner types, wherever on the page that goes. */
export function useScanner(scanned: (text: string) => void): void {
  const newest = useRef(scanned);
  newest.current = scanned;
  useEffect(() => {
    const reader = new WedgeReader();
    const pressed = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey) return;
      const text = reader.press(event.key, event.timeStamp);
      if (text === null) return;
      // The key that ends a scan presses no button.
      event.preventDefault();
      event.stopPropagation();
      newest.current(text);
    };
    addEventListener("keydown", pressed, { capture: true });
    return () => removeEventListener("keydown", pressed, { capture: true });
  }, []);
}
