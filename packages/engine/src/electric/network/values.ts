import type { BookRow, ShopNumbers } from "@pinwright/book";
import type { Corner } from "../../model/index.ts";
import { contactOhm } from "../physics/contact-resistance.ts";
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
export function fuseOhm(row: BookRow<"elements">, numbers: ShopNumbers): number {
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

/**
 * Ω of a part that conducts: of a driver or contact closed, of a diode or LED beyond its forward voltage, of a motor or
 * coil its winding. Wires and windings are as warm as the corner says.
 */
export function ohmOf(part: Part, { corner, numbers, lengthsMm }: Conditions): number {
  const celsius = cornerCelsius(corner, numbers);
  switch (part.kind) {
    case "source":
      return 0;
    case "wire": {
      const lengthMm = lengthsMm.get(part.id) ?? 0;
      return Math.max(LEAST_OHM, wireOhm(part.wire.wireType, lengthMm, numbers.strand_lay, celsius));
    }
    case "contact":
      return Math.max(LEAST_OHM, contactOhm(part.family, corner.contacts, numbers));
    case "element":
      return Math.max(LEAST_OHM, elementOhm(part.element.row, numbers, copperFactor(celsius)));
  }
}

function elementOhm(row: BookRow<"elements">, numbers: ShopNumbers, copper: number): number {
  switch (row.kind) {
    case "fuse":
      return fuseOhm(row, numbers);
    case "coil":
      return (row.ohm ?? 0) * copper;
    case "motor":
      return (row.ohm ?? (row.volt ?? 0) / Math.max(row.amp ?? 1, 0.001)) * copper;
    case "driver":
      return row.ohm ?? numbers.driver_on_mohm / 1000;
    case "led":
    case "diode":
      return junctionOhm(row);
    default:
      return row.ohm ?? 0;
  }
}
