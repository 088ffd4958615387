import { useWords } from "../../words.tsx";
import { AsideFacts } from "./aside-facts.tsx";
import { ChainCheck } from "./chain-check.tsx";

/** Whether the records are what was written, and those that do not count. */
export default function RecordsTab() {
  const { benchRecords: own } = useWords();
  return (
    <div className="currents-body">
      <h2>{own.title}</h2>
      <ChainCheck />
      <AsideFacts />
    </div>
  );
}
