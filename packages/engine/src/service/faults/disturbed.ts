import type { ServiceFault } from "./fault.ts";

/** Faults as what no longer leads and what leads that should not. */
export interface Disturbed {
  /** Joints. */
  readonly open: ReadonlySet<number>;
  readonly closed: ReadonlySet<number>;
  /** Nodes that touch. */
  readonly joined: readonly (readonly [number, number])[];
  /** Contacts, each with the one whose place it has. */
  readonly swapped: ReadonlyMap<number, number>;
  readonly deadIds: ReadonlySet<string>;
  /** Elements of devices that are held in their working place, and that do not move. */
  readonly stuck: ReadonlySet<number>;
  readonly still: ReadonlySet<number>;
}

/** Several faults at once. */
export function disturbed(faults: readonly ServiceFault[]): Disturbed {
  const open = new Set<number>();
  const closed = new Set<number>();
  const joined: (readonly [number, number])[] = [];
  const swapped = new Map<number, number>();
  const deadIds = new Set<string>();
  const stuck = new Set<number>();
  const still = new Set<number>();
  for (const fault of faults)
    switch (fault.kind) {
      case "open":
        open.add(fault.joint);
        break;
      case "closed":
        closed.add(fault.joint);
        break;
      case "short":
        joined.push([fault.a, fault.b]);
        break;
      case "swapped":
        swapped.set(fault.a, fault.b).set(fault.b, fault.a);
        break;
      case "dead":
        deadIds.add(fault.itemId);
        break;
      case "mechanical":
        (fault.stuck ? stuck : still).add(fault.joint);
        break;
    }
  return { open, closed, joined, swapped, deadIds, stuck, still };
}
