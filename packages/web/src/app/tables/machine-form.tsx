import { Checkbox, TextInput } from "@mantine/core";
import { MACHINE_TABLE, machineSchema, RANK } from "@pinwright/book";
import { useState } from "react";
import { useDesk, useView } from "../book/desk.tsx";
import { useMay } from "../session/session.tsx";
import { useWords } from "../words.tsx";
import { jsonOf, textOfJson } from "./logic/machine-values.ts";
import { useFaultText } from "./use-fault-text.ts";

/** The one row of the machine's table. */
const ROW = "machine";
const LANGUAGES = [
  ["en", "English"],
  ["zh", "简体中文"],
] as const;

/** What the book says of itself, as a form. */
export function MachineForm() {
  const words = useWords().tables;
  const faultText = useFaultText();
  const desk = useDesk();
  const readOnly = !useMay("lead");
  const cells = useView("table", MACHINE_TABLE)?.get(ROW);
  const faults = useView("tableFaults", MACHINE_TABLE)?.get(ROW) ?? [];
  if (cells === undefined) return null;
  const set = (key: string, to: string): void => {
    const from = cells[key] ?? "";
    if (from === to) return;
    void desk.edit(words.notes.machine(key), {
      kind: "changes",
      changes: [{ table: MACHINE_TABLE, row: ROW, column: key, from, to }],
    });
  };
  const known = Object.keys(machineSchema.shape);
  const others = Object.keys(cells).filter((key) => key !== RANK && !known.includes(key));
  const errorOf = (key: string): string | undefined => {
    const fault = faults.find((one) => one.column === key);
    return fault && faultText(fault);
  };
  return (
    <div className="page machine-form">
      <h2>{words.machine}</h2>
      <p className="dim">{words.machineForm.about}</p>
      {faults
        .filter(
          (fault) =>
            fault.column === null || !(known.includes(fault.column) || others.includes(fault.column)),
        )
        .map((fault) => (
          <p key={fault.expected} className="error-text">
            {faultText(fault)}
          </p>
        ))}
      {[...known, ...others].map((key) =>
        key === "languages" ? (
          <Checkbox.Group
            key={key}
            label={words.machineForm.keys[key]}
            error={errorOf(key)}
            value={languagesOf(cells[key] ?? "")}
            onChange={(chosen) => set(key, JSON.stringify(chosen))}
            readOnly={readOnly}
          >
            <div className="machine-languages">
              {LANGUAGES.map(([value, label]) => (
                <Checkbox key={value} value={value} label={label} disabled={readOnly} />
              ))}
            </div>
          </Checkbox.Group>
        ) : (
          <Field
            key={`${key} ${cells[key] ?? ""}`}
            label={words.machineForm.keys[key] ?? key}
            hint={words.machineForm.hints[key]}
            error={errorOf(key)}
            type={key === "date" ? "date" : "text"}
            readOnly={readOnly || key === "format"}
            value={textOfJson(cells[key] ?? "")}
            onDone={(text) => set(key, jsonOf(key, text))}
          />
        ),
      )}
    </div>
  );
}

const languagesOf = (json: string): string[] => {
  try {
    const parsed: unknown = JSON.parse(json);
    return Array.isArray(parsed) ? parsed.filter((one) => typeof one === "string") : [];
  } catch {
    return [];
  }
};

function Field({
  label,
  hint,
  error,
  type,
  readOnly,
  value,
  onDone,
}: {
  readonly label: string;
  readonly hint: string | undefined;
  readonly error: string | undefined;
  readonly type: "text" | "date";
  readonly readOnly: boolean;
  readonly value: string;
  readonly onDone: (text: string) => void;
}) {
  const [text, setText] = useState(value);
  return (
    <TextInput
      label={label}
      description={hint}
      error={error}
      type={type}
      readOnly={readOnly}
      value={text}
      onChange={(event) => setText(event.currentTarget.value)}
      onBlur={() => onDone(text)}
      onKeyDown={(event) => {
        if (event.key === "Enter") onDone(text);
        if (event.key === "Escape") setText(value);
      }}
    />
  );
}
