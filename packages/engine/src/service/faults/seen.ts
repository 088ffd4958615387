import { SYMPTOMS, type Symptom } from "./fault.ts";

/** What somebody saw: one of the symptoms, or now and then. */
export const SEEN = [...SYMPTOMS, "sometimes"] as const;
export type Seen = (typeof SEEN)[number];

/** What was seen of functions, by their index; of those that are not in it nothing is known. */
export type Sightings = ReadonlyMap<number, Seen>;

/** What two faults do to one function: what does nothing cannot do it all the time or with another. */
export function worse(one: Symptom, other: Symptom): Symptom {
  if (one === "dead") return one;
  if (other === "dead") return other;
  return SYMPTOMS.indexOf(one) <= SYMPTOMS.indexOf(other) ? one : other;
}
