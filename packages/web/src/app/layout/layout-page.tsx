import { useWords } from "../words.tsx";

export default function LayoutPage() {
  const words = useWords();
  return <h2 className="page">{words.shell.sections.layout}</h2>;
}
