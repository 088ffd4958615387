import { type FormEvent, useState } from "react";
import { call, Refused } from "../../api/call.ts";
import { useSession } from "../../app/session/session.tsx";
import { useWords } from "../../app/words.tsx";
import { useOwnFacts } from "../device.tsx";
import { keepName, keptNames } from "./kept-place.ts";
import { LanguageSwitch } from "./language-switch.tsx";

/** By name and short code: whoever was here before taps the name and the digits. */
export function FloorSignIn() {
  const words = useWords().floor.signIn;
  const waiting = useOwnFacts().filter(({ sentAt }) => sentAt === null).length;
  const [names] = useState(keptNames);
  const [name, setName] = useState<string | null>(names.length > 0 ? null : "");
  return (
    <main className="floor-page">
      <div className="floor-title">
        <h1>{words.title}</h1>
        <LanguageSwitch />
      </div>
      <p>{words.ended(waiting)}</p>
      {name === null ? (
        <div className="floor-tiles">
          {names.map((one) => (
            <button key={one} type="button" onClick={() => setName(one)}>
              {one}
            </button>
          ))}
          <button type="button" onClick={() => setName("")}>
            {words.other}
          </button>
        </div>
      ) : (
        <CodeForm given={name} leave={names.length > 0 ? () => setName(null) : null} />
      )}
    </main>
  );
}

const DIGITS = ["1", "2", "3", "4", "5", "6", "7", "8", "9"] as const;

function CodeForm({ given, leave }: { readonly given: string; readonly leave: (() => void) | null }) {
  const { floor } = useWords();
  const words = floor.signIn;
  const { refresh, setStatus } = useSession();
  const [name, setName] = useState(given);
  const [code, setCode] = useState("");
  const [wrong, setWrong] = useState("");
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    try {
      const status = await call("signIn", { parts: {}, body: { name, secret: code } });
      keepName(status.person?.name ?? name);
      setStatus(status);
      // What is kept for times without the network is asked for again as the one who is here now.
      await refresh();
    } catch (error) {
      const reason = error instanceof Refused ? error.problem.code : null;
      setCode("");
      setWrong(reason === "too-many-tries" ? words.wait : reason === null ? words.away : words.wrong);
    }
  };
  return (
    <form className="floor-code" onSubmit={(event) => void submit(event)}>
      {given === "" && (
        <label>
          {words.who}
          <input
            value={name}
            autoComplete="username"
            required
            onChange={(event) => setName(event.currentTarget.value)}
          />
        </label>
      )}
      <label>
        {given === "" ? words.code : words.codeFor(given)}
        <input
          type="password"
          value={code}
          inputMode="numeric"
          autoComplete="current-password"
          required
          onChange={(event) => setCode(event.currentTarget.value)}
        />
      </label>
      <p role="alert" className="error-text">
        {wrong}
      </p>
      <div className="floor-digits">
        {DIGITS.map((digit) => (
          <button key={digit} type="button" onClick={() => setCode(code + digit)}>
            {digit}
          </button>
        ))}
        <button type="button" aria-label={floor.test.erase} onClick={() => setCode(code.slice(0, -1))}>
          ⌫
        </button>
        <button type="button" onClick={() => setCode(`${code}0`)}>
          0
        </button>
        <button type="submit" className="floor-main">
          {words.go}
        </button>
      </div>
      {leave !== null && (
        <button type="button" className="floor-plain" onClick={leave}>
          {words.other}
        </button>
      )}
    </form>
  );
}
