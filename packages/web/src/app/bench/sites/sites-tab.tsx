import { useWords } from "../../words.tsx";

/** Nothing is shown here yet. */
export default function SitesTab() {
  const words = useWords();
  return (
    <div className="currents-body">
      <h2>{words.bench.tabs.sites}</h2>
      <p className="dim">{words.bench.notYet}</p>
    </div>
  );
}
