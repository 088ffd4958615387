import { useWords } from "../../words.tsx";

export default function BookTab() {
  const words = useWords();
  return <div className="page">{words.service.tabs.book}</div>;
}
