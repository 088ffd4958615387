import { useWords } from "../words.tsx";

export default function HarnessesPage() {
  const words = useWords();
  return <h2 className="page">{words.shell.sections.harnesses}</h2>;
}
