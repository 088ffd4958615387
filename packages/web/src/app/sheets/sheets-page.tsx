import { useWords } from "../words.tsx";

export default function SheetsPage() {
  const words = useWords();
  return <h2 className="page">{words.shell.sections.sheets}</h2>;
}
