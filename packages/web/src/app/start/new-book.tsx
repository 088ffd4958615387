import { Button, NativeSelect, TextInput } from "@mantine/core";
import type { NewBook } from "@pinwright/contract";
import { type FormEvent, useState } from "react";
import { useLocation } from "wouter";
import { call } from "../../api/call.ts";
import { useSession } from "../session/session.tsx";
import { useWords } from "../words.tsx";
import { bookIdFrom, isBookId } from "./book-id.ts";
import { refusalText } from "./refusal-text.ts";

const SOURCES: readonly NewBook["from"][] = ["blank", "first-light", "tidewatch"];

/** Makes a book: blank, or a copy of an example. */
export function NewBookForm() {
  const words = useWords();
  const { start } = words;
  const { status } = useSession();
  const [, go] = useLocation();
  const [label, setLabel] = useState("");
  const [labelZh, setLabelZh] = useState("");
  const [typedId, setTypedId] = useState<string | null>(null);
  const [from, setFrom] = useState<NewBook["from"]>("first-light");
  const [wrong, setWrong] = useState("");
  const [busy, setBusy] = useState(false);
  const id = typedId ?? bookIdFrom(label);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (!isBookId(id)) {
      setWrong(start.idWrong);
      return;
    }
    setBusy(true);
    try {
      const body = { id, label: label.trim(), labelZh: labelZh.trim(), from };
      const book = await call("addBook", { parts: {}, body, token: status.token });
      go(`/b/${book.id}`);
    } catch (error) {
      setWrong(refusalText(words, error));
      setBusy(false);
    }
  };
  const names = {
    blank: start.fromBlank,
    "first-light": start.fromFirstLight,
    tidewatch: start.fromTidewatch,
  };
  return (
    <section>
      <h2>{start.newBook}</h2>
      <p className="dim">{start.newHint}</p>
      <form onSubmit={(event) => void submit(event)}>
        <TextInput
          label={start.label}
          value={label}
          maxLength={200}
          required
          onChange={(event) => setLabel(event.currentTarget.value)}
        />
        <TextInput
          label={start.labelZh}
          value={labelZh}
          maxLength={200}
          onChange={(event) => setLabelZh(event.currentTarget.value)}
        />
        <TextInput
          label={start.id}
          description={start.idHint}
          value={id}
          maxLength={80}
          required
          error={id !== "" && !isBookId(id) ? start.idWrong : null}
          onChange={(event) => setTypedId(event.currentTarget.value)}
        />
        <NativeSelect
          label={start.from}
          value={from}
          data={SOURCES.map((value) => ({ value, label: names[value] }))}
          onChange={(event) => {
            const { value } = event.currentTarget;
            setFrom(SOURCES.find((source) => source === value) ?? from);
          }}
        />
        <p role="alert" className="error-text">
          {wrong}
        </p>
        <Button type="submit" loading={busy}>
          {start.make}
        </Button>
      </form>
    </section>
  );
}
