import { useEffect } from "react";
import { useWords } from "../words.tsx";

/** Parts: the bill, what they cost, and where they come from. */
export default function PartsPage() {
  const words = useWords();
  useEffect(() => {
    document.title = `${words.shell.sections.parts} · Pinwright`;
  }, [words]);
  return (
    <div className="page">
      <h2>{words.shell.sections.parts}</h2>
      <p>{words.parts.empty}</p>
    </div>
  );
}
