import { useEffect } from "react";
import { useWords } from "../words.tsx";

/** Boards: register, stuffing, soldering, tests. */
export default function BoardsPage() {
  const words = useWords();
  useEffect(() => {
    document.title = `${words.shell.sections.boards} · Pinwright`;
  }, [words]);
  return (
    <div className="page">
      <h2>{words.shell.sections.boards}</h2>
      <p>{words.boards.empty}</p>
    </div>
  );
}
