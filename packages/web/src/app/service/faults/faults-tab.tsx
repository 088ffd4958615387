import { useWords } from "../../words.tsx";

export default function FaultsTab() {
  const words = useWords();
  return <div className="page">{words.service.tabs.faults}</div>;
}
