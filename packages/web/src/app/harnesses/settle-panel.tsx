import { Button } from "@mantine/core";
import { useState } from "react";
import type { AskAnswer } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useTrouble } from "../trouble.ts";
import { fixed } from "../wiring/number-text.ts";
import { useWords } from "../words.tsx";

type Keeping = AskAnswer<"keepHarness">;
type Better = NonNullable<AskAnswer<"betterHarness">>;

/** Keeps the results of a harness as they are, or does them anew and shows what would change before it does. */
export function SettlePanel({ harnessId }: { readonly harnessId: string }) {
  const words = useWords().harnesses.settle;
  const desk = useDesk();
  const [keeping, setKeeping] = useState<Keeping | null>(null);
  const [better, setBetter] = useState<Better | null>(null);
  const [working, setWorking] = useState(false);
  const [failed, setFailed] = useState("");
  const trouble = useTrouble();
  const put = async (note: string, changes: Keeping["changes"]) => {
    setKeeping(null);
    setBetter(null);
    await desk.edit(note, { kind: "changes", changes }).catch((error: unknown) => setFailed(trouble(error)));
  };
  const askKeep = async () => {
    setBetter(null);
    setFailed("");
    setKeeping(await desk.ask("keepHarness", harnessId));
  };
  const askBetter = async () => {
    setKeeping(null);
    setBetter(null);
    setFailed("");
    setWorking(true);
    // A moment for the words to be on the screen before the worker is busy.
    await new Promise((done) => setTimeout(done, 30));
    const answer = await desk.ask("betterHarness", harnessId).catch((error: unknown) => {
      setFailed(trouble(error));
      return null;
    });
    setWorking(false);
    setBetter(answer);
  };
  return (
    <section className="settle" aria-label={words.title}>
      <h3>{words.title}</h3>
      <p className="dim">{words.hint}</p>
      <div className="settle-buttons">
        <Button variant="default" onClick={() => void askKeep()}>
          {words.keep}
        </Button>
        <Button variant="default" loading={working} onClick={() => void askBetter()}>
          {words.better}
        </Button>
      </div>
      <div role="status">
        {working && <p className="dim">{words.betterWorking}</p>}
        {keeping !== null && (
          <>
            <p>{words.keepSays(keeping.added, keeping.changed, keeping.removed)}</p>
            {keeping.changes.length > 0 && (
              <Button onClick={() => void put(words.kept(harnessId), keeping.changes)}>{words.keepDo}</Button>
            )}
          </>
        )}
        {better !== null && (
          <BetterTable better={better} onTake={() => void put(words.took(harnessId), better.changes)} />
        )}
      </div>
      {failed !== "" && <p className="error-text">{failed}</p>}
    </section>
  );
}

function BetterTable({ better, onTake }: { readonly better: Better; readonly onTake: () => void }) {
  const words = useWords().harnesses.settle;
  const { change } = better;
  const counts = [
    [words.gone, change.wiresGone.length],
    [words.fresh, change.wiresNew.length],
    [words.recoloured, change.recoloured.length],
    [words.renumbered, change.renumbered.length],
    [words.relengthened, change.relengthened.length],
    [words.pegs, change.pegsMoved],
  ] as const;
  const [minutes, minutesAfter] = change.minutes;
  const [metres, metresAfter] = change.metres;
  const isSame =
    counts.every(([, count]) => count === 0) &&
    fixed(minutes, 1) === fixed(minutesAfter, 1) &&
    fixed(metres, 2) === fixed(metresAfter, 2);
  if (isSame) return <p>{words.betterNothing}</p>;
  return (
    <>
      <table className="plain">
        <thead>
          <tr>
            <td />
            <th scope="col" className="end">
              {words.before}
            </th>
            <th scope="col" className="end">
              {words.after}
            </th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{words.minutes}</th>
            <td className="end">{fixed(minutes, 1)}</td>
            <td className="end">{fixed(minutesAfter, 1)}</td>
          </tr>
          <tr>
            <th scope="row">{words.metres}</th>
            <td className="end">{fixed(metres, 2)}</td>
            <td className="end">{fixed(metresAfter, 2)}</td>
          </tr>
          {counts.map(([name, count]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="end" colSpan={2}>
                {count}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Button onClick={onTake}>{words.betterDo}</Button>
    </>
  );
}
