import { Button } from "@mantine/core";
import { useState } from "react";
import { useLocation } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useTrouble } from "../trouble.ts";
import { usePick, useWords } from "../words.tsx";
import { runsAddress } from "./address.ts";
import type { Run } from "./run-tab.ts";

/** Keeps the prices of today for a run, or lets it follow those of the day again. */
export function Freeze({ run, day }: { readonly run: Run; readonly day: string }) {
  const own = useWords().runs;
  const pick = usePick();
  const desk = useDesk();
  const trouble = useTrouble();
  const [failed, setFailed] = useState("");
  const name = pick(run.label, run.labelZh) || run.id;
  const isFrozen = run.frozenPrices > 0;
  const freeze = async (): Promise<void> => {
    const prices = await desk.ask("runPrices", { runId: run.id, today: day, change: null });
    await desk.edit(own.notes.freeze(name), {
      kind: "put",
      rows: [
        {
          table: "runs",
          key: { id: run.id },
          cells: { state: run.state === "planned" ? "frozen" : run.state },
        },
        ...prices.map((row) => ({ table: "run_prices", ...row })),
      ],
    });
  };
  const thaw = async (): Promise<void> => {
    const keys = await desk.ask("frozenKeys", { runId: run.id });
    await desk.edit(own.notes.thaw(name), {
      kind: "put",
      rows: [
        {
          table: "runs",
          key: { id: run.id },
          cells: { state: run.state === "frozen" ? "planned" : run.state },
        },
      ],
      gone: keys.map((key) => ({ table: "run_prices", key })),
    });
  };
  return (
    <>
      <Button
        variant="default"
        title={own.overview.freezeAbout}
        onClick={() => {
          setFailed("");
          (isFrozen ? thaw() : freeze()).catch((error: unknown) => setFailed(trouble(error)));
        }}
      >
        {isFrozen ? own.overview.thaw : own.overview.freeze}
      </Button>
      {isFrozen && <span className="dim">{own.overview.frozen(run.frozenPrices)}</span>}
      {failed !== "" && <span className="error-text">{failed}</span>}
    </>
  );
}

/** Deletes a run with its mix and its frozen prices; undo brings all of it back. */
export function Remove({ run }: { readonly run: Run }) {
  const own = useWords().runs;
  const pick = usePick();
  const desk = useDesk();
  const trouble = useTrouble();
  const [, go] = useLocation();
  const [failed, setFailed] = useState("");
  const remove = async (): Promise<void> => {
    const keys = await desk.ask("frozenKeys", { runId: run.id });
    await desk.edit(own.notes.remove(pick(run.label, run.labelZh) || run.id), {
      kind: "put",
      rows: [],
      gone: [
        ...run.mix.map(({ options }) => ({ table: "run_mix", key: { run: run.id, options } })),
        ...keys.map((key) => ({ table: "run_prices", key })),
        { table: "runs", key: { id: run.id } },
      ],
    });
    go(runsAddress(desk.bookId));
  };
  return (
    <>
      <Button variant="default" onClick={() => remove().catch((error: unknown) => setFailed(trouble(error)))}>
        {own.form.remove}
      </Button>
      {failed !== "" && <span className="error-text">{failed}</span>}
    </>
  );
}
