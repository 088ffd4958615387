import { useWords } from "../../words.tsx";

/** Nothing is shown here yet. */
export default function UnitsTab() {
  const words = useWords();
  return (
    <div className="currents-body">
      <h2>{words.bench.tabs.units}</h2>
      <p className="dim">{words.bench.notYet}</p>
    </div>
  );
}
