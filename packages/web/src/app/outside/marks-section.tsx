import { Button, TextInput } from "@mantine/core";
import { type FormEvent, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useMay } from "../session/session.tsx";
import { usePick, useWords } from "../words.tsx";
import { shortText, toleranceText, typedNumber } from "./number-text.ts";
import { useEdit } from "./use-edit.ts";

type Detail = ViewEntry<"outsideDetail">;
type Marked = Detail["marked"][number];

/** What the first article is measured for: the dimensions in balloons. */
export function MarksSection({ detail }: { readonly detail: Detail }) {
  const own = useWords().outside.marks;
  const pick = usePick();
  const mayEdit = useMay("designer");
  const { edit, failed } = useEdit();
  /** Mark that is changed; blank: a new one; null: none. */
  const [open, setOpen] = useState<string | null>(null);
  const remove = (mark: string): void => {
    const gone = [{ table: "dimensions", key: { part: detail.id, mark } }];
    void edit(own.notes.removed(mark, detail.id), { kind: "put", rows: [], gone });
  };
  return (
    <section>
      <h3>{own.title}</h3>
      <p className="dim">{own.about}</p>
      {detail.marked.length === 0 && <p>{own.empty}</p>}
      {detail.marked.length > 0 && (
        <div className="plain-scroll">
          <table className="plain">
            <thead>
              <tr>
                <th scope="col">{own.mark}</th>
                <th scope="col">{own.label}</th>
                <th scope="col" className="end">
                  {own.nominal}
                </th>
                <th scope="col">{`${own.minus}/${own.plus}`}</th>
                <th scope="col">{own.limits}</th>
                <th scope="col">{own.how}</th>
                {mayEdit && <td />}
              </tr>
            </thead>
            <tbody>
              {detail.marked.map((one) => (
                <tr key={one.mark}>
                  <th scope="row">
                    <span className="balloon">{one.mark}</span>
                  </th>
                  <td>{one.labels.en === one.mark ? "" : pick(one.labels.en, one.labels.zh)}</td>
                  <td className="end">
                    {one.nominal === null ? own.look : `${shortText(one.nominal)} ${one.unit}`}
                  </td>
                  <td>{toleranceText(one.nominal, one.minus, one.plus)}</td>
                  <td>
                    {one.min === null || one.max === null
                      ? "–"
                      : `${shortText(one.min)} … ${shortText(one.max)}`}
                  </td>
                  <td>{pick(one.how.en, one.how.zh)}</td>
                  {mayEdit && (
                    <td className="outside-actions">
                      <button type="button" className="link-button" onClick={() => setOpen(one.mark)}>
                        {own.change(one.mark)}
                      </button>
                      <button type="button" className="link-button" onClick={() => remove(one.mark)}>
                        {own.remove(one.mark)}
                      </button>
                    </td>
                  )}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
      {mayEdit && open === null && (
        <Button variant="default" onClick={() => setOpen("")}>
          {own.add}
        </Button>
      )}
      {mayEdit && open !== null && (
        <MarkForm
          key={open}
          partId={detail.id}
          marked={detail.marked}
          one={detail.marked.find(({ mark }) => mark === open)}
          close={() => setOpen(null)}
        />
      )}
    </section>
  );
}

/** The first number that no balloon has. */
const freeMark = (marked: readonly Marked[]): string => {
  const taken = new Set(marked.map(({ mark }) => mark));
  let n = 1;
  while (taken.has(String(n))) n++;
  return String(n);
};

const text = (value: number | null | undefined): string =>
  value === null || value === undefined || value === 0 ? "" : shortText(value);

function MarkForm({
  partId,
  marked,
  one,
  close,
}: {
  readonly partId: string;
  readonly marked: readonly Marked[];
  /** Dimension that is changed; absent: a new one. */
  readonly one: Marked | undefined;
  readonly close: () => void;
}) {
  const own = useWords().outside.marks;
  const { edit, failed } = useEdit();
  const [isTried, setTried] = useState(false);
  const [draft, setDraft] = useState({
    mark: one?.mark ?? freeMark(marked),
    label: one === undefined || one.labels.en === one.mark ? "" : one.labels.en,
    label_zh: one === undefined || one.labels.zh === one.labels.en ? "" : one.labels.zh,
    nominal: one?.nominal === 0 ? "0" : text(one?.nominal),
    minus: text(one?.minus),
    plus: text(one?.plus),
    unit: one === undefined || one.unit === "mm" ? "" : one.unit,
    how: one?.how.en ?? "",
  });
  const mark = draft.mark.trim();
  const isTaken = mark !== one?.mark && marked.some((other) => other.mark === mark);
  const markFault = mark === "" ? own.blank : isTaken ? own.taken : null;
  const isNumber = (value: string): boolean => value.trim() === "" || typedNumber(value) !== null;
  const numbers = ["nominal", "minus", "plus"] as const;
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setTried(true);
    if (markFault !== null || numbers.some((name) => !isNumber(draft[name]))) return;
    const plain = (value: string): string => {
      const number = typedNumber(value);
      return number === null ? "" : String(number);
    };
    const cells = {
      label: draft.label.trim(),
      label_zh: draft.label_zh.trim(),
      nominal: plain(draft.nominal),
      minus: plain(draft.minus),
      plus: plain(draft.plus),
      unit: draft.unit.trim(),
      how: draft.how.trim(),
    };
    const rows = [{ table: "dimensions", key: { part: partId, mark }, cells }];
    const gone =
      one === undefined || one.mark === mark
        ? []
        : [{ table: "dimensions", key: { part: partId, mark: one.mark } }];
    void edit(own.notes.set(mark, partId), { kind: "put", rows, gone }).then((done) => done && close());
  };
  const field = (
    name: keyof typeof draft,
    label: string,
    width: number,
    more: { readonly numeric?: boolean; readonly error?: string | null } = {},
  ) => (
    <TextInput
      label={label}
      w={width}
      value={draft[name]}
      inputMode={more.numeric === true ? "decimal" : "text"}
      autoComplete="off"
      error={isTried ? (more.error ?? null) : null}
      onChange={({ currentTarget: { value } }) => setDraft({ ...draft, [name]: value })}
    />
  );
  const numeric = (name: (typeof numbers)[number], label: string) =>
    field(name, label, 110, { numeric: true, error: isNumber(draft[name]) ? null : own.notNumber });
  return (
    <form className="outside-fields" onSubmit={submit} noValidate aria-label={own.add}>
      {field("mark", own.mark, 80, { error: markFault })}
      {field("label", own.label, 220)}
      {field("label_zh", own.labelZh, 160)}
      {numeric("nominal", own.nominal)}
      {numeric("minus", own.minusOf)}
      {numeric("plus", own.plusOf)}
      {field("unit", own.unit, 80)}
      {field("how", own.how, 200)}
      <div className="outside-buttons">
        <Button type="submit">{own.save}</Button>
        <Button variant="default" onClick={close}>
          {own.cancel}
        </Button>
      </div>
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
    </form>
  );
}
