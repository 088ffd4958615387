import { usePick, useWords } from "../words.tsx";
import { CountField } from "./count-field.tsx";
import { useView } from "./desk.tsx";

/** Runs that are offered by name. */
const SHOWN_RUNS = 4;

/** How many machines are made together: any number, or that of a run with one press. */
export function MachinesField({
  label,
  value,
  most,
  onCount,
}: {
  readonly label: string;
  readonly value: number;
  readonly most: number;
  readonly onCount: (count: number) => void;
}) {
  const words = useWords().panels;
  const pick = usePick();
  const runs = [...(useView("runSizes", null)?.values() ?? [])].slice(0, SHOWN_RUNS);
  return (
    <>
      <CountField label={label} value={value} most={most} onCount={onCount} />
      {runs.length > 0 && (
        <div className="run-sizes">
          {runs.map((run) => (
            <button
              key={run.id}
              type="button"
              aria-pressed={run.machines === value}
              disabled={run.machines > most}
              onClick={() => onCount(run.machines)}
            >
              {words.ofRun(pick(run.label, run.labelZh) || run.id, run.machines)}
            </button>
          ))}
        </div>
      )}
    </>
  );
}
