import { type RefObject, useEffect, useRef, useState } from "react";

const HALF_MS = 220;
const FLAT = "perspective(1800px) rotateY(0deg)";
const EDGE = "perspective(1800px) rotateY(90deg)";
const FAR_EDGE = "perspective(1800px) rotateY(-90deg)";

const wantsRest = (): boolean => matchMedia("(prefers-reduced-motion: reduce)").matches;

/**
 * What lies before the builder, one after the other: the panel is seen turning over from one to the next, unless the
 * person wants no movement.
 * @param wanted what is to be shown; compared by `key`
 * @param key panel and side: another one is turned to
 */
export function useTurned<T>(wanted: T, key: string, sheet: RefObject<HTMLElement | null>): T {
  const [shown, setShown] = useState({ key, value: wanted });
  const newest = useRef({ key, value: wanted });
  newest.current = { key, value: wanted };
  useEffect(() => {
    if (shown.key === key) return;
    const element = sheet.current;
    if (element === null || wantsRest()) {
      setShown(newest.current);
      return;
    }
    const away = element.animate([{ transform: FLAT }, { transform: EDGE }], {
      duration: HALF_MS,
      easing: "ease-in",
    });
    away.onfinish = () => {
      setShown(newest.current);
      element.animate([{ transform: FAR_EDGE }, { transform: FLAT }], {
        duration: HALF_MS,
        easing: "ease-out",
      });
    };
    return () => away.cancel();
  }, [key, shown.key, sheet]);
  return shown.key === key ? wanted : shown.value;
}
