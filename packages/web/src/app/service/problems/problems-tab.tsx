import { useWords } from "../../words.tsx";

export default function ProblemsTab() {
  const words = useWords();
  return <div className="page">{words.service.tabs.problems}</div>;
}
