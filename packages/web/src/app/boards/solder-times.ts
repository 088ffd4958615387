import type { AskParam } from "../../worker/protocol.ts";

export type Times = AskParam<"soldering">["times"];
export type TimeName = keyof Times;

/** Times in the order in which they are shown: by hand, then of the bath. */
export const TIME_NAMES = [
  "hand_joint_s",
  "hand_setup_min",
  "bath_setup_min",
  "bath_kind_min",
  "bath_dip_min",
  "bath_mask_s",
  "bath_wash_min",
  "bath_touch_up_pct",
  "bath_hidden_s",
  "bath_people",
] as const satisfies readonly TimeName[];

export type TimeUnit = "s" | "min" | "pct" | "people";

/** The unit that the name of a setting ends with. */
export function unitOf(name: TimeName): TimeUnit {
  return (["s", "min", "pct"] as const).find((unit) => name.endsWith(`_${unit}`)) ?? "people";
}

/** A setting is drawn up to so many times what the shop says. */
const MOST_TIMES = 3;

/** Range and step of the slider of a setting: from nothing to a good deal more than the shop says, in round steps. */
export function rangeOf(name: TimeName, shop: number): { readonly most: number; readonly step: number } {
  if (name === "bath_people") return { most: Math.max(6, shop), step: 1 };
  const top = Math.max(shop, 1) * MOST_TIMES;
  const step = top > 100 ? 5 : top > 20 ? 1 : top > 5 ? 0.5 : 0.1;
  const most = Math.ceil(top / step) * step;
  return { most: name === "bath_touch_up_pct" ? Math.min(most, 100) : Number(most.toFixed(1)), step };
}

/** Counts that are other than so many machines have, as the address has them: `bt.lamp16:30,bt.coil8:0`. */
export function countsIn(text: string | null): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const pair of (text ?? "").split(",")) {
    const at = pair.lastIndexOf(":");
    const count = Number(pair.slice(at + 1));
    if (at > 0 && Number.isInteger(count) && count >= 0) counts.set(pair.slice(0, at), count);
  }
  return counts;
}

export const countsText = (counts: ReadonlyMap<string, number>): string =>
  [...counts].map(([typeId, count]) => `${typeId}:${count}`).join(",");
