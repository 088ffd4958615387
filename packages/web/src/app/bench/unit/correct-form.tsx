import { Button, Checkbox, NativeSelect, Textarea, TextInput } from "@mantine/core";
import { type Fact, factBodySchema } from "@pinwright/contract";
import { type FormEvent, useState } from "react";
import { useDevice } from "../../../floor/device.tsx";
import { useView } from "../../book/desk.tsx";
import { useTrouble } from "../../trouble.ts";
import { usePick, useWords } from "../../words.tsx";
import { type Field, type Fields, fieldsOf, replaced } from "./correction.ts";

/** Corrects a record: it stays and does not count any more, and what is right becomes a record behind the correction. */
export function CorrectForm({
  fact,
  title,
  close,
}: {
  readonly fact: Fact;
  readonly title: string;
  readonly close: () => void;
}) {
  const { benchUnit: own } = useWords();
  const { write } = useDevice();
  const trouble = useTrouble();
  const held = fieldsOf(fact.body);
  const [why, setWhy] = useState("");
  const [fields, setFields] = useState<Fields>(held ?? {});
  const [isReplaced, setReplaced] = useState(held !== null);
  const [failed, setFailed] = useState("");
  const right = isReplaced ? replaced(fact.body, fields) : null;
  const isRight = !isReplaced || (right !== null && factBodySchema.safeParse(right).success);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const { stream, seq } = fact;
    const correction = { kind: "correction", stream, seq, why: why.trim() } as const;
    // Both or none: nothing is taken back without what takes its place.
    write(right === null ? [correction] : [correction, right]).then(close, (error: unknown) =>
      setFailed(trouble(error)),
    );
  };
  return (
    <form className="unit-lift" onSubmit={submit} aria-label={own.record.correctTitle(title)}>
      <p className="dim">{own.record.correctAbout}</p>
      <Textarea
        label={own.record.why}
        autosize
        minRows={1}
        value={why}
        onChange={(event) => setWhy(event.currentTarget.value)}
      />
      {held !== null && (
        <Checkbox
          label={own.record.instead}
          checked={isReplaced}
          onChange={(event) => setReplaced(event.currentTarget.checked)}
        />
      )}
      {isReplaced && held !== null && (
        <div className="bench-fields">
          {FIELDS.filter((field) => held[field] !== undefined).map((field) => (
            <FieldInput
              key={field}
              field={field}
              value={fields[field] ?? ""}
              set={(value) => setFields({ ...fields, [field]: value })}
            />
          ))}
        </div>
      )}
      <div className="bench-buttons">
        <Button type="submit" disabled={why.trim() === "" || !isRight}>
          {own.record.do}
        </Button>
        <Button variant="default" onClick={close}>
          {own.record.cancel}
        </Button>
      </div>
      {failed !== "" && <p className="error-text">{failed}</p>}
    </form>
  );
}

const FIELDS: readonly Field[] = [
  ...(["what", "cause", "value", "good", "minutes", "count"] as const),
  ...(["part", "lot", "quantity", "stage", "place", "text"] as const),
];

function FieldInput({
  field,
  value,
  set,
}: {
  readonly field: Field;
  readonly value: string;
  readonly set: (value: string) => void;
}) {
  const { benchUnit: own, floor } = useWords();
  const pick = usePick();
  const names = useView("benchNames", null);
  const label = own.record[field];
  const select = (data: readonly { readonly value: string; readonly label: string }[]) => (
    <NativeSelect
      label={label}
      value={value}
      data={data.some((one) => one.value === value) ? [...data] : [{ value, label: value }, ...data]}
      onChange={(event) => set(event.currentTarget.value)}
    />
  );
  const named = (kind: string) =>
    select(
      [...(names ?? [])].flatMap(([key, row]) =>
        key.startsWith(`${kind} `) ? [{ value: row.id, label: pick(row.label, row.labelZh) || row.id }] : [],
      ),
    );
  const ofWords = (words: Readonly<Record<string, string>>) =>
    select(Object.entries(words).map(([key, text]) => ({ value: key, label: text })));
  switch (field) {
    case "good":
      return select([
        { value: "yes", label: own.readings.good },
        { value: "no", label: own.readings.bad },
      ]);
    case "stage":
    case "place":
    case "part":
      return named(field);
    case "what":
      return ofWords(floor.defect.whats);
    case "cause":
      return ofWords(floor.mend.causes);
    default:
      return (
        <TextInput
          label={label}
          inputMode={field === "text" || field === "lot" ? "text" : "decimal"}
          value={value}
          onChange={(event) => set(event.currentTarget.value)}
        />
      );
  }
}
