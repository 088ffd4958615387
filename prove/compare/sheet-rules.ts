import type { Comparison } from "../../packages/engine/src/index.ts";
import type { Composed } from "./composed.ts";

/** placeholder */
export type SheetRule = Readonly<Record<string, never>>;
export const todo: SheetRule = {};
export const ruleDisagreements = (
  _rule: SheetRule,
  _shown: Composed,
  _comparison: Comparison,
): string[] => [];
