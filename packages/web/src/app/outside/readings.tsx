import { NativeSelect, TextInput } from "@mantine/core";
import { type KeyboardEvent, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useSession } from "../session/session.tsx";
import { usePick, useWords } from "../words.tsx";
import { shortText, typedNumber, verdictOf } from "./number-text.ts";
import { VerdictMark } from "./state-mark.tsx";
import { useEdit } from "./use-edit.ts";

type Sample = ViewEntry<"outsideDetail">["samples"][number];
type Judged = Sample["dimensions"][number];

/** What was measured on a sample; each reading is judged while it is typed. */
export function Readings({ sample, mayEdit }: { readonly sample: Sample; readonly mayEdit: boolean }) {
  const words = useWords().outside;
  const own = words.samples;
  const pick = usePick();
  const { status } = useSession();
  const { edit, failed } = useEdit();
  const { id } = sample.row;
  const by = status.person?.name ?? "local";
  const write = (mark: string, cells: Readonly<Record<string, string>>): void => {
    const rows = [{ table: "sample_values", key: { sample: id, mark }, cells: { ...cells, by } }];
    void edit(own.notes.reading(mark, id), { kind: "put", rows });
  };
  return (
    <div className="plain-scroll">
      <table className="plain readings">
        <thead>
          <tr>
            <th scope="col">{words.marks.mark}</th>
            <th scope="col">{words.marks.label}</th>
            <th scope="col">{words.marks.limits}</th>
            <th scope="col">{own.reading}</th>
            <th scope="col">{own.verdict}</th>
          </tr>
        </thead>
        <tbody>
          {sample.dimensions.map((one) => (
            <ReadingRow
              key={one.mark}
              one={one}
              label={one.labels.en === one.mark ? "" : pick(one.labels.en, one.labels.zh)}
              write={mayEdit ? (cells) => write(one.mark, cells) : null}
            />
          ))}
        </tbody>
      </table>
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
    </div>
  );
}

/** Enter goes on to the next reading: whoever measures has one hand free. */
function goOn(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== "Enter") return;
  event.preventDefault();
  const fields = [...(event.currentTarget.closest("table")?.querySelectorAll("input, select") ?? [])];
  const next = fields[fields.indexOf(event.currentTarget) + 1];
  if (next instanceof HTMLElement) next.focus();
  else event.currentTarget.blur();
}

function ReadingRow({
  one,
  label,
  write,
}: {
  readonly one: Judged;
  readonly label: string;
  /** Null: it is only shown. */
  readonly write: ((cells: Readonly<Record<string, string>>) => void) | null;
}) {
  const words = useWords().outside;
  const own = words.samples;
  const known = one.reading === null ? "" : shortText(one.reading);
  const [draft, setDraft] = useState<string | null>(null);
  const text = draft ?? known;
  const reading = typedNumber(text);
  const isWrong = text.trim() !== "" && reading === null;
  const isLooked = one.nominal === null;
  const verdict = isLooked || draft === null ? one.verdict : isWrong ? "open" : verdictOf(reading, one);
  const commit = (): void => {
    if (draft === null || isWrong) return;
    setDraft(null);
    if (draft.trim() !== known) write?.({ value: reading === null ? "" : String(reading) });
  };
  const off =
    one.deviation === null || draft !== null
      ? ""
      : [
          own.off(
            `${one.deviation > 0 ? "+" : one.deviation < 0 ? "−" : ""}${shortText(Math.abs(one.deviation))} ${one.unit}`,
          ),
          one.used === null ? "" : own.share(String(Math.round(one.used * 100))),
        ]
          .filter((part) => part !== "")
          .join(", ");
  return (
    <tr>
      <th scope="row">
        <span className="balloon">{one.mark}</span>
      </th>
      <td>{label}</td>
      <td>
        {one.min === null || one.max === null
          ? words.marks.look
          : `${shortText(one.min)} … ${shortText(one.max)} ${one.unit}`}
      </td>
      <td>
        {write === null ? (
          isLooked ? (
            own[one.good]
          ) : (
            known || "–"
          )
        ) : isLooked ? (
          <NativeSelect
            aria-label={own.lookOf(one.mark)}
            value={one.good}
            data={(["unsaid", "yes", "no"] as const).map((value) => ({ value, label: own[value] }))}
            onChange={({ currentTarget: { value } }) => write({ good: value === "unsaid" ? "" : value })}
          />
        ) : (
          <TextInput
            aria-label={own.readingOf(one.mark)}
            className="reading"
            inputMode="decimal"
            autoComplete="off"
            value={text}
            error={isWrong ? words.marks.notNumber : null}
            rightSection={<span className="dim">{one.unit}</span>}
            rightSectionWidth={44}
            onChange={({ currentTarget: { value } }) => setDraft(value)}
            onBlur={commit}
            onKeyDown={goOn}
          />
        )}
      </td>
      <td>
        <VerdictMark verdict={verdict} />
        {off !== "" && <small>{off}</small>}
      </td>
    </tr>
  );
}
