import { useWords } from "../../words.tsx";

export default function ReleasesTab() {
  const words = useWords();
  return <div className="page">{words.revisions.tabs.releases}</div>;
}
