import { Button, Textarea } from "@mantine/core";
import type { FactBody } from "@pinwright/contract";
import { type FormEvent, useState } from "react";
import { useDevice } from "../../../floor/device.tsx";
import { madeUp } from "../../../floor/outbox/outbox.ts";
import { useSession } from "../../session/session.tsx";
import { useTrouble } from "../../trouble.ts";
import { useWords } from "../../words.tsx";
import { usePeople } from "../names.tsx";
import { useRecallText } from "./recall-text.ts";
import { recallName, type TraceQuery } from "./trace-query.ts";

/** Calls back whatever is looked for. */
export function CallBack({ query, close }: { readonly query: TraceQuery; readonly close: () => void }) {
  const { benchTrace } = useWords();
  const own = benchTrace.recall;
  const textOf = useRecallText();
  return (
    <SayWhy
      title={own.formTitle}
      about={own.of(textOf(query))}
      label={own.why}
      submit={own.do}
      bodyOf={(why) => ({
        kind: "recall",
        recall: recallName(new Date(), madeUp("rc")),
        ...(query.part === "" ? {} : { part: query.part }),
        ...(query.lot === "" ? {} : { lot: query.lot }),
        ...(query.type === "" ? {} : { type: query.type }),
        ...(query.revision === "" ? {} : { revision: query.revision }),
        why,
      })}
      close={close}
    />
  );
}

/** Asks why, and records it in the name of whoever is signed in. */
export function SayWhy({
  title,
  about,
  label,
  submit,
  bodyOf,
  close,
}: {
  readonly title: string;
  readonly about?: string;
  readonly label: string;
  readonly submit: string;
  readonly bodyOf: (why: string) => FactBody;
  readonly close: () => void;
}) {
  const { benchTrace, benchUnit } = useWords();
  const { write } = useDevice();
  const { status } = useSession();
  const nameOf = usePeople();
  const trouble = useTrouble();
  const [why, setWhy] = useState("");
  const [failed, setFailed] = useState("");
  const send = (event: FormEvent): void => {
    event.preventDefault();
    write([bodyOf(why.trim())]).then(close, (error: unknown) => setFailed(trouble(error)));
  };
  return (
    <form className="bench-form" onSubmit={send} aria-label={title}>
      {about !== undefined && <p>{about}</p>}
      <Textarea
        label={label}
        description={benchUnit.gate.liftBy(nameOf(status.person?.id ?? "local"))}
        autosize
        minRows={2}
        value={why}
        onChange={(event) => setWhy(event.currentTarget.value)}
      />
      <div className="bench-buttons">
        <Button type="submit" disabled={why.trim() === ""}>
          {submit}
        </Button>
        <Button variant="default" onClick={close}>
          {benchTrace.recall.cancel}
        </Button>
      </div>
      {failed !== "" && <p className="error-text">{failed}</p>}
    </form>
  );
}
