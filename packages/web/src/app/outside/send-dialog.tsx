import { Button, Checkbox, Modal, NativeSelect, Textarea, TextInput } from "@mantine/core";
import { pathTo, problemSchema, type SendOut, TOKEN_HEADER } from "@pinwright/contract";
import { type FormEvent, useState } from "react";
import { Refused, Unreachable } from "../../api/call.ts";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { today } from "../runs/today.ts";
import { useSession } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { usePick, useWords } from "../words.tsx";
import { typedNumber } from "./number-text.ts";

type Line = Pick<ViewEntry<"outsideLines">, "id" | "label" | "labelZh" | "revision" | "blocked">;

const LANGUAGES = ["en", "zh", "both"] as const;

/** Asks for a pack and lets the browser save it; gives the name of the file. */
async function savePack(bookId: string, token: string | null, order: SendOut): Promise<string> {
  const response = await fetch(pathTo("sendOut", { book: bookId }), {
    method: "POST",
    headers: { "content-type": "application/json", ...(token === null ? {} : { [TOKEN_HEADER]: token }) },
    body: JSON.stringify(order),
    credentials: "same-origin",
  }).catch(() => {
    throw new Unreachable("The server does not answer.");
  });
  if (!response.ok) {
    const problem = problemSchema.safeParse(await response.json().catch(() => null));
    throw problem.success ? new Refused(problem.data) : new Unreachable("The server does not answer.");
  }
  const said = /filename="([^"]+)"/.exec(response.headers.get("content-disposition") ?? "");
  const name = said?.[1] ?? "pack.zip";
  const link = document.createElement("a");
  link.href = URL.createObjectURL(await response.blob());
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return name;
}

/** Asks how many, by when and for whom, and makes the pack. */
export function SendDialog({
  parts,
  close,
}: {
  readonly parts: readonly Line[];
  readonly close: () => void;
}) {
  const words = useWords().outside;
  const own = words.send;
  const pick = usePick();
  const trouble = useTrouble();
  const { bookId } = useDesk();
  const { status } = useSession();
  const suppliers = useView("outsideSuppliers", null);
  const isBlocked = parts.some(({ blocked }) => blocked !== null);
  const [quantities, setQuantities] = useState<ReadonlyMap<string, string>>(new Map());
  const [due, setDue] = useState("");
  const [supplier, setSupplier] = useState("");
  const [sample, setSample] = useState(isBlocked);
  const [remark, setRemark] = useState("");
  const [language, setLanguage] = useState<(typeof LANGUAGES)[number]>("both");
  const [isTried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState("");
  const [failed, setFailed] = useState("");
  const textOf = (id: string): string => quantities.get(id) ?? "1";
  const quantityOf = (id: string): number => typedNumber(textOf(id)) ?? 0;
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setTried(true);
    if (parts.some(({ id }) => !(quantityOf(id) > 0))) return;
    setBusy(true);
    setFailed("");
    setSaid("");
    const wanted = parts.map(({ id }) => ({ part: id, quantity: quantityOf(id) }));
    savePack(bookId, status.token, { parts: wanted, date: today(), due, supplier, sample, remark, language })
      .then((name) => setSaid(own.made(name)))
      .catch((error: unknown) => setFailed(reason(error, trouble)))
      .finally(() => setBusy(false));
  };
  return (
    <Modal opened onClose={close} title={own.title} size="lg">
      <form className="outside-form" onSubmit={submit} noValidate>
        <p>{own.about}</p>
        <table className="plain">
          <thead>
            <tr>
              <th scope="col">{words.part}</th>
              <th scope="col">{words.revisionShort}</th>
              <th scope="col">{own.quantity}</th>
            </tr>
          </thead>
          <tbody>
            {parts.map(({ id, label, labelZh, revision, blocked }) => (
              <tr key={id}>
                <th scope="row">
                  {pick(label, labelZh) || id}
                  <small>{id}</small>
                  {blocked !== null && <small className="amber-text">{words.blocks[blocked]}</small>}
                </th>
                <td>{revision}</td>
                <td>
                  <TextInput
                    aria-label={own.quantityOf(id)}
                    inputMode="decimal"
                    w={110}
                    value={textOf(id)}
                    error={isTried && !(quantityOf(id) > 0) ? own.needsQuantity : null}
                    onChange={({ currentTarget: { value } }) =>
                      setQuantities(new Map([...quantities, [id, value]]))
                    }
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        <div className="outside-fields">
          <TextInput
            type="date"
            label={own.due}
            value={due}
            onChange={({ currentTarget: { value } }) => setDue(value)}
          />
          <NativeSelect
            label={own.supplier}
            value={supplier}
            data={[
              { value: "", label: own.nobody },
              ...[...(suppliers?.values() ?? [])].map((one) => ({
                value: one.id,
                label: pick(one.label, one.labelZh) || one.id,
              })),
            ]}
            onChange={({ currentTarget: { value } }) => setSupplier(value)}
          />
          <NativeSelect
            label={own.language}
            value={language}
            data={LANGUAGES.map((value) => ({ value, label: own.languages[value] }))}
            onChange={({ currentTarget: { value } }) =>
              setLanguage(LANGUAGES.find((one) => one === value) ?? "both")
            }
          />
        </div>
        <Checkbox
          label={own.sample}
          checked={sample}
          onChange={({ currentTarget: { checked } }) => setSample(checked)}
        />
        <Textarea
          label={own.remark}
          autosize
          maxLength={500}
          value={remark}
          onChange={({ currentTarget: { value } }) => setRemark(value.replace(/\s*\n\s*/g, " "))}
        />
        {failed !== "" && (
          <p className="error-text" role="alert">
            {failed}
          </p>
        )}
        <p role="status" className="dim">
          {said}
        </p>
        <div className="outside-buttons">
          <Button type="submit" loading={busy}>
            {own.make}
          </Button>
          <Button variant="default" onClick={close}>
            {own.close}
          </Button>
        </div>
      </form>
    </Modal>
  );
}

/** The server says which drawing forbids it, in English: that is more than the code alone. */
function reason(error: unknown, trouble: (error: unknown) => string): string {
  if (error instanceof Refused && error.problem.code === "unreadable") return error.problem.message;
  return trouble(error);
}
