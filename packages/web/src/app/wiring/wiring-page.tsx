import { useWords } from "../words.tsx";

export default function WiringPage() {
  const words = useWords();
  return <h2 className="page">{words.shell.sections.wiring}</h2>;
}
