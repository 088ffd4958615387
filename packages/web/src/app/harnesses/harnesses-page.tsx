import { useEffect } from "react";
import { Link, useLocation } from "wouter";
import { useDesk, useView } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { HarnessList } from "./harness-list.tsx";
import { OneHarness, TABS } from "./one-harness.tsx";
import "../wiring/wiring.css";
import "./harnesses.css";

/** The list of harnesses, or one of them: `/b/<book>/harnesses/<id>/<tab>`. */
export default function HarnessesPage() {
  const { harnesses: words, common } = useWords();
  const { bookId } = useDesk();
  const [location] = useLocation();
  const harnesses = useView("harnesses", null);
  const base = `/b/${bookId}/harnesses`;
  const [id, tabName] = location.slice(base.length).split("/").filter(Boolean).map(decodeURIComponent);
  const figures = useView("harness", id ?? "");
  const tab = TABS.find((one) => one === tabName) ?? "pinboard";
  useEffect(() => {
    document.title = `${id ?? words.title} · Pinwright`;
  }, [id, words]);
  if (harnesses === null || figures === null) return <p className="page dim">{common.loading}</p>;
  if (id === undefined)
    return (
      <div className="page">
        <h2>{words.title}</h2>
        <HarnessList harnesses={[...harnesses.values()]} />
      </div>
    );
  const found = figures.get("");
  if (found === undefined)
    return (
      <div className="page">
        <p>{words.unknown(id)}</p>
        <Link href={base}>{words.all}</Link>
      </div>
    );
  const ids = [...harnesses.keys()];
  const at = ids.indexOf(id);
  return (
    <OneHarness
      figures={found}
      tab={tab}
      previousId={ids[at - 1] ?? null}
      nextId={at < 0 ? null : (ids[at + 1] ?? null)}
    />
  );
}
