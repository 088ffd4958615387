import type { BookRow, ShopNumbers } from "@pinwright/book";
import type { Corner } from "../../model/index.ts";
import { contactOhm, wearFactor } from "../physics/contact-resistance.ts";
import { copperFactor, wireOhm } from "../physics/wire-resistance.ts";
import type { Part, SourcePart } from "./parts.ts";

/** Least resistance that a part is counted with: a wire of no length and a diode without one. From memory. */
const LEAST_OHM = 1e-6;
/** Resistance of a diode or LED beyond its forward voltage where none is given. From memory: what its die has. */
const JUNCTION_OHM = 0.1;
/** Forward voltage of a silicon diode where none is given. From memory. */
const DIODE_V = 0.8;
/** What an open driver or contact lets through: 10 MΩ. From memory: the order of a transistor's leakage. */
export const OPEN_SIEMENS = 1e-7;
/** What a diode below its forward voltage lets through: 1 GΩ. From memory: the order of a junction's leakage. */
export const BLOCKED_SIEMENS = 1e-9;

/** What values of parts follow from beside the book: lengths, a corner, and the shop's numbers. */
export interface Conditions {
  readonly corner: Corner;
  readonly numbers: ShopNumbers;
  /** Finished length by wire id. */
  readonly lengthsMm: ReadonlyMap<string, number>;
}

/** Temperature of conductors and windings in a corner, °C. */
export const cornerCelsius = ({ temperature }: Corner, numbers: ShopNumbers): number =>
  temperature === "cold" ? numbers.cold_c : temperature === "hot" ? numbers.hot_c : 20;

/** Volts of a source in a corner: its nominal voltage less or more its tolerance. */
export function sourceVolts({ volts, tolerancePct }: SourcePart, { supply }: Corner): number {
  const share = supply === "low" ? -tolerancePct : supply === "high" ? tolerancePct : 0;
  return volts * (1 + share / 100);
}

/** Ω of a fuse or resettable fuse: its element's, else what drops the shop's fuse drop at its rating. */
function fuseOhm(row: BookRow<"elements">, numbers: ShopNumbers): number {
  return row.ohm ?? numbers.fuse_drop_mv / 1000 / Math.max(row.amp ?? 1, 0.01);
}

/** Back voltage of a running motor: its rated voltage less what its winding drops at its rated current. */
export function backVolts(row: BookRow<"elements">): number {
  if (row.volt === null || row.ohm === null || row.amp === null) return 0;
  return Math.max(0, row.volt - row.ohm * row.amp);
}

/**
 * Share of an LED's voltage at its rated current at which it begins to conduct, where no resistance is given: the rest
 * of its voltage is dropped by what resistance it has. From memory: the knee of a junction.
 */
const LED_KNEE = 0.8;

/** Forward voltage of a diode or LED: where its straight line begins. */
export function forwardVolts(row: BookRow<"elements">): number {
  if (row.kind !== "led") return row.volt ?? DIODE_V;
  return (row.volt ?? 0) * (row.ohm === null && row.amp !== null ? LED_KNEE : 1);
}

/** Resistance of a diode or LED beyond its forward voltage. */
function junctionOhm({ kind, ohm, volt, amp }: BookRow<"elements">): number {
  const given =
    kind === "led" && ohm === null && amp !== null ? ((1 - LED_KNEE) * (volt ?? 0)) / amp : (ohm ?? 0);
  return Math.max(JUNCTION_OHM, given);
}

/** Whether a part is a joint without resistance. */
export function isJoint(part: Part): boolean {
  if (part.kind !== "element") return false;
  const { kind, ohm } = part.element.row;
  return (kind === "link" || kind === "resistor") && (ohm ?? 0) === 0;
}

/** What a part's resistance changes with: the temperature of its copper, the wear of its contact, or nothing. */
export type Behaviour = "copper" | "contact" | "fixed";

export function behaviourOf(part: Part): Behaviour {
  if (part.kind === "wire") return "copper";
  if (part.kind === "contact") return "contact";
  const kind = part.kind === "element" ? part.element.row.kind : null;
  return kind === "coil" || kind === "motor" ? "copper" : "fixed";
}

/** What a corner makes of a resistance at the nominal corner, by what the part changes with. */
export function cornerFactors(corner: Corner, numbers: ShopNumbers): Readonly<Record<Behaviour, number>> {
  return {
    copper: copperFactor(cornerCelsius(corner, numbers)),
    contact: wearFactor(corner.contacts, numbers),
    fixed: 1,
  };
}

/**
 * Ω of a part that conducts, its contact new and its copper at 20 °C: of a driver or contact closed, of a diode or LED
 * beyond its forward voltage, of a motor or coil its winding.
 */
export function nominalOhm(
  part: Part,
  { numbers, lengthsMm }: Pick<Conditions, "numbers" | "lengthsMm">,
): number {
  switch (part.kind) {
    case "source":
      return 0;
    case "wire":
      return Math.max(
        LEAST_OHM,
        wireOhm(part.wire.wireType, lengthsMm.get(part.id) ?? 0, numbers.strand_lay),
      );
    case "contact":
      return Math.max(LEAST_OHM, contactOhm(part.family, "new", numbers));
    case "element":
      return Math.max(LEAST_OHM, elementOhm(part.element.row, numbers));
  }
}

function elementOhm(row: BookRow<"elements">, numbers: ShopNumbers): number {
  switch (row.kind) {
    case "fuse":
      return fuseOhm(row, numbers);
    case "motor":
      return row.ohm ?? (row.volt ?? 0) / Math.max(row.amp ?? 1, 0.001);
    case "driver":
      return row.ohm ?? numbers.driver_on_mohm / 1000;
    case "led":
    case "diode":
      return junctionOhm(row);
    default:
      return row.ohm ?? 0;
  }
}

/** Ω of a part that conducts, in a corner. */
export const ohmOf = (part: Part, conditions: Conditions): number =>
  nominalOhm(part, conditions) * cornerFactors(conditions.corner, conditions.numbers)[behaviourOf(part)];
