import { useSync, useWorking } from "../book/desk.tsx";
import { useWords } from "../words.tsx";

/** Says that the figures on the page are from before a change, while the line takes longer than a moment. */
export function Working() {
  const own = useWords().shell.working;
  const working = useWorking();
  const sync = useSync();
  return (
    <p className={working ? "working shown" : "working"} role="status">
      {!working ? "" : sync.state === "loading" ? own.opening : own.changing}
    </p>
  );
}
