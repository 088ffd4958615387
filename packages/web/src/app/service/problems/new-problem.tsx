import { Button, NativeSelect, Textarea, TextInput } from "@mantine/core";
import { factBodySchema, PROBLEM_SOURCES, type ProblemAbout, type ProblemSource } from "@pinwright/contract";
import { type FormEvent, useEffect, useState } from "react";
import { useLocation } from "wouter";
import { useDevice } from "../../../floor/device.tsx";
import { madeUp } from "../../../floor/outbox/outbox.ts";
import { useDesk } from "../../book/desk.tsx";
import { useTrouble } from "../../trouble.ts";
import { useWords } from "../../words.tsx";
import { problemAddress, serviceAddress } from "../address.ts";
import { AboutField } from "./about-field.tsx";
import { PictureField, useKeepPicture } from "./picture-field.tsx";

/** Writes down a problem: where it comes from, what is wrong, on which unit, and what of the machine it is about. */
export function NewProblem({ params }: { readonly params: URLSearchParams }) {
  const { serviceProblems } = useWords();
  const own = serviceProblems.make;
  const desk = useDesk();
  const { bookId } = desk;
  const [, go] = useLocation();
  const { write } = useDevice();
  const keep = useKeepPicture();
  const trouble = useTrouble();
  const [from, setFrom] = useState<ProblemSource>(
    PROBLEM_SOURCES.find((one) => one === params.get("from")) ?? "letter",
  );
  const [says, setSays] = useState(params.get("says") ?? "");
  const [unit, setUnit] = useState(params.get("unit") ?? "");
  const [about, setAbout] = useState<readonly ProblemAbout[]>([]);
  const [picture, setPicture] = useState<Blob | null>(null);
  const [failed, setFailed] = useState("");
  const asked = params.get("about") ?? "";
  const run = params.get("run");
  useEffect(() => {
    if (asked === "") return;
    desk.ask("problemSubject", asked).then(
      (subject) => subject !== null && setAbout((now) => (now.length === 0 ? [subject.about] : now)),
      () => undefined,
    );
  }, [desk, asked]);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const problem = madeUp("pb");
    try {
      const body = factBodySchema.parse({
        ...{ kind: "problem", problem, book: bookId, about, from, says: says.trim() },
        ...(unit.trim() === "" ? {} : { seenOn: unit.trim() }),
        ...(run === null ? {} : { run }),
        ...(await keep(picture)),
      });
      await write([body]);
      go(problemAddress(bookId, problem));
    } catch (error) {
      setFailed(trouble(error));
    }
  };
  return (
    <form className="bench-form problem-form" aria-label={own.title} onSubmit={(event) => void submit(event)}>
      <h2>{own.title}</h2>
      <div className="bench-fields">
        <NativeSelect
          label={own.from}
          value={from}
          data={PROBLEM_SOURCES.map((value) => ({ value, label: serviceProblems.from[value] }))}
          onChange={(event) => {
            const { value } = event.currentTarget;
            setFrom(PROBLEM_SOURCES.find((one) => one === value) ?? "letter");
          }}
        />
        <TextInput
          label={own.unit}
          placeholder={own.unitHint}
          value={unit}
          maxLength={120}
          onChange={(event) => setUnit(event.currentTarget.value)}
        />
        <PictureField picture={picture} set={setPicture} />
      </div>
      <Textarea
        label={from === "letter" ? own.letterSays : own.says}
        autosize
        minRows={3}
        maxLength={2000}
        value={says}
        onChange={(event) => setSays(event.currentTarget.value)}
      />
      <AboutField about={about} set={setAbout} />
      <div className="bench-buttons">
        <Button type="submit" disabled={says.trim() === "" || about.length === 0}>
          {own.do}
        </Button>
        <Button variant="default" onClick={() => go(serviceAddress(bookId, "problems"))}>
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
