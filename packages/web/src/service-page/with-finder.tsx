import type { FaultFile, FaultSession } from "@pinwright/engine";
import type { Language } from "@pinwright/words";
import { FAULT_WORDS } from "@pinwright/words/service";
import { useEffect, useState } from "react";
import { FaultFinding } from "./fault-finding.tsx";
import type { FaultHost } from "./host.ts";
import { FinderClient } from "./page/finder-client.ts";

type State =
  | { readonly at: "opening"; readonly percent: number }
  | { readonly at: "failed"; readonly why: string }
  | { readonly at: "open"; readonly host: FaultHost };

/** Fault finding for a file, with a finder of its own beside the page. */
export function WithFinder({
  file,
  language,
  newWorker,
  thing,
}: {
  readonly file: FaultFile;
  readonly language: Language;
  /** Starts the finder; the same function as long as the page lives. */
  readonly newWorker: () => Worker;
  readonly thing: FaultHost["thing"];
}) {
  const [state, setState] = useState<State>({ at: "opening", percent: 0 });
  useEffect(() => {
    setState({ at: "opening", percent: 0 });
    const client = new FinderClient(newWorker(), file, (message) => {
      if (message.type === "progress")
        setState({ at: "opening", percent: Math.round(100 * message.progress) });
      else if (message.type === "failed") setState({ at: "failed", why: message.message });
      else if (message.type === "opened")
        setState({
          at: "open",
          host: { file, answer: (session: FaultSession) => client.answer(session), thing },
        });
    });
    return () => client.close();
  }, [file, newWorker, thing]);
  const { faults: words } = FAULT_WORDS[language];
  if (state.at === "open") return <FaultFinding host={state.host} language={language} />;
  return (
    <p className="own-wait" role="status">
      {state.at === "opening" ? words.opening(state.percent) : words.failed(state.why)}
    </p>
  );
}
