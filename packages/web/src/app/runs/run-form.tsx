import { Button, NativeSelect, NumberInput, TextInput } from "@mantine/core";
import { type FormEvent, useId, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { useTrouble } from "../trouble.ts";
import { usePick, useWords } from "../words.tsx";
import { MixField } from "./mix-field.tsx";
import {
  draftOf,
  faultsOf,
  MOST_MACHINES,
  NEW_RUN,
  newRunId,
  type RunDraft,
  rowsOf,
  STATES,
} from "./run-draft.ts";

/** Writes a new run down, or changes one that is there. */
export function RunForm({
  run,
  runs,
  ground,
  done,
}: {
  /** Null: a new one. */
  readonly run: ViewEntry<"runs"> | null;
  readonly runs: Entries<"runs">;
  readonly ground: ViewEntry<"planGround">;
  /** Called with the id of what was written; null: nothing. */
  readonly done: (id: string | null) => void;
}) {
  const words = useWords();
  const own = words.runs.form;
  const pick = usePick();
  const desk = useDesk();
  const trouble = useTrouble();
  const [draft, setDraft] = useState<RunDraft>(run === null ? NEW_RUN : draftOf(run));
  const [isTried, setTried] = useState(false);
  const [failed, setFailed] = useState("");
  const title = useId();
  const faults = isTried ? faultsOf(draft) : [];
  const set = (change: Partial<RunDraft>): void => setDraft({ ...draft, ...change });
  const says = (fault: (typeof faults)[number]): string | null =>
    faults.includes(fault) ? own[fault] : null;
  const name = pick(draft.label, draft.labelZh);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setTried(true);
    if (faultsOf(draft).length > 0) return;
    setFailed("");
    const id = run?.id ?? newRunId(draft.label, new Set(runs.keys()));
    const put = rowsOf(id, draft, ground.machineId, run);
    const note = run === null ? words.runs.notes.make(name) : words.runs.notes.change(name);
    desk.edit(note, { kind: "put", ...put }).then(
      () => done(id),
      (error: unknown) => setFailed(trouble(error)),
    );
  };
  const number = (
    label: string,
    value: number,
    change: (value: number) => void,
    limits: { readonly min: number; readonly max: number },
  ) => <NumberInput label={label} value={value} {...limits} onChange={(to) => change(Number(to))} />;
  return (
    <form className="run-form" onSubmit={submit} aria-labelledby={title} noValidate>
      <h3 id={title}>{run === null ? own.new : own.change}</h3>
      <div className="run-fields">
        <TextInput
          label={own.name}
          value={draft.label}
          error={says("noName")}
          onChange={(event) => set({ label: event.currentTarget.value })}
        />
        <TextInput
          label={own.nameZh}
          value={draft.labelZh}
          onChange={(event) => set({ labelZh: event.currentTarget.value })}
        />
        <NumberInput
          label={own.machines}
          min={1}
          max={MOST_MACHINES}
          allowDecimal={false}
          value={draft.machines}
          error={says("noMachines")}
          onChange={(to) => set({ machines: Number(to) })}
        />
        <TextInput
          label={own.ship}
          type="date"
          value={draft.ship}
          error={says("noShip")}
          onChange={(event) => set({ ship: event.currentTarget.value })}
        />
        <TextInput
          label={own.begin}
          type="date"
          value={draft.begin}
          onChange={(event) => set({ begin: event.currentTarget.value })}
        />
        {run !== null && (
          <NativeSelect
            label={own.state}
            value={draft.state}
            data={STATES.map((state) => ({ value: state, label: words.runs.states[state] }))}
            onChange={(event) => {
              const { value } = event.currentTarget;
              set({ state: STATES.find((state) => state === value) ?? "planned" });
            }}
          />
        )}
        {number(own.confidence, draft.confidencePct, (confidencePct) => set({ confidencePct }), {
          min: 50,
          max: 99.99,
        })}
        {number(own.years, draft.spareYears, (spareYears) => set({ spareYears }), { min: 0, max: 50 })}
        <TextInput
          className="wide"
          label={own.remark}
          value={draft.remark}
          onChange={(event) => set({ remark: event.currentTarget.value })}
        />
      </div>
      {ground.options.length > 0 && (
        <MixField
          options={ground.options}
          machines={draft.machines}
          mix={draft.mix}
          onMix={(mix) => set({ mix })}
        />
      )}
      <div className="run-buttons">
        <Button type="submit">{run === null ? own.make : own.save}</Button>
        {(run !== null || runs.size > 0) && (
          <Button variant="default" onClick={() => done(null)}>
            {words.common.cancel}
          </Button>
        )}
      </div>
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
    </form>
  );
}
