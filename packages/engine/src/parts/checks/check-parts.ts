import type { Bill, Finding, Machine } from "../../model/index.ts";

export function checkParts(_machine: Machine, _bill: Bill): readonly Finding[] {
  return [];
}
