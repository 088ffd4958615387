import { useSearchParams } from "wouter";
import { useView } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { OutsideList } from "./outside-list.tsx";
import { OutsidePart } from "./outside-part.tsx";
import { useBookFiles } from "./use-book-files.ts";
import "./outside.css";

/** Parts that others make to our drawings: all of them, or one with its files, dimensions and samples. */
export function OutsideTab() {
  const words = useWords();
  const lines = useView("outsideLines", null);
  const { files, refresh } = useBookFiles();
  const [params] = useSearchParams();
  const id = params.get("id");
  if (lines === null) return <p className="dim">{words.common.loading}</p>;
  return id === null ? (
    <OutsideList lines={lines} />
  ) : (
    <OutsidePart key={id} id={id} files={files} refreshFiles={refresh} />
  );
}
