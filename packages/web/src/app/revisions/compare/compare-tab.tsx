import { useWords } from "../../words.tsx";

export default function CompareTab() {
  const words = useWords();
  return <div className="page">{words.revisions.tabs.compare}</div>;
}
