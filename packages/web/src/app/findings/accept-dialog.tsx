import { Button, Modal, Textarea, TextInput } from "@mantine/core";
import { findingWords } from "@pinwright/words";
import { type FormEvent, useState } from "react";
import { useDesk } from "../book/desk.tsx";
import { useSession } from "../session/session.tsx";
import { useSpeech } from "../words.tsx";
import { basisOf, isLooser, isNumber } from "./bounds.ts";
import type { Said } from "./chosen.ts";
import { boundText, numberName, unitOf } from "./numbers.ts";

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
  const [first] = said;
  const only = said.length === 1 ? first : undefined;
  const [reason, setReason] = useState(
    only?.entry.finding.accepted?.reason ?? only?.entry.lapsed?.reason ?? "",
  );
  const [limits, setLimits] = useState<Readonly<Record<string, string>>>({});
  const loosened = only?.entry.bounds.filter(isNumber) ?? [];
  const good = loosened.every((bound) => isLooser(bound, limits[bound.name] ?? bound.limit));
  const rule = first?.entry.finding.rule ?? "";
  const submit = (event: FormEvent) => {
    event.preventDefault();
    localStorage.setItem(NAME_KEY, name);
    const findings = said.map(({ entry: { subject, basis, bounds } }) => ({
      subject,
      basis: only === undefined ? basis : basisOf(bounds, limits),
    }));
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
        {loosened.map((bound) => {
          const typed = limits[bound.name] ?? bound.limit;
          return (
            <TextInput
              key={bound.name}
              label={checks.limit(numberName(checks, bound.name))}
              inputMode="decimal"
              rightSection={unitOf(bound.name).trim()}
              rightSectionWidth={48}
              value={typed}
              error={!isLooser(bound, typed) && checks.limitWrong(boundText(checks, bound))}
              onChange={(event) => setLimits({ ...limits, [bound.name]: event.currentTarget.value })}
            />
          );
        })}
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
          <Button type="submit" disabled={reason.trim() === "" || name.trim() === "" || !good}>
            {checks.acceptGo}
          </Button>
        </div>
      </form>
    </Modal>
  );
}
