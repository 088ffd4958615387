import { Button, NativeSelect, PasswordInput, TextInput } from "@mantine/core";
import { ROLES, type Role } from "@pinwright/contract";
import { type FormEvent, useState } from "react";
import { call } from "../../api/call.ts";
import { useSession } from "../session/session.tsx";
import { useWords } from "../words.tsx";
import { accountRefusal } from "./refusal.ts";
import { mayHaveCode } from "./secrets.ts";

/** Makes an account: with a floor code for those who only build or look, else with a password. */
export function NewPersonForm({ happened }: { readonly happened: (text: string) => void }) {
  const all = useWords();
  const words = all.people;
  const { status } = useSession();
  const [name, setName] = useState("");
  const [role, setRole] = useState<Role>("builder");
  const [secret, setSecret] = useState("");
  const [wrong, setWrong] = useState("");
  const withCode = mayHaveCode(role);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    try {
      const body = { name, role, ...(withCode ? { code: secret } : { password: secret }) };
      await call("addPerson", { parts: {}, body, token: status.token });
      setName("");
      setSecret("");
      setWrong("");
      happened(words.added(name));
    } catch (error) {
      setWrong(accountRefusal(all, error));
    }
  };
  return (
    <section>
      <h3>{words.newTitle}</h3>
      <p className="dim">{words.secretHint}</p>
      <form onSubmit={(event) => void submit(event)}>
        <TextInput
          label={words.name}
          value={name}
          maxLength={80}
          autoComplete="off"
          required
          onChange={(event) => setName(event.currentTarget.value)}
        />
        <RoleSelect role={role} choose={setRole} />
        {withCode ? (
          <TextInput
            label={words.codeField}
            value={secret}
            inputMode="numeric"
            pattern="\d{4,8}"
            autoComplete="off"
            required
            onChange={(event) => setSecret(event.currentTarget.value)}
          />
        ) : (
          <PasswordInput
            label={words.passwordField}
            value={secret}
            minLength={10}
            autoComplete="new-password"
            required
            onChange={(event) => setSecret(event.currentTarget.value)}
          />
        )}
        <p role="alert" className="error-text">
          {wrong}
        </p>
        <Button type="submit">{words.add}</Button>
      </form>
    </section>
  );
}

/** Chooses a role, each told by what it may do. */
export function RoleSelect({ role, choose }: { readonly role: Role; readonly choose: (role: Role) => void }) {
  const words = useWords().people;
  return (
    <NativeSelect
      label={words.role}
      description={words.abouts[role]}
      value={role}
      data={ROLES.map((value) => ({ value, label: words.roles[value] }))}
      onChange={(event) => choose(ROLES.find((one) => one === event.currentTarget.value) ?? role)}
    />
  );
}
