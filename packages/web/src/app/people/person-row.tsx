import { Button, Checkbox, Modal, PasswordInput, Switch, TextInput } from "@mantine/core";
import type { Person, PersonPatch } from "@pinwright/contract";
import { type FormEvent, useState } from "react";
import { call } from "../../api/call.ts";
import { useSession } from "../session/session.tsx";
import { useWords } from "../words.tsx";
import { RoleSelect } from "./new-person.tsx";
import { PersonSessions } from "./person-sessions.tsx";
import { accountRefusal } from "./refusal.ts";
import { mayHaveCode } from "./secrets.ts";

/** One account in the list, and the form that changes it. */
export function PersonRow({
  person,
  happened,
}: {
  readonly person: Person;
  readonly happened: (text: string) => void;
}) {
  const words = useWords().people;
  const [open, setOpen] = useState<"change" | "sessions" | null>(null);
  const close = () => setOpen(null);
  const ways = [...(person.hasPassword ? [words.password] : []), ...(person.hasCode ? [words.code] : [])];
  return (
    <tr className={person.active ? "" : "dim"}>
      <th scope="row">{person.name}</th>
      <td>{words.roles[person.role]}</td>
      <td>{ways.length === 0 ? words.nothing : ways.join(", ")}</td>
      <td>{person.active ? words.active : words.away}</td>
      <td>
        <Button
          variant="default"
          size="compact-sm"
          aria-label={words.change(person.name)}
          onClick={() => setOpen("change")}
        >
          {words.columns.actions}
        </Button>
        <Button
          variant="default"
          size="compact-sm"
          style={{ marginLeft: 8 }}
          aria-label={words.sessions.of(person.name)}
          onClick={() => setOpen("sessions")}
        >
          {words.sessions.open}
        </Button>
        {open === "change" && <ChangePerson person={person} happened={happened} close={close} />}
        {open === "sessions" && <PersonSessions person={person} close={close} />}
      </td>
    </tr>
  );
}

function ChangePerson({
  person,
  happened,
  close,
}: {
  readonly person: Person;
  readonly happened: (text: string) => void;
  readonly close: () => void;
}) {
  const all = useWords();
  const words = all.people;
  const { status } = useSession();
  const [role, setRole] = useState(person.role);
  const [active, setActive] = useState(person.active);
  const [password, setPassword] = useState("");
  const [code, setCode] = useState("");
  const [noCode, setNoCode] = useState(false);
  const [wrong, setWrong] = useState("");
  const losesCode = person.hasCode && (noCode || !mayHaveCode(role));
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const body: PersonPatch = {
      ...(role === person.role ? {} : { role }),
      ...(active === person.active ? {} : { active }),
      ...(password === "" ? {} : { password }),
      ...(losesCode ? { code: null } : code === "" ? {} : { code }),
    };
    try {
      await call("changePerson", { parts: { person: person.id }, body, token: status.token });
      happened(words.changed(person.name));
      close();
    } catch (error) {
      setWrong(accountRefusal(all, error));
    }
  };
  return (
    <Modal
      opened
      onClose={close}
      title={words.change(person.name)}
      closeButtonProps={{ "aria-label": all.common.close }}
    >
      <form onSubmit={(event) => void submit(event)} style={{ display: "grid", gap: 12 }}>
        <RoleSelect role={role} choose={setRole} />
        <PasswordInput
          label={words.newPassword}
          value={password}
          minLength={10}
          autoComplete="new-password"
          onChange={(event) => setPassword(event.currentTarget.value)}
        />
        {mayHaveCode(role) && (
          <TextInput
            label={words.newCode}
            value={code}
            inputMode="numeric"
            pattern="\d{4,8}"
            autoComplete="off"
            disabled={noCode}
            onChange={(event) => setCode(event.currentTarget.value)}
          />
        )}
        {person.hasCode && mayHaveCode(role) && (
          <Checkbox
            label={words.noCode}
            checked={noCode}
            onChange={(event) => setNoCode(event.currentTarget.checked)}
          />
        )}
        <Switch
          label={active ? words.active : words.away}
          checked={active}
          onChange={(event) => setActive(event.currentTarget.checked)}
        />
        <p className="dim" style={{ margin: 0 }}>
          {words.sessionsEnd}
        </p>
        <p role="alert" className="error-text" style={{ margin: 0 }}>
          {wrong}
        </p>
        <div style={{ display: "flex", gap: 8, justifyContent: "flex-end" }}>
          <Button variant="default" onClick={close}>
            {all.common.cancel}
          </Button>
          <Button type="submit">{all.common.save}</Button>
        </div>
      </form>
    </Modal>
  );
}
