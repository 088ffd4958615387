/** Something that is wrong in a machine. Joints and nodes are those of its `ServiceNetwork`. */
export type ServiceFault =
  /** A wire, contact, fuse, winding, driver … lets nothing through. */
  | { readonly kind: "open"; readonly joint: number }
  /** A driver, contact, winding or diode lets everything through. */
  | { readonly kind: "closed"; readonly joint: number }
  /** Two nodes touch. */
  | { readonly kind: "short"; readonly a: number; readonly b: number }
  /** Two contacts have changed places in their housing. */
  | { readonly kind: "swapped"; readonly a: number; readonly b: number }
  /** A board or a supply does nothing although it is fed. */
  | { readonly kind: "dead"; readonly itemId: string }
  /** What moves sticks, is worn or out of adjustment: the electricity is sound. `stuck`: a contact that stays closed. */
  | { readonly kind: "mechanical"; readonly joint: number; readonly stuck: boolean };

/** What a function does: as it should; nothing; all the time; together with another or at another's command. */
export const SYMPTOMS = ["works", "dead", "on", "mixed"] as const;
export type Symptom = (typeof SYMPTOMS)[number];
