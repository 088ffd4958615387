import { useEffect } from "react";
import { useWords } from "../words.tsx";

/** Panels: sizes, cutting, fits, paint. */
export default function PanelsPage() {
  const words = useWords();
  useEffect(() => {
    document.title = `${words.shell.sections.panels} · Pinwright`;
  }, [words]);
  return (
    <div className="page">
      <h2>{words.shell.sections.panels}</h2>
      <p>{words.panels.empty}</p>
    </div>
  );
}
