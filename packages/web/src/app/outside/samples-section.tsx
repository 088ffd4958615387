import { Button, NativeSelect, TextInput } from "@mantine/core";
import { type FormEvent, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useView } from "../book/desk.tsx";
import { today } from "../runs/today.ts";
import { useMay } from "../session/session.tsx";
import { usePick, useWords } from "../words.tsx";
import { nextSampleId } from "./next-names.ts";
import { OneSample } from "./one-sample.tsx";
import { useEdit } from "./use-edit.ts";

type Detail = ViewEntry<"outsideDetail">;

/** Samples of a part, the last one first, with the form to ask for another. */
export function SamplesSection({ detail }: { readonly detail: Detail }) {
  const own = useWords().outside.samples;
  const mayEdit = useMay("designer");
  return (
    <section>
      <h3>{own.title}</h3>
      <p className="dim">{own.about}</p>
      {detail.samples.length === 0 && <p>{own.empty}</p>}
      {mayEdit && detail.revision !== "" && <AskSample detail={detail} />}
      {[...detail.samples].reverse().map((sample) => (
        <OneSample key={sample.row.id} sample={sample} revision={detail.revision} mayEdit={mayEdit} />
      ))}
    </section>
  );
}

function AskSample({ detail }: { readonly detail: Detail }) {
  const own = useWords().outside.samples;
  const pick = usePick();
  const { edit, failed } = useEdit();
  const suppliers = useView("outsideSuppliers", null);
  const [made, setMade] = useState("");
  const [supplier, setSupplier] = useState("");
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const taken = new Set(detail.samples.map(({ row }) => row.id));
    const id = nextSampleId(detail.id, detail.revision, taken);
    const cells = {
      part: detail.id,
      revision: detail.revision,
      made: made.trim(),
      supplier,
      asked: today(),
      state: "",
    };
    const rows = [{ table: "samples", key: { id }, cells }];
    void edit(own.notes.asked(id, detail.id), { kind: "put", rows }).then((done) => done && setMade(""));
  };
  return (
    <form className="outside-fields" onSubmit={submit} aria-label={own.ask}>
      <TextInput
        label={own.made}
        placeholder={own.madeHint}
        w={240}
        maxLength={80}
        value={made}
        onChange={({ currentTarget: { value } }) => setMade(value)}
      />
      <NativeSelect
        label={own.supplier}
        value={supplier}
        data={[
          { value: "", label: own.ownShop },
          ...[...(suppliers?.values() ?? [])].map((one) => ({
            value: one.id,
            label: pick(one.label, one.labelZh) || one.id,
          })),
        ]}
        onChange={({ currentTarget: { value } }) => setSupplier(value)}
      />
      <Button type="submit" variant="default">
        {own.ask}
      </Button>
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
    </form>
  );
}
