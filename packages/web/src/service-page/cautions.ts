import type { FaultFile } from "@pinwright/engine";
import type { FaultWords } from "@pinwright/words/service";
import type { Names } from "./names.ts";

/** Up to here direct current counts as safety extra-low voltage when touched: IEC 60335-1 clause 8.1.4. */
const SAFE_DC_V = 42.4;
/** Supplies keep less than this without harm (common practice, no source). */
const LEAST_STORED_J = 0.1;

interface Told {
  readonly file: FaultFile;
  readonly names: Names;
  readonly words: FaultWords["faults"];
  readonly cautions: FaultWords["cautions"];
}

/** What can hurt at a look: 1: the machine is open and off; 2: it is open and on. */
export function lookCautions(told: Told, danger: 0 | 1 | 2): readonly string[] {
  const { words } = told;
  if (danger === 0) return [];
  return danger === 1 ? [words.cautionFirst, ...stored(told)] : [words.cautionOn, ...high(told)];
}

/** All that can hurt at this machine. */
export function machineCautions(told: Told): readonly string[] {
  const { file, words, cautions } = told;
  const mains = file.mains.length > 0 ? [cautions.mainsMachine] : [];
  return [...mains, words.cautionFirst, ...high(told), ...stored(told), words.cautionOn, words.cautionLimit];
}

function high({ file, names, cautions }: Told): readonly string[] {
  const found = file.sources.filter(({ volts, isMains }) => volts > SAFE_DC_V && !isMains);
  const list = found.map(({ labels, volts }) => `${names.pick(labels)} ${volts} V`);
  return list.length === 0 ? [] : [cautions.coilSupply(list.join(", "))];
}

function stored({ file, names, cautions }: Told): readonly string[] {
  const found = file.sources.filter(({ storedJ }) => storedJ >= LEAST_STORED_J);
  const list = found.map(({ labels, storedJ }) => `${names.pick(labels)}: ${storedJ} J`);
  return list.length === 0 ? [] : [cautions.stored(list.join("; "))];
}
