import { useCallback } from "react";
import { useSearchParams } from "wouter";

/** A whole number in the address, such as `machines=25`; what cannot be one is as if nothing were said. */
export function useAskedCount(
  name: string,
  usual: number,
  most: number,
): readonly [number, (count: number) => void] {
  const [params, setParams] = useSearchParams();
  const asked = Number(params.get(name) ?? "");
  const count = Number.isInteger(asked) && asked >= 1 && asked <= most ? asked : usual;
  const set = useCallback(
    (next: number) =>
      setParams(
        (before) => {
          const after = new URLSearchParams(before);
          if (next === usual) after.delete(name);
          else after.set(name, String(next));
          return after;
        },
        { replace: true },
      ),
    [setParams, name, usual],
  );
  return [count, set];
}
