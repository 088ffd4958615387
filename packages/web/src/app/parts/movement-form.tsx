import { Button, NativeSelect, Select, TextInput } from "@mantine/core";
import { textOfDecimal } from "@pinwright/kernel";
import { type FormEvent, useMemo, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { today } from "../runs/today.ts";
import { useSession } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { usePick, useWords } from "../words.tsx";
import { quantityText } from "./amounts.ts";
import { type Draft, judged, MOVEMENT_KINDS, quantityOf } from "./movement.ts";

type Named = ViewEntry<"stockNames">["runs"][number];

/** Parts that the list offers at once: the rest is found by typing. */
const OFFERED = 50;

const newDraft = (partId: string, revision: string): Draft => ({
  kind: "received",
  partId,
  revision,
  quantity: "",
  day: today(),
  runId: "",
  stageId: "",
  orderId: "",
  siteId: "",
  reason: "",
});

/** Writes down what came in or went out. Less than nothing is refused, unless somebody says why. */
export function MovementForm({
  lines,
  names,
  partId,
  choosePart,
}: {
  readonly lines: Entries<"stock">;
  readonly names: ViewEntry<"stockNames">;
  readonly partId: string | null;
  readonly choosePart: (id: string | null) => void;
}) {
  const words = useWords().parts;
  const own = words.stock;
  const pick = usePick();
  const desk = useDesk();
  const trouble = useTrouble();
  const { status } = useSession();
  const [draft, setDraft] = useState<Draft>(() =>
    newDraft(partId ?? "", lines.get(partId ?? "")?.revision ?? ""),
  );
  const [isTried, setTried] = useState(false);
  const [said, setSaid] = useState("");
  const [failed, setFailed] = useState("");
  const shown: Draft =
    partId !== null && partId !== draft.partId
      ? { ...draft, partId, revision: lines.get(partId)?.revision ?? "" }
      : draft;
  const line = lines.get(shown.partId);
  const { before, after, faults } = judged(shown, line);
  const set = (change: Partial<Draft>): void => {
    setDraft({ ...shown, ...change });
    setSaid("");
  };
  const offered = useMemo(
    () =>
      [...lines.values()].map((one) => {
        const name = pick(one.label, one.labelZh);
        return { value: one.id, label: name === "" ? one.id : `${name} · ${one.id}` };
      }),
    [lines, pick],
  );
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setTried(true);
    const quantity = quantityOf(shown.quantity);
    if (faults.length > 0 || quantity === null || line === undefined) return;
    setFailed("");
    const name = pick(line.label, line.labelZh) || line.id;
    const note = words.notes[shown.kind](quantityText(quantity, line.unit), name);
    const id = `mv.${shown.day.replaceAll("-", "")}.${crypto.randomUUID().slice(0, 8)}`;
    const cells = {
      day: shown.day,
      part: shown.partId,
      revision: shown.revision.trim(),
      kind: shown.kind,
      quantity: textOfDecimal(quantity),
      run: shown.runId,
      stage: shown.stageId,
      order: shown.kind === "received" ? shown.orderId : "",
      site: shown.siteId,
      reason: shown.reason.trim(),
      by: status.person?.name ?? "local",
    };
    desk.edit(note, { kind: "put", rows: [{ table: "movements", key: { id }, cells }] }).then(
      () => {
        setDraft({ ...shown, quantity: "", reason: "" });
        setTried(false);
        setSaid(own.entered(note));
      },
      (error: unknown) => setFailed(trouble(error)),
    );
  };
  const fault = (...of: readonly (typeof faults)[number][]): string | null => {
    const found = isTried ? faults.find((one) => of.includes(one)) : undefined;
    if (found === undefined) return null;
    return found === "below"
      ? own.wouldBeBelow(after === null ? "" : quantityText(after, line?.unit ?? "each"))
      : own[found];
  };
  const choice = (label: string, value: string, rows: readonly Named[], change: (id: string) => void) =>
    rows.length > 0 && (
      <NativeSelect
        label={label}
        value={value}
        data={[
          { value: "", label: own.none },
          ...rows.map((row) => ({ value: row.id, label: pick(row.label, row.labelZh) || row.id })),
        ]}
        onChange={(event) => change(event.currentTarget.value)}
      />
    );
  const takes = shown.kind !== "received" && shown.kind !== "counted";
  return (
    <form className="movement-form" onSubmit={submit} noValidate aria-label={own.form}>
      <h3>{own.form}</h3>
      <NativeSelect
        label={own.kind}
        value={shown.kind}
        data={MOVEMENT_KINDS.map((kind) => ({
          value: kind,
          label: `${own.kinds[kind]} – ${own.kindSays[kind]}`,
        }))}
        onChange={(event) => {
          const { value } = event.currentTarget;
          set({ kind: MOVEMENT_KINDS.find((kind) => kind === value) ?? "received" });
        }}
      />
      <Select
        label={own.part}
        placeholder={own.partHint}
        searchable
        limit={OFFERED}
        nothingFoundMessage={own.noPart}
        data={offered}
        value={shown.partId === "" ? null : shown.partId}
        error={fault("noPart")}
        onChange={(id) => {
          set({ partId: id ?? "", revision: lines.get(id ?? "")?.revision ?? "" });
          choosePart(id);
        }}
      />
      {line !== undefined &&
        (line.revision !== "" || line.revisions.some(({ revision }) => revision !== "")) && (
          <TextInput
            label={words.facts.revision}
            value={shown.revision}
            onChange={(event) => set({ revision: event.currentTarget.value })}
          />
        )}
      <TextInput
        label={line === undefined || line.unit === "each" ? own.quantity : `${own.quantity}, ${line.unit}`}
        inputMode="decimal"
        autoComplete="off"
        value={shown.quantity}
        error={fault("noQuantity", "onlyCount")}
        onChange={(event) => set({ quantity: event.currentTarget.value })}
      />
      <TextInput
        label={own.day}
        type="date"
        value={shown.day}
        error={fault("noDay")}
        onChange={(event) => set({ day: event.currentTarget.value })}
      />
      {shown.kind === "received" &&
        choice(
          own.order,
          shown.orderId,
          names.orders.map((id) => ({ id, label: "", labelZh: "" })),
          (orderId) => set({ orderId }),
        )}
      {takes && choice(own.run, shown.runId, names.runs, (runId) => set({ runId }))}
      {takes && choice(own.stage, shown.stageId, names.stages, (stageId) => set({ stageId }))}
      {names.sites.length > 1 && choice(own.site, shown.siteId, names.sites, (siteId) => set({ siteId }))}
      <TextInput
        label={own.reason}
        value={shown.reason}
        error={fault("below")}
        onChange={(event) => set({ reason: event.currentTarget.value })}
      />
      {line !== undefined && (
        <p className={after !== null && after < 0n ? "amber-text" : "dim"}>
          {own.becomes(
            quantityText(before, line.unit),
            after === null ? "…" : quantityText(after, line.unit),
          )}
        </p>
      )}
      <Button type="submit">{own.enter}</Button>
      <p role="status" className="dim">
        {said}
      </p>
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
    </form>
  );
}
