import { Button } from "@mantine/core";
import type { AnswerOf } from "@pinwright/contract";
import { useState } from "react";
import { call } from "../../../api/call.ts";
import { useMay } from "../../session/session.tsx";
import { useTrouble } from "../../trouble.ts";
import { useWords } from "../../words.tsx";

type Checked = AnswerOf<"checkRecords">;

/** Reads every record again, and says in plain words whether each is as it was written. */
export function ChainCheck() {
  const { benchRecords } = useWords();
  const own = benchRecords.check;
  const mayCheck = useMay("lead");
  const trouble = useTrouble();
  const [isAt, setAt] = useState(false);
  const [checked, setChecked] = useState<Checked | null>(null);
  const [failed, setFailed] = useState("");
  const check = (): void => {
    setAt(true);
    setFailed("");
    setChecked(null);
    call("checkRecords", { parts: {} })
      .then(setChecked, (error: unknown) => setFailed(trouble(error)))
      .finally(() => setAt(false));
  };
  return (
    <section aria-labelledby="chain-check">
      <h3 id="chain-check">{own.title}</h3>
      <p className="dim">{own.about}</p>
      {mayCheck ? (
        <Button variant="default" onClick={check} loading={isAt}>
          {own.do}
        </Button>
      ) : (
        <p>{own.asLead}</p>
      )}
      <div role="status">
        {isAt && <p className="dim">{own.busy}</p>}
        {checked !== null && <Result checked={checked} />}
      </div>
      {failed !== "" && <p className="error-text">{failed}</p>}
    </section>
  );
}

function Result({ checked: { faults, heads } }: { readonly checked: Checked }) {
  const { benchRecords } = useWords();
  const own = benchRecords.check;
  if (faults.length === 0)
    return (
      <p>
        {own.good(
          heads.length,
          heads.reduce((sum, { seq }) => sum + seq, 0),
        )}
      </p>
    );
  return (
    <>
      <p className="error-text">{own.bad(faults.length)}</p>
      <table className="plain">
        <thead>
          <tr>
            <th scope="col">{own.stream}</th>
            <th scope="col" className="end">
              {own.seq}
            </th>
            <th scope="col">{own.what}</th>
          </tr>
        </thead>
        <tbody>
          {faults.map(({ stream, seq, what }) => (
            <tr key={`${stream} ${seq} ${what}`}>
              <th scope="row">{stream}</th>
              <td className="end">{seq}</td>
              <td>{own.whats[what]}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>{own.advice}</p>
    </>
  );
}
