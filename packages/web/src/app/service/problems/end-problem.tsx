import { Button, NativeSelect, Textarea } from "@mantine/core";
import type { FactBody, KeptProblem } from "@pinwright/contract";
import { type FormEvent, useState } from "react";
import { call } from "../../../api/call.ts";
import { useDevice } from "../../../floor/device.tsx";
import { useAsked } from "../../bench/use-asked.ts";
import { useDesk } from "../../book/desk.tsx";
import { noteText } from "../../history/note-text.ts";
import { useTrouble } from "../../trouble.ts";
import { useWords } from "../../words.tsx";

/** Changes that are offered: who ends a problem has just made the change, or looks for it in the history. */
const CHANGES = 50;

/** Ends a problem in one of the last changes of the book, or without one. */
export function EndProblem({ problem: { problem } }: { readonly problem: KeptProblem }) {
  const { serviceProblems, history } = useWords();
  const own = serviceProblems.end;
  const { bookId } = useDesk();
  const { write } = useDevice();
  const trouble = useTrouble();
  const query = { limit: CHANGES };
  const { answer: changes = [], again } = useAsked(`changes ${bookId}`, (signal) =>
    call("history", { parts: { book: bookId }, query, signal }),
  );
  const [how, setHow] = useState<"changed" | "no-change">("changed");
  const [no, setNo] = useState<number | null>(null);
  const [why, setWhy] = useState("");
  const [failed, setFailed] = useState("");
  const chosen = no ?? changes[0]?.no;
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const body: FactBody = {
      ...{ kind: "problem-ended", problem, how, why: why.trim() },
      ...(how === "changed" && chosen !== undefined ? { changeNo: chosen } : {}),
    };
    write([body]).then(
      () => setFailed(""),
      (error: unknown) => setFailed(trouble(error)),
    );
  };
  return (
    <form className="bench-form" aria-label={own.title} onSubmit={submit}>
      <h3>{own.title}</h3>
      <div className="bench-fields">
        <NativeSelect
          label={own.how}
          value={how}
          data={[
            { value: "changed", label: own.byChange },
            { value: "no-change", label: own.byNone },
          ]}
          onChange={(event) => setHow(event.currentTarget.value === "changed" ? "changed" : "no-change")}
        />
        {how === "changed" && (
          <NativeSelect
            label={own.change}
            value={chosen === undefined ? "" : String(chosen)}
            data={changes.map((change, n) => ({
              value: String(change.no),
              label: `${n === 0 ? `${own.justNow} – ` : ""}${own.changeOf(change.no, noteText(history, change.note), change.personName)}`,
            }))}
            // A change that was made meanwhile is offered too.
            onFocus={again}
            onChange={(event) => setNo(Number(event.currentTarget.value))}
          />
        )}
      </div>
      <Textarea
        label={own.why}
        autosize
        minRows={2}
        maxLength={2000}
        value={why}
        onChange={(event) => setWhy(event.currentTarget.value)}
      />
      <div className="bench-buttons">
        <Button type="submit" disabled={why.trim() === "" || (how === "changed" && chosen === undefined)}>
          {own.do}
        </Button>
      </div>
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
    </form>
  );
}
