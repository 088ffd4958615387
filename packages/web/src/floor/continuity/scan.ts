import {
  type AdapterFault,
  formatAdapter,
  groupsOfScan,
  parseAdapter,
  parseScanFile,
  type ScanFileFault,
  type TestBench,
} from "@pinwright/engine";

/** What a scan says of the harness on the bench, or why it says nothing. */
export type ScanReading =
  | {
      readonly kind: "read";
      /** Group of each place, in the order of the bench's places. */
      readonly groups: readonly number[];
      readonly tester: string;
      /** Points that belong to no place and read joined all the same. */
      readonly strays: readonly number[];
      /** Pairs of points of which only one try named the other. */
      readonly oneSided: readonly (readonly [number, number])[];
    }
  | { readonly kind: "faulty"; readonly faults: readonly ScanFileFault[] }
  | { readonly kind: "adapter"; readonly faults: readonly AdapterFault[] }
  | { readonly kind: "too-few"; readonly points: number; readonly places: number }
  | { readonly kind: "other-unit"; readonly unit: string };

/**
 * Reads a scan in the format of docs/tester-protocol.md as readings of a harness.
 * @param adapterText list of the adapter; null: one that is built in the order of the places
 * @param unit serial number of the harness on the bench
 */
export function readScan(
  text: string,
  bench: TestBench,
  adapterText: string | null,
  unit: string,
): ScanReading {
  const { file, faults } = parseScanFile(text);
  if (file === null) return { kind: "faulty", faults };
  if (file.unit !== "" && file.unit !== unit) return { kind: "other-unit", unit: file.unit };
  const { points } = file.scan;
  const { length: places } = bench.places;
  if (points < places) return { kind: "too-few", points, places };
  const read = parseAdapter(adapterText ?? formatAdapter(bench), bench, points);
  if (read.faults.length > 0) return { kind: "adapter", faults: read.faults };
  const { groups, strays } = groupsOfScan(bench, read.adapter, file.scan);
  return { kind: "read", groups, strays, tester: file.tester, oneSided: file.oneSided };
}
