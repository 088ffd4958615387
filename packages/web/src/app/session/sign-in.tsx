import { Button, PasswordInput, TextInput } from "@mantine/core";
import { type FormEvent, useState } from "react";
import { call, Refused } from "../../api/call.ts";
import { useWords } from "../words.tsx";
import { useSession } from "./session.tsx";

/** Name and password, or the short code of the floor. */
export function SignIn() {
  const { session, shell } = useWords();
  const { setStatus } = useSession();
  const [name, setName] = useState("");
  const [secret, setSecret] = useState("");
  const [wrong, setWrong] = useState("");
  const [busy, setBusy] = useState(false);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setBusy(true);
    try {
      setStatus(await call("signIn", { parts: {}, body: { name, secret } }));
    } catch (error) {
      const code = error instanceof Refused ? error.problem.code : null;
      setWrong(
        code === "too-many-tries"
          ? session.signIn.wait
          : code === null
            ? shell.noServer
            : session.signIn.wrong,
      );
      setBusy(false);
    }
  };
  return (
    <main className="page" style={{ maxWidth: 360, margin: "10vh auto" }}>
      <h1>Pinwright</h1>
      <form onSubmit={(event) => void submit(event)} style={{ display: "grid", gap: 12 }}>
        <TextInput
          label={session.signIn.name}
          value={name}
          size="md"
          autoComplete="username"
          onChange={(event) => setName(event.currentTarget.value)}
          required
        />
        <PasswordInput
          label={session.signIn.secret}
          value={secret}
          size="md"
          autoComplete="current-password"
          onChange={(event) => setSecret(event.currentTarget.value)}
          required
        />
        <p role="alert" className="error-text" style={{ margin: 0 }}>
          {wrong}
        </p>
        <Button type="submit" size="md" loading={busy}>
          {session.signIn.go}
        </Button>
      </form>
    </main>
  );
}
