import { cabinetDevices } from "./cabinet-devices.ts";
import { boardRows } from "./electrics-boards.ts";
import { mechanismTypes } from "./mechanism-types.ts";
import { mechanisms } from "./mechanisms.ts";
import { playfieldLamps } from "./playfield-lamps.ts";
import { playfieldSwitches } from "./playfield-switches.ts";

export interface ItemLabel {
  readonly en: string;
  readonly zh: string;
}

const labels = new Map<string, ItemLabel>();
const placed = [playfieldLamps, playfieldSwitches, cabinetDevices, mechanisms].map((topic) => topic.tables);
for (const row of [...placed.flatMap((t) => [...(t.devices ?? []), ...(t.mechanisms ?? [])]), ...boardRows])
  labels.set(row.id, { en: row.label, zh: row.label_zh });
for (const mechanism of placed.flatMap((t) => t.mechanisms ?? [])) {
  for (const child of mechanismTypes.tables.mechanism_devices ?? []) {
    if (child.mechanism_type !== mechanism.type) continue;
    labels.set(`${mechanism.id}/${child.child}`, {
      en: `${mechanism.label}: ${child.label}`,
      zh: `${mechanism.label_zh}：${child.label_zh}`,
    });
  }
}

/**
 * Label of a device, board or mechanism's child, for the nets that lead to it.
 * @throws when nothing of that id is placed
 */
export function labelOf(id: string): ItemLabel {
  const label = labels.get(id);
  if (label === undefined) throw new Error(`Nothing is called ${id}.`);
  return label;
}

/** Label of several items that always go together. */
export function labelOfAll(ids: readonly string[]): ItemLabel {
  const first = labelOf(ids[0] ?? "");
  const last = labelOf(ids.at(-1) ?? "");
  return ids.length === 1 ? first : { en: `${first.en} … ${last.en}`, zh: `${first.zh} … ${last.zh}` };
}
