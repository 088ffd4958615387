import type { ViewEntry } from "../../worker/protocol.ts";

type RunRow = ViewEntry<"runs">;

/** Machines with other options than the usual ones. */
export interface DraftMix {
  /** Stays the same while it is edited. */
  readonly key: string;
  readonly optionIds: readonly string[];
  readonly machines: number;
}

/** A run as it is being written. */
export interface RunDraft {
  readonly label: string;
  readonly labelZh: string;
  readonly machines: number;
  readonly ship: string;
  readonly begin: string;
  readonly state: RunRow["state"];
  readonly confidencePct: number;
  readonly spareYears: number;
  readonly remark: string;
  readonly mix: readonly DraftMix[];
}

export const STATES = ["planned", "frozen", "building", "done"] as const satisfies readonly RunRow["state"][];
export const MOST_MACHINES = 100_000;

export const NEW_RUN: RunDraft = {
  label: "",
  labelZh: "",
  machines: 25,
  ship: "",
  begin: "",
  state: "planned",
  confidencePct: 95,
  spareYears: 5,
  remark: "",
  mix: [],
};

const namesOf = (options: string): readonly string[] => options.split(/\s+/u).filter((one) => one !== "");

export const draftOf = (run: RunRow): RunDraft => ({
  label: run.label,
  labelZh: run.labelZh,
  machines: run.machines,
  ship: run.ship,
  begin: run.begin,
  state: run.state,
  confidencePct: run.confidencePct,
  spareYears: run.spareYears,
  remark: run.remark,
  mix: run.mix.map(({ options, machines }, i) => ({ key: `${i}`, optionIds: namesOf(options), machines })),
});

/** What keeps a run from being written down. */
export type RunFault = "noName" | "noMachines" | "noShip";

const DAY = /^\d{4}-\d{2}-\d{2}$/u;

export function faultsOf({ label, labelZh, machines, ship }: RunDraft): readonly RunFault[] {
  const faults: RunFault[] = [];
  if (label.trim() === "" && labelZh.trim() === "") faults.push("noName");
  if (!(Number.isInteger(machines) && machines >= 1 && machines <= MOST_MACHINES)) faults.push("noMachines");
  if (!DAY.test(ship)) faults.push("noShip");
  return faults;
}

/** An id that no run has, made of the run's name. */
export function newRunId(label: string, taken: ReadonlySet<string>): string {
  const slug = label
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, "-")
    .replace(/^-|-$/gu, "")
    .slice(0, 40)
    .replace(/-$/u, "");
  const base = slug === "" ? "run" : slug;
  for (let n = 1; ; n++) {
    const id = n === 1 && slug !== "" ? base : `${base}-${n}`;
    if (!taken.has(id)) return id;
  }
}

type Cells = Readonly<Record<string, string>>;
interface Put {
  readonly table: string;
  readonly key: Cells;
  readonly cells: Cells;
}

const numberText = (value: number): string => String(value);

/** Rows of the shop that say what a draft says, and those of the mix that go. */
export function rowsOf(
  id: string,
  draft: RunDraft,
  machineId: string,
  before: RunRow | null,
): { readonly rows: readonly Put[]; readonly gone: readonly Omit<Put, "cells">[] } {
  const mix = new Map<string, number>();
  for (const { optionIds, machines } of draft.mix) {
    const options = [...optionIds].sort().join(" ");
    if (options !== "" && machines > 0) mix.set(options, (mix.get(options) ?? 0) + machines);
  }
  const run: Put = {
    table: "runs",
    key: { id },
    cells: {
      label: draft.label.trim(),
      label_zh: draft.labelZh.trim(),
      book: before?.bookId ?? machineId,
      machines: numberText(draft.machines),
      ship: draft.ship,
      begin: draft.begin,
      state: draft.state,
      confidence_pct: numberText(draft.confidencePct),
      spare_years: numberText(draft.spareYears),
      remark: draft.remark.trim(),
    },
  };
  const mixRows = [...mix].map(
    ([options, machines]): Put => ({
      table: "run_mix",
      key: { run: id, options },
      cells: { machines: numberText(machines) },
    }),
  );
  const gone = (before?.mix ?? [])
    .filter(({ options }) => !mix.has(options))
    .map(({ options }) => ({ table: "run_mix", key: { run: id, options } }));
  return { rows: [run, ...mixRows], gone };
}
