import { useWords } from "../words.tsx";

export default function FindingsPage() {
  const words = useWords();
  return <h2 className="page">{words.shell.sections.findings}</h2>;
}
