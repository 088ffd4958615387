import type { Model } from "../model.ts";
import { variants } from "../runs/planned.ts";

/** How far the machines of the runs are derived. */
export interface Prepared {
  readonly left: number;
  /** Options of the one that was derived just now; blank: all were there. */
  readonly options: string;
}

/** Derives one machine whose options some run asks for. Asked again and again, it gets to the end; between, others are heard. */
export function prepareRuns(model: Model, _: null): Prepared {
  const [next, ...rest] = variants.missing(model);
  if (next === undefined) return { left: 0, options: "" };
  variants.derive(model, next);
  return { left: rest.length, options: next.key };
}
