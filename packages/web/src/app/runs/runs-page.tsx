import { useEffect } from "react";
import { useWords } from "../words.tsx";

/** Runs: what a batch needs, when, and what it costs. */
export default function RunsPage() {
  const words = useWords();
  useEffect(() => {
    document.title = `${words.shell.sections.runs} · Pinwright`;
  }, [words]);
  return (
    <div className="page">
      <h2>{words.shell.sections.runs}</h2>
      <p>{words.runs.empty}</p>
    </div>
  );
}
