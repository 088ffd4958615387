import type { ElectricSolution, Finding, Machine } from "../../../model/index.ts";
import { addressTwice } from "./address-twice.ts";
import { busEnds } from "./bus-ends.ts";
import { deviceUnused } from "./device-unused.ts";
import { driverAmps } from "./driver-amps.ts";
import { driverShared } from "./driver-shared.ts";
import { type ProgramFacts, programFacts } from "./facts.ts";
import { loadOnInput } from "./load-on-input.ts";
import { pulseTimeout } from "./pulse-timeout.ts";
import { switchOnDriver } from "./switch-on-driver.ts";

const RULES: readonly ((facts: ProgramFacts) => readonly Finding[])[] = [
  addressTwice,
  busEnds,
  deviceUnused,
  driverAmps,
  driverShared,
  loadOnInput,
  pulseTimeout,
  switchOnDriver,
];

/**
 * Whether each point is able to do what hangs on it: kind and current of drivers, addresses and ends of the bus, and
 * devices that nothing drives or reads. Currents are taken from the solved networks when they are given.
 */
export function checkProgram(machine: Machine, solution: ElectricSolution | null = null): readonly Finding[] {
  const facts = programFacts(machine, solution);
  return RULES.flatMap((rule) => rule(facts));
}
