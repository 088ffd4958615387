import { Button, PasswordInput, TextInput } from "@mantine/core";
import { type FormEvent, useState } from "react";
import { useLocation } from "wouter";
import { call, Refused } from "../../api/call.ts";
import { useWords } from "../words.tsx";
import { useSession } from "./session.tsx";

/** The owner's account, with which the server begins to serve other devices. */
export default function SetUp() {
  const { session, shell } = useWords();
  const words = session.setUp;
  const { status, setStatus } = useSession();
  const [, go] = useLocation();
  const [name, setName] = useState("");
  const [password, setPassword] = useState("");
  const [again, setAgain] = useState("");
  const [wrong, setWrong] = useState("");
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (password !== again) {
      setWrong(words.differ);
      return;
    }
    try {
      setStatus(await call("setUp", { parts: {}, body: { name, password }, token: status.token }));
      go("/people");
    } catch (error) {
      setWrong(error instanceof Refused ? error.problem.message : shell.noServer);
    }
  };
  return (
    <div className="page" style={{ maxWidth: 520 }}>
      <h2>{words.title}</h2>
      <p>{words.why}</p>
      <form onSubmit={(event) => void submit(event)} style={{ display: "grid", gap: 12 }}>
        <TextInput
          label={words.name}
          value={name}
          autoComplete="username"
          required
          onChange={(event) => setName(event.currentTarget.value)}
        />
        <PasswordInput
          label={words.password}
          value={password}
          autoComplete="new-password"
          minLength={10}
          required
          onChange={(event) => setPassword(event.currentTarget.value)}
        />
        <PasswordInput
          label={words.again}
          value={again}
          autoComplete="new-password"
          required
          onChange={(event) => setAgain(event.currentTarget.value)}
        />
        <p role="alert" className="error-text" style={{ margin: 0 }}>
          {wrong}
        </p>
        <Button type="submit">{words.go}</Button>
      </form>
    </div>
  );
}
