import { Button, NativeSelect, Textarea, TextInput } from "@mantine/core";
import { factBodySchema, type KeptProblem, PROBLEM_DEEDS, type ProblemDeed } from "@pinwright/contract";
import { type FormEvent, useState } from "react";
import { useDevice } from "../../../floor/device.tsx";
import { useMay } from "../../session/session.tsx";
import { useTrouble } from "../../trouble.ts";
import { useWords } from "../../words.tsx";
import { PictureField, useKeepPicture } from "./picture-field.tsx";

/** Adds what somebody has seen, tried, measured or decided. */
export function AddNote({ problem: { problem } }: { readonly problem: KeptProblem }) {
  const { serviceProblems } = useWords();
  const own = serviceProblems.add;
  const { write } = useDevice();
  const keep = useKeepPicture();
  const mayDecide = useMay("lead");
  const trouble = useTrouble();
  const deeds = PROBLEM_DEEDS.filter((one) => one !== "decided" || mayDecide);
  const [did, setDid] = useState<ProblemDeed>("seen");
  const [says, setSays] = useState("");
  const [unit, setUnit] = useState("");
  const [picture, setPicture] = useState<Blob | null>(null);
  const [failed, setFailed] = useState("");
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    try {
      const body = factBodySchema.parse({
        ...{ kind: "problem-note", problem, did, says: says.trim() },
        ...(unit.trim() === "" ? {} : { seenOn: unit.trim() }),
        ...(await keep(picture)),
      });
      await write([body]);
      setSays("");
      setUnit("");
      setPicture(null);
      setFailed("");
    } catch (error) {
      setFailed(trouble(error));
    }
  };
  return (
    <form className="bench-form" aria-label={own.title} onSubmit={(event) => void submit(event)}>
      <h3>{own.title}</h3>
      <div className="bench-fields">
        <NativeSelect
          label={own.did}
          value={did}
          data={deeds.map((value) => ({ value, label: serviceProblems.did[value] }))}
          onChange={(event) => {
            const { value } = event.currentTarget;
            setDid(deeds.find((one) => one === value) ?? "seen");
          }}
        />
        <TextInput
          label={own.unit}
          value={unit}
          maxLength={120}
          onChange={(event) => setUnit(event.currentTarget.value)}
        />
        <PictureField picture={picture} set={setPicture} />
      </div>
      <Textarea
        label={own.says}
        autosize
        minRows={2}
        maxLength={2000}
        value={says}
        onChange={(event) => setSays(event.currentTarget.value)}
      />
      {!mayDecide && <p className="dim">{own.lead}</p>}
      <div className="bench-buttons">
        <Button type="submit" disabled={says.trim() === "" && did !== "seen"}>
          {own.do}
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
