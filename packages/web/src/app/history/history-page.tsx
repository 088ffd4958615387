import { useWords } from "../words.tsx";

export default function HistoryPage() {
  const words = useWords();
  return <h2 className="page">{words.shell.sections.history}</h2>;
}
