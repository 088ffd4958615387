import { useWords } from "../../words.tsx";

/** Nothing is shown here yet. */
export default function RecordsTab() {
  const words = useWords();
  return (
    <div className="currents-body">
      <h2>{words.bench.tabs.records}</h2>
      <p className="dim">{words.bench.notYet}</p>
    </div>
  );
}
