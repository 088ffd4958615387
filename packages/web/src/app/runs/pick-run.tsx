import { NativeSelect } from "@mantine/core";
import type { Entries } from "../book/desk-client.ts";
import { usePick } from "../words.tsx";

/** Picks one of the runs that are planned. */
export function PickRun({
  label,
  runs,
  value,
  onPick,
}: {
  readonly label: string;
  readonly runs: Entries<"runs">;
  readonly value: string;
  readonly onPick: (id: string) => void;
}) {
  const pick = usePick();
  return (
    <NativeSelect
      label={label}
      value={value}
      data={[...runs.values()]
        .filter(({ isOfBook, state }) => isOfBook && state !== "done")
        .map((run) => ({ value: run.id, label: pick(run.label, run.labelZh) || run.id }))}
      onChange={(event) => onPick(event.currentTarget.value)}
    />
  );
}
