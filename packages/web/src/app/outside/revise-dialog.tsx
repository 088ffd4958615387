import { Button, Modal, TextInput } from "@mantine/core";
import { type FormEvent, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useWords } from "../words.tsx";
import { nextRevision } from "./next-names.ts";
import { useEdit } from "./use-edit.ts";

/** Gives a part another present revision; the earlier one keeps its files and samples. */
export function ReviseDialog({
  detail,
  close,
}: {
  readonly detail: ViewEntry<"outsideDetail">;
  readonly close: () => void;
}) {
  const words = useWords().outside;
  const own = words.revise;
  const { edit, failed } = useEdit();
  const [revision, setRevision] = useState(() => nextRevision(detail.revision));
  const wanted = revision.trim();
  const isSame = wanted === detail.revision;
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (wanted === "" || isSame) return;
    const rows = [{ table: "parts", key: { id: detail.id }, cells: { revision: wanted } }];
    void edit(own.note(detail.id, wanted), { kind: "put", rows }).then((done) => done && close());
  };
  return (
    <Modal opened onClose={close} title={own.title(detail.id)}>
      <form className="outside-form" onSubmit={submit} noValidate>
        {detail.revision !== "" && <p>{own.about(detail.revision)}</p>}
        <TextInput
          label={own.field}
          data-autofocus
          maxLength={40}
          value={revision}
          error={isSame ? own.taken : null}
          onChange={({ currentTarget: { value } }) => setRevision(value)}
        />
        {failed !== "" && (
          <p className="error-text" role="alert">
            {failed}
          </p>
        )}
        <Button type="submit" disabled={wanted === "" || isSame}>
          {own.make}
        </Button>
      </form>
    </Modal>
  );
}
