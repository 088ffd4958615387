import { Button, Modal, Textarea, TextInput } from "@mantine/core";
import { findingWords } from "@pinwright/words";
import { type FormEvent, useState } from "react";
import { useDesk } from "../book/desk.tsx";
import { useSession } from "../session/session.tsx";
import { useSpeech } from "../words.tsx";
import type { Said } from "./chosen.ts";
import { boundText } from "./numbers.ts";

/** Where this browser remembers who accepts here, as long as there are no accounts. */
const NAME_KEY = "pinwright.name";

/** Asks for a reason and a name, and says when the findings would open again. */
export function AcceptDialog({
  said,
  close,
}: {
  readonly said: readonly Said[];
  readonly close: () => void;
}) {
  const { words, language } = useSpeech();
  const { checks, common } = words;
  const { status } = useSession();
  const desk = useDesk();
  const own = status.accounts ? status.person?.name : localStorage.getItem(NAME_KEY);
  const [name, setName] = useState(own ?? "");
  const [reason, setReason] = useState("");
  const rule = said[0]?.entry.finding.rule ?? "";
  const submit = (event: FormEvent) => {
    event.preventDefault();
    localStorage.setItem(NAME_KEY, name);
    const findings = said.map(({ entry: { subject, basis } }) => ({ subject, basis }));
    const note = checks.acceptNote(findingWords(language, rule).title);
    void desk.edit(note, { kind: "accept", findings, by: name.trim(), reason: reason.trim() });
    close();
  };
  return (
    <Modal
      opened
      onClose={close}
      title={checks.acceptTitle(said.length)}
      size="lg"
      closeButtonProps={{ "aria-label": common.close }}
    >
      <form onSubmit={submit} style={{ display: "grid", gap: 12 }}>
        <p className="dim" style={{ margin: 0 }}>
          {checks.acceptAbout}
        </p>
        <ul style={{ margin: 0, paddingLeft: 20, maxHeight: 240, overflowY: "auto" }}>
          {said.map(({ key, sentence, entry: { bounds } }) => (
            <li key={key}>
              {sentence}
              <div className="dim">
                {bounds.length === 0
                  ? checks.comesBackAlways
                  : `${checks.comesBack} ${bounds.map((bound) => boundText(checks, bound)).join(checks.or)}.`}
              </div>
            </li>
          ))}
        </ul>
        <Textarea
          label={checks.reason}
          placeholder={checks.reasonHint}
          value={reason}
          autosize
          minRows={2}
          required
          data-autofocus
          onChange={(event) => setReason(event.currentTarget.value)}
        />
        <TextInput
          label={checks.name}
          value={name}
          required
          onChange={(event) => setName(event.currentTarget.value)}
        />
        <div style={{ display: "flex", gap: 8, justifyContent: "flex-end" }}>
          <Button variant="default" onClick={close}>
            {common.cancel}
          </Button>
          <Button type="submit" disabled={reason.trim() === "" || name.trim() === ""}>
            {checks.acceptGo}
          </Button>
        </div>
      </form>
    </Modal>
  );
}
