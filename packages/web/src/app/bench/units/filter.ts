import { UNIT_KINDS, type UnitKind, type UnitSummary } from "@pinwright/contract";
import { STATES, stateOf, type UnitListState } from "./hold.ts";

/** Which units are looked for; blank: any. */
export interface UnitFilter {
  readonly text: string;
  readonly kind: UnitKind | "";
  readonly type: string;
  /** `-`: those without a run. */
  readonly run: string;
  readonly state: UnitListState | "";
  /** `-`: those of which nobody said where they are. */
  readonly site: string;
}

/** Stands for “none”, which no id is. */
export const NONE = "-";

/** The filter that an address asks for. */
export function filterOf(params: URLSearchParams): UnitFilter {
  const get = (name: string): string => params.get(name) ?? "";
  return {
    text: get("q"),
    kind: UNIT_KINDS.find((kind) => kind === get("kind")) ?? "",
    type: get("type"),
    run: get("run"),
    state: STATES.find((state) => state === get("state")) ?? "",
    site: get("site"),
  };
}

/** How an address asks for a filter. */
export const paramsOf = ({ text, ...rest }: UnitFilter): Record<string, string> =>
  Object.fromEntries(Object.entries({ q: text, ...rest }).filter(([, value]) => value !== ""));

/** Units that a filter lets through, in their order. */
export function filtered(units: readonly UnitSummary[], filter: UnitFilter): readonly UnitSummary[] {
  const text = filter.text.trim().toLowerCase();
  const isOf = (wanted: string, value: string): boolean =>
    wanted === "" || value === (wanted === NONE ? "" : wanted);
  return units.filter(
    (unit) =>
      (text === "" || unit.unit.includes(text)) &&
      isOf(filter.kind, unit.what) &&
      isOf(filter.type, unit.type) &&
      isOf(filter.run, unit.run) &&
      (filter.state === "" || stateOf(unit) === filter.state) &&
      isOf(filter.site, unit.site),
  );
}
