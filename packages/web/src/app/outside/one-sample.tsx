import { Button, Textarea } from "@mantine/core";
import { useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { today } from "../runs/today.ts";
import { useSession } from "../session/session.tsx";
import { usePick, useSpeech, useWords } from "../words.tsx";
import { checkSheetPath } from "./address.ts";
import { Readings } from "./readings.tsx";
import { StateMark } from "./state-mark.tsx";
import { useEdit } from "./use-edit.ts";

type Sample = ViewEntry<"outsideDetail">["samples"][number];

/** One sample: how it was made, what was measured, and what was decided. */
export function OneSample({
  sample,
  revision,
  mayEdit,
}: {
  readonly sample: Sample;
  /** The part's present revision. */
  readonly revision: string;
  readonly mayEdit: boolean;
}) {
  const words = useWords().outside;
  const own = words.samples;
  const pick = usePick();
  const { language } = useSpeech();
  const { bookId } = useDesk();
  const suppliers = useView("outsideSuppliers", null);
  const { row } = sample;
  const supplier = row.supplier === null ? undefined : suppliers?.get(row.supplier);
  const by =
    row.supplier === null
      ? own.ownShop
      : pick(supplier?.label ?? "", supplier?.labelZh ?? "") || row.supplier;
  const facts = [
    [own.made, row.made],
    [own.supplier, by],
    [own.asked, row.asked],
    [own.received, row.received],
    [own.decided, row.decided],
    [own.by, row.by],
  ] as const;
  return (
    <article className="one-sample" aria-label={row.id}>
      <header>
        <h4>{row.id}</h4>
        <span>
          {words.revisionShort} {row.revision}
        </span>
        <StateMark state={row.state} />
        <span className="dim">{own.counts(sample.passed, sample.failed, sample.open)}</span>
        <a href={checkSheetPath(bookId, row.part, row.id, language)} target="_blank" rel="noreferrer">
          {own.sheet}
        </a>
      </header>
      <dl className="sample-facts">
        {facts
          .filter(([, value]) => value !== "")
          .map(([label, value]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
      </dl>
      {row.revision !== revision && <p className="amber-text">{own.otherRevision(row.revision)}</p>}
      {sample.dimensions.length > 0 && row.state !== "asked" && (
        <Readings sample={sample} mayEdit={mayEdit && row.state === "received"} />
      )}
      <Decision sample={sample} mayEdit={mayEdit} />
    </article>
  );
}

function Decision({ sample, mayEdit }: { readonly sample: Sample; readonly mayEdit: boolean }) {
  const own = useWords().outside.samples;
  const { status } = useSession();
  const { edit, failed } = useEdit();
  const { row } = sample;
  const [remark, setRemark] = useState(row.remark);
  const [wants, setWants] = useState<"approve" | "back" | null>(null);
  const by = status.person?.name ?? "local";
  const write = (note: string, cells: Readonly<Record<string, string>>): void => {
    setWants(null);
    void edit(note, { kind: "put", rows: [{ table: "samples", key: { id: row.id }, cells }] });
  };
  const failing = sample.dimensions.filter(({ verdict }) => verdict === "fail").map(({ mark }) => mark);
  const lacksRemark = remark.trim() === "";
  const approve = (): void => {
    if (failing.length > 0 && lacksRemark) setWants("approve");
    else
      write(own.notes.approved(row.id), { state: "approved", decided: today(), by, remark: remark.trim() });
  };
  const sendBack = (): void => {
    if (lacksRemark) setWants("back");
    else write(own.notes.back(row.id), { state: "sent-back", decided: today(), by, remark: remark.trim() });
  };
  if (row.state === "asked")
    return mayEdit ? (
      <div className="outside-buttons">
        <Button
          variant="default"
          onClick={() => write(own.notes.received(row.id), { state: "received", received: today() })}
        >
          {own.arrive}
        </Button>
      </div>
    ) : null;
  if (row.state !== "received" || !mayEdit)
    return (
      <>
        {row.remark !== "" && (
          <p>
            <span className="dim">{own.remark}:</span> {row.remark}
          </p>
        )}
        {mayEdit && (
          <button
            type="button"
            className="link-button"
            onClick={() => write(own.notes.reopened(row.id), { state: "received", decided: "", by: "" })}
          >
            {own.reopen}
          </button>
        )}
      </>
    );
  return (
    <div className="sample-decision">
      <Textarea
        label={own.remark}
        placeholder={own.remarkHint}
        autosize
        minRows={1}
        maxLength={500}
        value={remark}
        error={wants === "back" && lacksRemark ? own.needsRemark : null}
        onChange={({ currentTarget: { value } }) => setRemark(value.replace(/\s*\n\s*/g, " "))}
        onBlur={() => {
          if (remark.trim() !== row.remark) write(own.notes.remark(row.id), { remark: remark.trim() });
        }}
      />
      {failing.length > 0 && (
        <p className="amber-text" role={wants === "approve" ? "alert" : undefined}>
          {own.failsFirst(failing.join(", "))}
        </p>
      )}
      {sample.open > 0 && <p className="dim">{own.openFirst(sample.open)}</p>}
      <div className="outside-buttons">
        <Button onClick={approve}>{own.approve}</Button>
        <Button variant="default" onClick={sendBack}>
          {own.sendBack}
        </Button>
      </div>
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
    </div>
  );
}
