import { useWords } from "../../words.tsx";

export default function ThingTab() {
  const words = useWords();
  return <div className="page">{words.service.tabs.thing}</div>;
}
