import { useWords } from "../words.tsx";

export default function TablesPage() {
  const words = useWords();
  return <h2 className="page">{words.shell.sections.tables}</h2>;
}
