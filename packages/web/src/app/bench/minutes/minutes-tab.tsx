import { useWords } from "../../words.tsx";

/** Nothing is shown here yet. */
export default function MinutesTab() {
  const words = useWords();
  return (
    <div className="currents-body">
      <h2>{words.bench.tabs.minutes}</h2>
      <p className="dim">{words.bench.notYet}</p>
    </div>
  );
}
